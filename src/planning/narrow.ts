import { endOf, startOf, type Plan, type PlannedStep } from '../model/plan.ts';
import type { Book } from '../model/book.ts';
import type { DoneStep, Situation } from '../model/situation.ts';
import type { Need, Task } from '../model/task.ts';
import { shownLate } from '../model/shown-late.ts';
import { type Block, blockOf } from '../schedule/blocks.ts';
import type { Minute } from '../time/span.ts';

/** So long after the last of what moves has dried, what the plan holds meets none of it any more. */
const MARGIN_MINUTES = 24 * 60;
/** In another room what moves may dry longer than it does where it is planned. */
const LONGER_MINUTES = 14 * 24 * 60;

type Materials = Book['materials'];

/** A stretch of a plan: all that the steps that move can meet. */
export interface Narrow {
  /** Before this, all is taken to go as planned. */
  readonly from: Minute;
  /** Nothing is planned after this. */
  readonly to: Minute;
  /** Of the whole plan, just the steps that matter of what moves, and of what that has to do with. */
  readonly plan: Plan;
  /** What all else keeps. */
  readonly blocks: readonly Block[];
  /** The situation of just those steps, at `from`. */
  of(situation: Situation): Situation;
  /** The whole plan, with those of its steps that were placed anew in the narrow. */
  widened(steps: readonly PlannedStep[]): readonly PlannedStep[];
}

/** When the last trace of a step is gone: work over, place free, film dry enough to be moved and for dust to fall. */
function overAt(step: PlannedStep, materials: Materials): Minute {
  const material = materials.get(step.material ?? '');
  const dried = (['handle', 'dust-free'] as const).map((mark) => shownLate(step, material, mark) ?? 0);
  return Math.max(endOf(step), step.holdsStationUntil, ...dried);
}

/** The last moment up to `minute` at which no step is at work. */
function betweenSteps(steps: readonly PlannedStep[], minute: Minute): Minute {
  const begun = steps.filter((s) => startOf(s) < minute && minute < endOf(s)).map(startOf);
  return begun.length === 0 ? minute : betweenSteps(steps, Math.min(...begun));
}

/** What is needed of the steps that are over by `from`: what still stands or dries, what others wait for, where a section is. */
function stillMatters(
  past: readonly PlannedStep[],
  needed: ReadonlySet<string>,
  isOver: (step: PlannedStep) => boolean,
): PlannedStep[] {
  const last = new Map(past.map((s) => [`${s.piece}/${s.section}`, s.id]));
  const lasts = new Set(last.values());
  return past.filter((s) => !isOver(s) || needed.has(s.id) || lasts.has(s.id));
}

function alike<T>(one: readonly T[], other: readonly T[], same: (a: T, b: T | undefined) => boolean): boolean {
  return one.length === other.length && one.every((a, k) => same(a, other[k]));
}

/** Is it done as, when, where and by whom it is planned, and does it keep its place as long? */
function isAsPlanned(planned: PlannedStep, anew: PlannedStep): boolean {
  return (
    planned.way === anew.way &&
    planned.station === anew.station &&
    planned.holdsStationUntil === anew.holdsStationUntil &&
    planned.atWork === anew.atWork &&
    alike(planned.hands, anew.hands, (a, b) => a === b) &&
    alike(planned.spans, anew.spans, (a, b) => a.start === b?.start && a.end === b.end)
  );
}

/**
 * A step as placed anew, or just the planned one where nothing is otherwise: what holds of that need not be looked at again. What
 * it waits for is shown as it was.
 */
function placedAnew(planned: PlannedStep, anew: PlannedStep): PlannedStep {
  if (isAsPlanned(planned, anew)) return planned;
  const { after, window } = planned;
  return { ...anew, after, ...(window && { window }) };
}

