import type { ShopAir } from '../air/shop-air.ts';
import { dryMap } from '../drying/dry-marks.ts';
import { applicationStarts } from '../drying/fit-hours.ts';
import type { Breach as AirBreach } from '../drying/air-limits.ts';
import { windowMaps } from '../drying/windows.ts';
import { hindrances } from '../drying/why-unfit.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import { freeSpans, openSpans } from '../model/hours.ts';
import type { Mark } from '../model/mark.ts';
import { pacedMinutes } from '../model/paced-work.ts';
import { endOf, startOf, type Plan, type PlannedStep } from '../model/plan.ts';
import type { Station } from '../model/shop.ts';
import { shownLate } from '../model/shown-late.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { intersect, type Minute, type Span, type Spans } from '../time/span.ts';
import { pausingStarts, unbrokenStarts } from '../schedule/work-hours.ts';
import { coldCause, type ColdCause } from './why-cold.ts';
import { standingCause, type StandingCause } from './why-standing.ts';

const MINUTES_PER_HOUR = 60;

/** What keeps a step from starting earlier. `by` is the step that is in the way, where there is one. */
export type Cause =
  | { readonly kind: 'done' | 'at-work' | 'now' }
  | { readonly kind: 'arrival' | 'put-off'; readonly until: Minute }
  | { readonly kind: 'order'; readonly by: string; readonly until: Minute }
  | { readonly kind: 'dry'; readonly by: string; readonly mark: Mark; readonly until: Minute }
  | { readonly kind: 'window'; readonly by: string; readonly until: Minute; readonly shuts?: Minute }
  | {
      readonly kind: 'hand' | 'tool' | 'place';
      readonly id: string;
      readonly name: string;
      readonly by: string;
      readonly until: Minute;
    }
  | { readonly kind: 'dust'; readonly by: string; readonly until: Minute }
  /** Another section of the same object is at work, or cannot be moved yet. */
  | { readonly kind: 'object'; readonly by: string; readonly until: Minute }
  /** Any sooner, and `by` would come too late after it: past its window, or past its latest hour. */
  | { readonly kind: 'keeps-window'; readonly by: string; readonly until: Minute }
  /** Laid in one go with `by`, to mix and wash up once, which spares so many minutes in all. */
  | { readonly kind: 'session'; readonly by: string; readonly until: Minute; readonly savedMinutes: number }
  /** Waits for `by`, which is laid in one go with it and cannot begin before `until`. */
  | { readonly kind: 'session-waits'; readonly by: string; readonly until: Minute; readonly savedMinutes: number }
  /** Nobody is in before `until`; the step could else have gone on from `since`. */
  | { readonly kind: 'hours'; readonly since: Minute; readonly until: Minute }
  | {
      readonly kind: 'air';
      readonly room: string;
      readonly since: Minute;
      readonly until: Minute;
      readonly breaches: readonly AirBreach[];
    }
  | StandingCause
  | ColdCause
  /** It could start earlier by itself; the plan as a whole is better so. */
  | { readonly kind: 'better-so'; readonly couldFrom: Minute };

/** What shuts a step out, whatever else is done meanwhile. */
export type ShutOut = Extract<Cause, { readonly kind: 'hours' | 'air' }>;

export interface WhyLink {
  readonly step: PlannedStep;
  readonly start: Minute;
  readonly cause: Cause;
  /** What holds it from the end of its cause until it starts, where that is later. */
  readonly then?: ShutOut;
  /** When the last of what it waited for was over; now, where it waited for nothing. */
  readonly waited: Minute;
}

interface Scene {
  readonly situation: Situation;
  readonly air: ShopAir;
  readonly plan: Plan;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly steps: ReadonlyMap<string, PlannedStep>;
}

function overlap(a: Span, b: Span): boolean {
  return a.start < b.end && b.start < a.end;
}

/** The latest of what the step had to wait for. */
function lastWait(scene: Scene, step: PlannedStep): { cause: Cause; until: Minute } {
  const { situation, plan } = scene;
  const arrives = situation.book.pieces.find((p) => p.id === step.piece)?.arrives;
  const putOff = situation.notBefore.get(step.id);
  const waits: { cause: Cause; until: Minute }[] = [
    { cause: { kind: 'now' }, until: plan.from },
    ...(arrives === undefined ? [] : [{ cause: { kind: 'arrival', until: arrives } as const, until: arrives }]),
    ...(putOff === undefined ? [] : [{ cause: { kind: 'put-off', until: putOff } as const, until: putOff }]),
    ...step.after.map(({ step: by, mark, notBefore: until }): { cause: Cause; until: Minute } => {
      if (mark === undefined) return { cause: { kind: 'order', by, until }, until };
      const { window } = step;
      if (window?.of !== by || mark !== 'recoat') return { cause: { kind: 'dry', by, mark, until }, until };
      return {
        cause: { kind: 'window', by, until, ...(window.shuts !== undefined && { shuts: window.shuts }) },
        until,
      };
    }),
  ];
  return waits.reduce((last, wait) => (wait.until >= last.until ? wait : last));
}

