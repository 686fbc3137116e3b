import type { ShopAir } from '../air/shop-air.ts';
import type { Activity, Lag, Mode, Problem, Term } from '../engine/problem.ts';
import { backFrom } from '../model/away.ts';
import { heldTasks } from '../model/gates.ts';
import { openSpans } from '../model/hours.ts';
import type { Piece } from '../model/piece.ts';
import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Need, Task } from '../model/task.ts';
import { intersect, type Minute } from '../time/span.ts';
import { type Block, blockActivity } from './blocks.ts';
import { type Around, carryLags, carryLagsAfterPrep, carryOf } from './carry-lags.ts';
import type { Compiled, Meaning, WindowMode } from './compiled.ts';
import { type Ground, layGround } from './ground.ts';
import {
  markLags,
  type Mover,
  needLags,
  needsChoice,
  orderLag,
  prepTasksOf,
  type Source,
  unmovedLags,
  variantsOf,
  windowLags,
} from './lags.ts';
import type { Manner } from './manners.ts';
import { shopDrying } from './shop-drying.ts';
import { doneActivity, type Facts, factsOf, standingPlace } from './facts.ts';
import { overtakenLags } from './overtaken.ts';
import { soonerActivity, stayingActivity } from './staying.ts';
import { clearingOf, followerOf, mannerAsPlanned, stayInPlace, taskActivity } from './task-activity.ts';
import { mayBeInPlace, outlastsAll, unmovedBefore } from './unmoved.ts';
import { LATE_BEFORE_MOVED, lateWeight, MOVED_ONCE, MOVED_WEIGHT, RAGS_WEIGHT, tieUpWeight } from './weights.ts';
import { workHours } from './work-hours.ts';

export interface CompileOptions {
  /** Nothing is planned after this. */
  readonly to: Minute;
  /** Task id -> the shop's own factor on the hours of its film. */
  readonly factors: ReadonlyMap<string, number>;
  /** The plan that the shop follows now. */
  readonly kept?: Plan;
  /** Moves off that plan cost nothing: it is only where the search begins, and how what is done was laid. */
  readonly anew?: boolean;
  /** Ids of the tasks that may move, and when each begins at the latest; all others stay as `kept` has them. Absent: everything may. */
  readonly moving?: ReadonlyMap<string, Minute>;
  /** What stands in the way of those that may move. */
  readonly blocks?: readonly Block[];
}

/** The problem while it is put together. Numbers of activities are given out first, since holds point forward. */
interface Draft {
  readonly ground: Ground;
  readonly facts: Facts;
  readonly activities: Activity[];
  readonly meanings: Meaning[];
  readonly lags: Lag[];
  readonly terms: Term[];
  readonly activityOf: Map<string, number>;
  readonly sources: Map<string, Source>;
  readonly moving: ReadonlyMap<string, Minute> | undefined;
}

function add(draft: Draft, activity: Activity, meaning: Meaning): number {
  draft.activities.push(activity);
  draft.meanings.push(meaning);
  return draft.activities.length - 1;
}

function sourceOf(draft: Draft, task: string): Source {
  const source = draft.sources.get(task);
  if (source === undefined) throw new Error(`${task} is waited for but not planned`);
  return source;
}

/** A step still to do: in every manner, or, where it is not one of those that move, as it is planned. */
function activityFor({ ground, activityOf, moving }: Draft, task: Task): { activity: Activity; manners: Manner[] } {
  const planned = ground.kept.get(task.id);
  if (moving === undefined || planned === undefined) return taskActivity(ground, task, activityOf);
  const last = moving.get(task.id);
  return last === undefined
    ? stayingActivity(ground, task, planned, activityOf)
    : soonerActivity(ground, task, planned, last, activityOf);
}