/** The steps, given in order of start; nothing is carried to one that comes after another of its section in the same room. */
function withoutCarrying(steps: readonly PlannedStep[]): PlannedStep[] {
  const rooms = new Map<string, string>();
  return steps.map((step) => {
    if (step.atOnceAfter !== undefined) return step;
    const section = `${step.piece}/${step.section}`;
    const before = rooms.get(section);
    rooms.set(section, step.room);
    const { broughtIn, ...asThere } = step;
    return broughtIn !== undefined && before === step.room ? asThere : step;
  });
}

/** When its film, if it lays one, may be moved. */
function movableAt(step: PlannedStep, materials: Materials): Minute {
  return Math.max(endOf(step), shownLate(step, materials.get(step.material ?? ''), 'handle') ?? 0);
}

/**
 * The objects of what moves, of what waits for that, of what it waits for, and of the coats of their pieces laid in one go with
 * any of these. What else there is of the pieces that something moves of is among them only where it keeps a place for longer
 * than it has to; of all the rest nothing but what it keeps is in the way.
 */
function metBy({ tasks, book }: Situation, plan: Plan, moving: ReadonlySet<string>): ReadonlySet<string> {
  const byId = new Map(tasks.map((t) => [t.id, t]));
  const met = tasks.filter((t) => moving.has(t.id) || t.needs.some((need) => moving.has(need.task)));
  const asked = [...moving].flatMap((id) => byId.get(id)?.needs.map((need) => need.task) ?? []);
  const pieces = new Set(plan.steps.flatMap((s) => (moving.has(s.id) ? [s.piece] : [])));
  const stands = plan.steps.filter((s) => pieces.has(s.piece) && s.holdsStationUntil > movableAt(s, book.materials));
  const ids = [...met.map((t) => t.id), ...asked, ...stands.map((s) => s.id)];
  const objects = new Set(ids.flatMap((id) => byId.get(id)?.object ?? []));
  for (const { steps } of plan.sessions ?? []) {
    const coats = steps.flatMap((id) => byId.get(id) ?? []);
    const theirs = new Set(coats.flatMap((t) => (objects.has(t.object) ? [t.piece] : [])));
    for (const coat of coats) if (theirs.has(coat.piece)) objects.add(coat.object);
  }
  return objects;
}

/**
 * The plan around the steps that move, as if all had gone as planned until they can first begin, and without what comes
 * long after them: small enough to be tried again and again. What it finds is to be held against the whole.
 * @param first none of them can begin before
 * @param met objects of which more is laid out than what they keep
 */