function handHours({ situation, plan }: Scene, step: PlannedStep, from: Minute, to: Minute): Spans {
  const { shop } = situation.book;
  const opening = openSpans(shop.opening, plan.timeZone, from, to);
  return shop.hands
    .filter((h) => step.hands.includes(h.id))
    .map((h) => freeSpans(shop, h, from, to))
    .reduce((all, spans) => intersect(all, spans), opening);
}

interface Allowed {
  readonly hours: Spans;
  readonly air: Spans;
  readonly work: { readonly minutes: number; readonly hours: Spans };
}

/** The starts from `from` to `to` that the hands' hours allow, and of these those that the air allows. */
function allowedStarts(scene: Scene, step: PlannedStep, from: Minute, to: Minute): Allowed {
  const task = scene.tasks.get(step.id);
  const way = task?.ways.find((w) => w.name === step.way);
  const minutes =
    way === undefined ? endOf(step) - startOf(step) : pacedMinutes(way.workMinutes, step.hands, scene.situation.paces);
  const open = handHours(scene, step, from, to + minutes);
  const byHours = task?.mayPause === true ? pausingStarts(open, minutes) : unbrokenStarts(open, minutes);
  const work = { minutes, hours: open };
  const hours = intersect(byHours, [{ start: from, end: to }]);
  const material = way?.film && scene.situation.book.materials.get(way.film.material);
  const air = scene.air.get(step.room);
  if (way?.film === undefined || material === undefined || air === undefined) return { hours, air: hours, work };
  return {
    hours,
    work,
    air: intersect(hours, applicationStarts(material, way.film, air, minutes, from, to, task?.thicknessMm)),
  };
}

/** The coats that the step is laid in one go with, in order, itself among them; undefined where it stands by itself. */
function sessionOf({ plan, steps }: Scene, step: PlannedStep) {
  const session = plan.sessions?.find((s) => s.steps.includes(step.id));
  return session && { coats: session.steps.flatMap((id) => steps.get(id) ?? []), savedMinutes: session.savedMinutes };
}

/** What holds a coat that nothing of its own holds: those that it is laid in one go with. */
function sessionCause(scene: Scene, step: PlannedStep): Cause | undefined {
  const session = sessionOf(scene, step);
  if (session === undefined) return undefined;
  const { coats, savedMinutes } = session;
  const before = coats[coats.indexOf(step) - 1];
  if (before !== undefined) return { kind: 'session', by: before.id, until: endOf(before), savedMinutes };
  const held = coats.find((coat) => coat !== step && ownCause(scene, coat).kind !== 'better-so');
  return held && { kind: 'session-waits', by: held.id, until: startOf(held), savedMinutes };
}

/** Who gives up a place the soonest, at the first moment of `span` at which all `slots` of `stations` are taken by others. */
function firstFull(
  { tasks }: Scene,
  step: PlannedStep,
  stations: readonly Station[],
  slots: number,
  others: readonly PlannedStep[],
  span: Span,
): PlannedStep | undefined {
  const objectOf = (s: PlannedStep) => tasks.get(s.id)?.object;
  const there = others.filter(
    (s) => s.atOnceAfter === undefined && objectOf(s) !== objectOf(step) && stations.some((a) => a.id === s.station),
  );
  const begins = there.map(startOf).filter((m) => span.start < m && m < span.end);
  for (const minute of [span.start, ...begins].sort((a, b) => a - b)) {
    const standing = there.filter((s) => startOf(s) <= minute && minute < s.holdsStationUntil);
    if (new Set(standing.map(objectOf)).size >= slots)
      return [...standing].sort((a, b) => a.holdsStationUntil - b.holdsStationUntil)[0];
  }
  return undefined;
}