function addTask(draft: Draft, task: Task): void {
  const { ground } = draft;
  const done = ground.situation.done.get(task.id);
  if (done !== undefined) {
    const activity = add(draft, doneActivity(task, done.from, done.to), { kind: 'done', task });
    const manner = mannerAsPlanned(ground, task);
    const place = standingPlace(ground, task.object);
    const dried = manner === undefined ? [] : [manner];
    draft.sources.set(task.id, {
      activity,
      task: task.id,
      factor: ground.factorOf(task.id),
      variants: variantsOf(dried),
      manners: dried.map((m) => ({ ...m, place: place ?? m.place })),
    });
    return;
  }
  const { activity, manners } = draft.facts.atWork.get(task.id) ?? activityFor(draft, task);
  draft.sources.set(task.id, {
    activity: add(draft, activity, { kind: 'task', task, manners }),
    task: task.id,
    factor: ground.factorOf(task.id),
    variants: variantsOf(manners),
    manners,
  });
}

/** A fact cannot be made to wait. */
function isFact({ done, atWork }: Situation, task: Task): boolean {
  return done.has(task.id) || atWork.has(task.id);
}

function prepModes(draft: Draft, prep: Task, window: number): { modes: Mode[]; choices: WindowMode[] } {
  // Work for a late window that is not planned is not taken up for a step that stays.
  if (draft.moving !== undefined && !draft.ground.kept.has(prep.id)) return { modes: [], choices: [] };
  const { activity, manners } = activityFor(draft, prep);
  const choice = (manner: Manner): WindowMode => ({ window, prep: { task: prep, manner } });
  return { modes: [...activity.modes], choices: manners.map(choice) };
}

/** An activity whose mode says which window the coat goes into; where that window asks for it, it is the preparation. */
function addWindowChoice(
  draft: Draft,
  coat: Task,
  need: Need & { kind: 'window' },
  tasks: ReadonlyMap<string, Task>,
): void {
  const modes: Mode[] = [];
  const choices: WindowMode[] = [];
  prepTasksOf(need, tasks).forEach((prep, window) => {
    if (prep === undefined) {
      modes.push({ name: `window ${window + 1}`, duration: 0, uses: [] });
      choices.push({ window });
      return;
    }
    const prepared = prepModes(draft, prep, window);
    modes.push(...prepared.modes);
    choices.push(...prepared.choices);
  });
  const film = sourceOf(draft, need.task);
  const to = sourceOf(draft, coat.id).activity;
  const chooser = add(draft, { name: `${coat.id} window`, modes }, { kind: 'window', coat, film: need.task, choices });
  const modesWhere = (keep: (c: WindowMode) => boolean) =>
    choices.flatMap((choice, mode) => (keep(choice) ? [mode] : []));
  draft.lags.push(orderLag(film.activity, chooser, 0), orderLag(chooser, to, 0));
  draft.lags.push(
    ...windowLags(draft.ground, film, need, to, (window) => [
      { activity: chooser, modes: modesWhere((c) => c.window === window) },
    ]),
  );
  for (const prep of new Set(choices.flatMap((c) => (c.prep === undefined ? [] : [c.prep.task])))) {
    draft.activityOf.set(prep.id, chooser);
    const when = [{ activity: chooser, modes: modesWhere((c) => c.prep?.task === prep) }];
    for (const wait of prep.needs)
      draft.lags.push(...needLags(draft.ground, sourceOf(draft, wait.task), wait, chooser, when));
    const manners = choices.map((c) => (c.prep?.task === prep ? c.prep.manner : undefined));
    addUnmoved(draft, prep, { activity: chooser, manners });
  }
}

/** Keeps what is wet in its place. */
function addUnmoved(draft: Draft, task: Task, to: Mover): void {
  if (task.atOnceAfter !== undefined) return;
  const unmoved = unmovedBefore(draft.ground, task);
  const alone = task.onlyFor === undefined && outlastsAll(draft.ground, task, unmoved);
  for (const film of unmoved) draft.lags.push(...unmovedLags(draft.ground, sourceOf(draft, film.id), to, alone));
}