export function narrowTo(
  situation: Situation,
  plan: Plan,
  moving: ReadonlySet<string>,
  first: Minute,
  met: ReadonlySet<string> = metBy(situation, plan, moving),
): Narrow {
  const tasks = new Map(situation.tasks.map((t) => [t.id, t]));
  const steps = new Map(plan.steps.map((s) => [s.id, s]));
  const from = betweenSteps(plan.steps, first);
  const { materials } = situation.book;
  const over = (step: PlannedStep) => overAt(step, materials);
  const last = Math.max(...plan.steps.map((s) => (moving.has(s.id) ? over(s) : from))) + MARGIN_MINUTES;
  // What goes on, or has been done and dries, may be more than there is room for: that is read from its tasks.
  const isFact = (s: PlannedStep) => s.atWork === true || (s.done === true && over(s) > from);
  const isPast = (step: PlannedStep) => !moving.has(step.id) && endOf(step) <= from;
  const meets = ({ id, atOnceAfter = id }: PlannedStep): boolean =>
    moving.has(atOnceAfter) || tasks.get(atOnceAfter)?.needs.some((need) => moving.has(need.task)) === true;
  const objectOf = ({ id }: PlannedStep) => tasks.get(id)?.object ?? '';
  const objects = new Set([...moving].map((id) => tasks.get(id)?.object));
  const isWithIt = (step: PlannedStep) => objects.has(objectOf(step));
  const factual = new Set(plan.steps.filter(isFact).map((s) => s.piece));
  const isOfThem = (step: PlannedStep) => factual.has(step.piece) || met.has(objectOf(step));
  const near = new Set(plan.steps.filter((s) => !isPast(s) && (startOf(s) <= last || meets(s))).map((s) => s.id));
  const mates = new Set((plan.sessions ?? []).flatMap((s) => (s.steps.some((id) => near.has(id)) ? s.steps : [])));
  const isAhead = (s: PlannedStep) => near.has(s.id) || (mates.has(s.id) && !isPast(s));
  const ahead = plan.steps.filter(isAhead);
  const others = plan.steps.filter((s) => !isOfThem(s) && (isPast(s) ? over(s) > from : isAhead(s)));
  const nextInOneGo = new Map(
    (plan.sessions ?? []).flatMap(({ steps: coats }) => coats.slice(1).map((next, k) => [coats[k], next] as const)),
  );
  const blocks = others.flatMap((step): Block[] => {
    const task = tasks.get(step.id);
    const next = steps.get(nextInOneGo.get(step.id) ?? '');
    return task === undefined ? [] : [blockOf(step, task, materials.get(step.material ?? ''), next)];
  });
  // What stays waits for what stays just as it did, but a preparation is planned by way of the window that asks for it.
  const matters = ({ id }: Pick<Task, 'id'>, need: Need) =>
    moving.has(id) ||
    moving.has(need.task) ||
    (need.kind === 'window' && need.windows.some((window) => steps.has(window.prepTask ?? '')));
  const needed = new Set(
    ahead
      .filter(isOfThem)
      .flatMap((s) => tasks.get(s.id)?.needs.flatMap((need) => (matters(s, need) ? [need.task] : [])) ?? []),
  );
  const past = stillMatters(
    plan.steps.filter((s) => isPast(s) && isOfThem(s)),
    needed,
    (s) => over(s) <= from,
  );
  const kept = new Set([...past, ...ahead.filter(isOfThem)].map((s) => s.id));
  const to = Math.max(...ahead.map(over)) + LONGER_MINUTES;

  const isKept = (task: Task) => kept.has(task.id) || kept.has(task.onlyFor ?? '');
  const seen = (task: Task): Task => ({
    ...task,
    needs: task.needs.filter((need) => kept.has(need.task) && matters(task, need)),
  });
  const asPlanned = past.map(({ id, spans, station, way, hands }): [string, DoneStep] => [
    id,
    { from: startOf({ spans }), to: endOf({ spans }), station, way, hands },
  ]);
  return {
    from,
    to,
    plan: { ...plan, from, to, steps: plan.steps.filter((s) => kept.has(s.id)) },
    blocks,
    of: (whole) => ({
      ...whole,
      now: from,
      tasks: whole.tasks.filter(isKept).map(seen),
      done: new Map([...asPlanned, ...whole.done]),
      atWork: new Map([...whole.atWork].filter(([id]) => !past.some((s) => s.id === id))),
    }),
    widened: (placed) => {
      // All else is where it was, and keeps its place as long as it did.
      const anew = new Map(placed.filter((s) => s.done !== true && (meets(s) || isWithIt(s))).map((s) => [s.id, s]));
      const begins = (s: PlannedStep, minute: Minute) => `${objectOf(s)} ${minute}`;
      const starts = new Map(plan.steps.flatMap((s) => (moving.has(s.id) ? [[begins(s, startOf(s)), s.id]] : [])));
      const steps = plan.steps
        .map((planned): PlannedStep => {
          const step = anew.get(planned.id);
          if (step !== undefined) return placedAnew(planned, step);
          // Its place is taken over sooner.
          const next = anew.get(starts.get(begins(planned, planned.holdsStationUntil)) ?? '');
          return next === undefined ? planned : { ...planned, holdsStationUntil: startOf(next) };
        })
        .sort((a, b) => startOf(a) - startOf(b) || (a.id < b.id ? -1 : 1));
      return withoutCarrying(steps);
    },
  };
}