/** What stands in the way if the step started at `start` instead. */
function blocker(scene: Scene, step: PlannedStep, start: Minute): Cause | undefined {
  const { shop, materials } = scene.situation.book;
  const task = scene.tasks.get(step.id);
  const film = task?.ways.find((w) => w.name === step.way)?.film;
  const span = { start, end: Math.max(start + 1, start + endOf(step) - startOf(step)) };
  const mates = sessionOf(scene, step)?.coats ?? [step];
  const others = scene.plan.steps.filter((s) => !mates.includes(s) && s.done !== true);
  const busy = others.filter((s) => s.spans.some((x) => overlap(x, span)));
  for (const hand of step.hands) {
    const by = busy.find((s) => s.hands.includes(hand));
    if (by !== undefined)
      return {
        kind: 'hand',
        id: hand,
        name: shop.hands.find((h) => h.id === hand)?.name ?? hand,
        by: by.id,
        until: endOf(by),
      };
  }
  const lastOf = (s: PlannedStep, wanted: Mark): Minute =>
    shownLate(s, materials.get(s.material ?? ''), wanted) ?? endOf(s);
  // Clamps stay on a glue line until it can be moved.
  const keptUntil = (s: PlannedStep): Minute =>
    materials.get(s.material ?? '')?.family === 'glue' ? Math.max(endOf(s), lastOf(s, 'handle')) : endOf(s);
  for (const tool of step.tools) {
    const kept = { start, end: start + Math.max(1, keptUntil(step) - startOf(step)) };
    const using = others.filter(
      (s) => s.tools.includes(tool) && overlap({ start: startOf(s), end: keptUntil(s) }, kept),
    );
    const known = shop.tools.find((t) => t.id === tool);
    const by = using[0];
    if (by !== undefined && using.length >= (known?.count ?? 1))
      return { kind: 'tool', id: tool, name: known?.name ?? tool, by: by.id, until: keptUntil(by) };
  }
  const station = shop.stations.find((s) => s.id === step.station);
  const alike = shop.stations.filter((s) => s.room === station?.room && s.kind === station.kind);
  const slots = alike.reduce((sum, s) => sum + s.slots, 0);
  const full = firstFull(scene, step, alike, slots, others, span);
  if (full !== undefined)
    return {
      kind: 'place',
      id: step.station,
      name: station?.name ?? step.station,
      by: full.id,
      until: full.holdsStationUntil,
    };
  const object = scene.tasks.get(step.id)?.object;
  const sameObject = others.filter((s) => s.atOnceAfter === undefined && scene.tasks.get(s.id)?.object === object);
  const besides = sameObject.find((s) => {
    const until = s.section === step.section ? endOf(s) : Math.max(endOf(s), s.holdsStationUntil);
    return overlap({ start: startOf(s), end: until }, span);
  });
  if (besides !== undefined) {
    const until =
      besides.section === step.section ? endOf(besides) : Math.max(endOf(besides), besides.holdsStationUntil);
    return { kind: 'object', by: besides.id, until };
  }
  const unmoved = sameObject
    .filter((s) => s.section === step.section && endOf(s) <= start && s.station !== step.station)
    .filter((s) => lastOf(s, 'handle') > start)
    .sort((a, b) => lastOf(b, 'handle') - lastOf(a, 'handle'))[0];
  if (unmoved !== undefined) return { kind: 'dry', by: unmoved.id, mark: 'handle', until: lastOf(unmoved, 'handle') };
  const wetUntil = (s: PlannedStep): Minute => lastOf(s, 'dust-free');
  const roomMates = others.filter((s) => s.room === step.room);
  if (task?.dusty === true) {
    const by = roomMates.find(
      (s) => s.material !== undefined && overlap({ start: startOf(s), end: wetUntil(s) }, span),
    );
    if (by !== undefined) return { kind: 'dust', by: by.id, until: wetUntil(by) };
  }
  const material = film && materials.get(film.material);
  const air = scene.air.get(step.room);
  if (film !== undefined && material !== undefined && air !== undefined) {
    const mark = effectiveMark(material, 'dust-free');
    const dustFree = mark === undefined ? span.end : dryMap(material, mark, 'late', film, air).at(span.end);
    const wet = { start, end: dustFree };
    const by = roomMates.find(
      (s) => scene.tasks.get(s.id)?.dusty === true && overlap({ start: startOf(s), end: endOf(s) }, wet),
    );
    if (by !== undefined) return { kind: 'dust', by: by.id, until: endOf(by) };
  }
  return undefined;
}

/** Who would come too late after the step if it started at `start` instead. */
function lateAfter(scene: Scene, step: PlannedStep, start: Minute): Cause | undefined {
  const { situation, air, steps } = scene;
  const end = start + endOf(step) - startOf(step);
  const film = scene.tasks.get(step.id)?.ways.find((w) => w.name === step.way)?.film;
  const material = film && situation.book.materials.get(film.material);
  const series = air.get(step.room);
  const tooLate = ({ needs }: Task, next: PlannedStep): boolean =>
    needs.some((need) => {
      if (need.task !== step.id) return false;
      if (need.kind === 'within') return endOf(next) > end + need.hours * MINUTES_PER_HOUR;
      if (need.kind !== 'window' || film === undefined || material === undefined || series === undefined) return false;
      return !need.windows.some((choice) => {
        const { opens, shuts } = windowMaps(choice, material, film, series);
        const inTime = opens.at(end) <= startOf(next) && startOf(next) <= (shuts?.at(end) ?? Infinity);
        return inTime && (choice.prepTask === undefined || steps.has(choice.prepTask));
      });
    });
  const next = situation.tasks.flatMap((task) => {
    const planned = steps.get(task.id);
    return planned !== undefined && planned.done !== true && tooLate(task, planned) ? [planned] : [];
  })[0];
  return next && { kind: 'keeps-window', by: next.id, until: startOf(next) };
}