function addNeeds(draft: Draft, task: Task, tasks: ReadonlyMap<string, Task>): void {
  if (isFact(draft.ground.situation, task)) return;
  const to = sourceOf(draft, task.id);
  for (const need of task.needs)
    if (needsChoice(need)) addWindowChoice(draft, task, need, tasks);
    else draft.lags.push(...needLags(draft.ground, sourceOf(draft, need.task), need, to.activity));
  addUnmoved(draft, task, to);
}

/** A step done in place may keep the place until it and all that lies beneath can be moved, and then give it free. */
function addClearing(draft: Draft, task: Task): void {
  const { activity, manners } = sourceOf(draft, task.id);
  const cleared = add(
    draft,
    { name: clearingOf(task), modes: [{ name: 'cleared', duration: 0, uses: [] }] },
    { kind: 'cleared', task },
  );
  const modes = manners.flatMap((m, mode) => (m.inPlace === 'until-movable' ? [mode] : []));
  const when = [{ activity, modes }];
  draft.lags.push(orderLag(activity, cleared, 0, when));
  for (const film of [...unmovedBefore(draft.ground, task), task])
    draft.lags.push(...markLags(draft.ground, sourceOf(draft, film.id), 'handle', cleared, when));
  const next = followerOf(draft.ground, task, draft.activityOf);
  if (next !== undefined) draft.lags.push(orderLag(cleared, next, 0, when));
}

/** A step of the plan that the shop follows had better stay where it is. */
function addMoved(draft: Draft, task: Task): void {
  const at = draft.ground.kept.get(task.id)?.spans[0]?.start;
  const activity = draft.activityOf.get(task.id);
  if (at === undefined || activity === undefined || at < draft.ground.from || isFact(draft.ground.situation, task))
    return;
  draft.terms.push({ name: `moved ${task.id}`, kind: 'moved', activity, at, weight: MOVED_WEIGHT, once: MOVED_ONCE });
}

/** When all is done and every film may be wrapped and stacked, in opening hours: the piece can be handed over. */
function addReady(draft: Draft, piece: Piece, tasks: readonly Task[], near: boolean): void {
  const { ground } = draft;
  const { shop } = ground.book;
  const opening = openSpans(shop.opening, shop.timeZone, ground.from, ground.to);
  const starts = intersect(opening, [{ start: Math.max(ground.from, backFrom(piece) ?? 0), end: ground.to }]);
  const ready = add(
    draft,
    { name: `${piece.id} ready`, modes: [{ name: 'ready', duration: 0, starts, uses: [] }] },
    { kind: 'ready', piece },
  );
  const waitedFor = new Set(tasks.flatMap((t) => t.needs.flatMap((n) => (n.kind === 'within' ? [] : [n.task]))));
  for (const task of tasks) {
    const source = sourceOf(draft, task.id);
    if (!waitedFor.has(task.id)) draft.lags.push(orderLag(source.activity, ready, 0));
    draft.lags.push(...markLags(ground, source, 'stack', ready));
  }
  if (piece.wantedBy !== undefined)
    draft.terms.push({
      name: `late ${piece.id}`,
      kind: 'late',
      activity: ready,
      due: piece.wantedBy,
      weight: lateWeight(piece) * (near ? LATE_BEFORE_MOVED : 1),
    });
  draft.terms.push({ name: `tied up ${piece.id}`, kind: 'end', activity: ready, weight: tieUpWeight(piece) });
}

function aroundOf(draft: Draft, air: ShopAir): Around {
  const { ground, activities } = draft;
  return {
    ground,
    airIn: (room) => {
      const series = air.get(room);
      if (series === undefined) throw new Error(`the air of room ${room} is missing`);
      return series;
    },
    carry: carryOf(ground),
    sourceOf: (task) => sourceOf(draft, task),
    modesOf: (activity) => activities[activity]?.modes ?? [],
  };
}