function last(spans: Spans): Minute | undefined {
  const span = spans.at(-1);
  return span === undefined ? undefined : span.end - 1;
}

function causeOf(scene: Scene, step: PlannedStep): Cause {
  const own = ownCause(scene, step);
  return own.kind === 'better-so' ? (sessionCause(scene, step) ?? own) : own;
}

/** What holds it, whatever it is laid together with. */
function ownCause(scene: Scene, step: PlannedStep): Cause {
  if (step.done === true) return { kind: 'done' };
  if (step.atWork === true) return { kind: 'at-work' };
  const start = startOf(step);
  const wait = lastWait(scene, step);
  if (wait.until >= start) return wait.cause;
  const { hours, air: ofAir, work } = allowedStarts(scene, step, wait.until, start);
  const task = scene.tasks.get(step.id);
  const cold = coldCause(scene, step, task);
  const air = cold === undefined ? ofAir : intersect(ofAir, [{ start: Math.min(cold.until, start), end: start }]);
  if (cold !== undefined && air.length === 0 && ofAir.length > 0) return cold;
  const around = { start: wait.until, end: start };
  const standing = standingCause(scene, step, task, air, work, around);
  if (standing !== undefined) return standing;
  const candidate = last(air);
  if (candidate !== undefined)
    return (
      blocker(scene, step, candidate) ??
      lateAfter(scene, step, candidate) ?? { kind: 'better-so', couldFrom: candidate }
    );
  return shutOut(scene, step, hours, wait.until);
}

/** Why it cannot start from `since` on, before it does: `hours` are the starts that suit the hands, and none suits the air. */
function shutOut(scene: Scene, step: PlannedStep, hours: Spans, since: Minute): ShutOut {
  const start = startOf(step);
  const inHours = last(hours);
  if (inHours === undefined) return { kind: 'hours', since, until: start };
  const thicknessMm = scene.tasks.get(step.id)?.thicknessMm;
  const material = step.material === undefined ? undefined : scene.situation.book.materials.get(step.material);
  const series = scene.air.get(step.room);
  const why = material === undefined || series === undefined ? [] : hindrances(material, series, inHours, thicknessMm);
  return { kind: 'air', room: step.room, since: inHours, until: start, breaches: why };
}

/** What holds it once `cause` is over. */
function afterwards(scene: Scene, step: PlannedStep, cause: Cause): ShutOut | undefined {
  if (!('until' in cause) || cause.until >= startOf(step)) return undefined;
  const { hours, air } = allowedStarts(scene, step, cause.until, startOf(step));
  return air.length > 0 ? undefined : shutOut(scene, step, hours, cause.until);
}

/** Which step the cause leads on to. */
function leadsTo(scene: Scene, step: PlannedStep, cause: Cause): PlannedStep | undefined {
  switch (cause.kind) {
    case 'order':
    case 'dry':
    case 'window':
    case 'hand':
    case 'tool':
    case 'place':
    case 'dust':
    case 'object':
    case 'keeps-window':
    case 'session':
    case 'session-waits':
      return scene.steps.get(cause.by);
    case 'hours':
    case 'away':
    case 'room':
    case 'cold-work':
    case 'air': {
      const wait = lastWait(scene, step).cause;
      return 'by' in wait ? scene.steps.get(wait.by) : undefined;
    }
    case 'done':
    case 'at-work':
    case 'now':
    case 'arrival':
    case 'put-off':
    case 'better-so':
      return undefined;
  }
}

/** What holds `stepId` where it is, and what holds that, back along the chain to now. Empty for an unknown step. */
export function whyChain(situation: Situation, air: ShopAir, plan: Plan, stepId: string): WhyLink[] {
  const scene: Scene = {
    situation,
    air,
    plan,
    tasks: new Map(situation.tasks.map((t) => [t.id, t])),
    steps: new Map(plan.steps.map((s) => [s.id, s])),
  };
  const chain: WhyLink[] = [];
  const seen = new Set<string>();
  let step = scene.steps.get(stepId);
  while (step !== undefined && !seen.has(step.id)) {
    seen.add(step.id);
    const cause = causeOf(scene, step);
    const then = afterwards(scene, step, cause);
    chain.push({ step, start: startOf(step), cause, ...(then && { then }), waited: lastWait(scene, step).until });
    step = leadsTo(scene, step, cause);
  }
  return chain;
}