/** What comes from a colder room warms up before it is coated. */
function addCarried(draft: Draft, task: Task, around: Around): void {
  draft.lags.push(...carryLags(task, around));
  draft.meanings.forEach((meaning, activity) => {
    if (meaning.kind !== 'window' || meaning.coat.id !== task.id) return;
    const manners = meaning.choices.map((c) => c.prep?.manner);
    draft.lags.push(...carryLagsAfterPrep({ activity, manners }, task, around));
  });
}

/** Nothing that is still to be placed starts later: what moves never does so to later. */
function lastStart({ moving, to }: CompileOptions): Minute {
  return moving === undefined ? to : Math.max(...moving.values()) + 1;
}

/** Turns what is known at a moment into a scheduling problem, with the key to read its answer by. */
export function compile(situation: Situation, air: ShopAir, options: CompileOptions): Compiled {
  const { book } = situation;
  const span = { from: situation.now, to: options.to };
  const drying = shopDrying(book, air, span.from, lastStart(options));
  const hours = workHours(book.shop, span.from, span.to);
  const ground = layGround(situation, span, drying, hours, options.factors, options.kept);
  const held = heldTasks(situation);
  const free = situation.tasks.filter((t) => !held.has(t.id));
  const planned = free.filter((t) => t.onlyFor === undefined && ground.ragsAfter(t.atOnceAfter ?? '') !== t);
  const byId = new Map(free.map((t) => [t.id, t]));
  const numbers = new Map(planned.map((t, i) => [t.id, i]));
  const inPlace = planned.filter(
    (t) =>
      !isFact(situation, t) &&
      t.atOnceAfter === undefined &&
      mayBeInPlace(ground, t) &&
      stayInPlace(ground, t, numbers) === 'until-movable',
  );
  const activityOf = new Map([...numbers, ...inPlace.map((t, i) => [clearingOf(t), numbers.size + i] as const)]);
  const draft: Draft = {
    ground,
    facts: factsOf(ground, planned, activityOf),
    activities: [],
    meanings: [],
    lags: [],
    terms: [],
    activityOf,
    sources: new Map(),
    moving: options.moving,
  };
  for (const task of planned) addTask(draft, task);
  for (const task of inPlace) addClearing(draft, task);
  for (const task of planned) addNeeds(draft, task, byId);
  for (const task of planned)
    draft.lags.push(...overtakenLags(draft.ground, task, byId, (id) => draft.sources.get(id)));
  const around = aroundOf(draft, air);
  for (const task of planned) if (!isFact(situation, task)) addCarried(draft, task, around);
  for (const { task, activity } of draft.facts.drying) add(draft, activity, { kind: 'drying', task });
  for (const block of options.blocks ?? [])
    add(draft, blockActivity(ground, block), { kind: 'block', task: block.task, step: block.step });
  const near = options.kept !== undefined && options.anew !== true;
  if (near) for (const task of free) addMoved(draft, task);
  for (const task of planned)
    if (task.atOnceAfter !== undefined && !isFact(situation, task))
      draft.terms.push({
        name: `rags ${task.id}`,
        kind: 'end',
        activity: sourceOf(draft, task.id).activity,
        weight: RAGS_WEIGHT,
      });
  // What moves begins sooner, so that no piece is ready later than it is planned.
  for (const piece of options.moving === undefined ? book.pieces : []) {
    const own = planned.filter((t) => t.piece === piece.id);
    if (own.length > 0 && !situation.tasks.some((t) => t.piece === piece.id && held.has(t.id)))
      addReady(draft, piece, own, near);
  }
  const problem: Problem = {
    from: span.from,
    to: span.to,
    resources: ground.resources,
    exclusions: book.shop.rooms.length,
    activities: draft.activities,
    lags: draft.lags,
    objective: draft.terms,
  };
  return { problem, meanings: draft.meanings, activityOf: draft.activityOf, ground };
}
