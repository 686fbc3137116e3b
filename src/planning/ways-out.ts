import type { Book } from '../model/book.ts';
import { spansOn } from '../model/hours.ts';
import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { localDays, localTime } from '../time/zone.ts';
import { type Change, changed } from './change.ts';
import { type Made, makePlan } from './make-plan.ts';
import { situationOf } from './situation-of.ts';
import { DRIER_TO_PERCENT, WARMER_BY_K } from './usual-changes.ts';

type NoPlan = Extract<Made, { kind: 'none' }>;

const HALF_HOUR = 30;
const DAY_MINUTES = 24 * 60;
/** A day that is not opened at all is thought to begin at eight. */
const USUAL_MORNING = 8 * 60;
/** How many days ahead longer hours are tried, and how many of these by themselves. */
const DAYS_AHEAD = 28;
const DAYS_TRIED = 3;
/** Where no single room is enough, all are warmed. */
const EVERYWHERE_BY_K = [10, 15, 20];
/** As many as are told. */
const ENOUGH = 2;

/** Changes that are made together. */
export type WayOut = readonly Change[];

/** Steps that the conflict names, each once. */
function stuckTasks({ conflict, compiled }: NoPlan): Task[] {
  const tasks = conflict.activities.flatMap((i) => {
    const meaning = compiled.meanings[i];
    return meaning?.kind === 'task' ? [meaning.task] : [];
  });
  return [...new Map(tasks.map((task) => [task.id, task])).values()];
}

/** The days to come, each open without a break for as long as the longest of `tasks` takes, and as long as it is anyway. */
function longerDays(book: Book, now: Minute, tasks: readonly Task[]): (Change & { kind: 'open' })[] {
  const { opening, timeZone } = book.shop;
  const needed = Math.max(...tasks.map((task) => Math.min(...task.ways.map((way) => way.workMinutes))));
  return localDays(now, now + DAYS_AHEAD * DAY_MINUTES, timeZone).map((day) => {
    const spans = spansOn(opening, day);
    const from = Math.min(...spans.map((span) => span.from), spans.length === 0 ? USUAL_MORNING : DAY_MINUTES);
    const long = from + Math.ceil((needed + HALF_HOUR) / HALF_HOUR) * HALF_HOUR;
    const to = Math.min(DAY_MINUTES, Math.max(long, ...spans.map((span) => span.to)));
    return { kind: 'open', date: day.date, spans: [{ from: Math.min(from, to), to }] };
  });
}

/**
 * What lets there be a plan where there was none: two ways of different kinds, the least of each kind. Each was tried. A way
 * is one change, or several of a kind where no single one is enough.
 * @param now the minute that the plan was asked for
 * @param onTry told before each try
 */
export function waysOut(now: Minute, made: NoPlan, seed: number, onTry: () => void = () => undefined): WayOut[] {
  const { book } = made.compiled.ground;
  const tasks = stuckTasks(made);
  if (tasks.length === 0) return [];
  const planWith = (changes: readonly Change[]): Made => {
    onTry();
    return makePlan(situationOf(changes.reduce(changed, book), now), { seed, steps: 1 });
  };
  const works = (change: Change): boolean => planWith([change]).kind === 'plan';

  const openLonger = (): WayOut | undefined => {
    const unbroken = made.compiled.meanings.flatMap((m) => (m.kind === 'task' && !m.task.mayPause ? [m.task] : []));
    const days = longerDays(book, now, [...tasks, ...unbroken]);
    const long = planWith(days);
    if (long.kind !== 'plan') return undefined;
    const { timeZone } = book.shop;
    const dates = tasks.flatMap((task) => {
      const start = long.plan.steps.find((step) => step.id === task.id)?.spans[0]?.start;
      return start === undefined ? [] : [localTime(start, timeZone).date];
    });
    const wanted = days.filter(({ date }) => dates.includes(date));
    return alone(wanted.slice(0, DAYS_TRIED).find(works)) ?? days;
  };
  const rooms = roomsFor(book, tasks);
  const ways: readonly (() => WayOut | undefined)[] = [
    openLonger,
    () => alone(WARMER_BY_K.flatMap((byK) => rooms.map((room): Change => ({ kind: 'warmer', room, byK }))).find(works)),
    () =>
      alone(
        DRIER_TO_PERCENT.flatMap((to) => rooms.map((room): Change => ({ kind: 'drier', room, toRhPercent: to }))).find(
          works,
        ),
      ),
    () =>
      alone([...new Set(tasks.map((t) => t.piece))].map((piece): Change => ({ kind: 'without', piece })).find(works)),
    () => alone(tasks.map((task): Change => ({ kind: 'skip', task: task.id })).find(works)),
    () =>
      EVERYWHERE_BY_K.map((byK): WayOut => book.shop.rooms.map(({ id }) => ({ kind: 'warmer', room: id, byK }))).find(
        (way) => planWith(way).kind === 'plan',
      ),
    () => leavingOut(planWith, made, ({ piece }) => ({ kind: 'without', piece })),
    () => leavingOut(planWith, made, ({ id }) => ({ kind: 'skip', task: id })),
  ];
  const found: WayOut[] = [];
  for (const way of ways) {
    if (found.length === ENOUGH) break;
    const out = way();
    if (out !== undefined) found.push(out);
  }
  return found;
}

/** What `leftOut` says of a stuck step is left out, again and again, as long as what remains is stuck: in the end nothing remains. */
function leavingOut(
  planWith: (changes: readonly Change[]) => Made,
  stuck: NoPlan,
  leftOut: (task: Task) => Change,
): WayOut | undefined {
  const changes: Change[] = [];
  for (let made: Made = stuck; made.kind !== 'plan'; made = planWith(changes)) {
    const [task] = made.kind === 'none' ? stuckTasks(made) : [];
    if (task === undefined) return undefined;
    changes.push(leftOut(task));
  }
  return changes.length > 1 ? changes : undefined;
}

function alone(change: Change | undefined): WayOut | undefined {
  return change && [change];
}

/** Rooms in which a film of one of `tasks` could be laid. */
function roomsFor({ shop }: Book, tasks: readonly Task[]): string[] {
  const kinds = new Set(
    tasks.flatMap((task) => task.ways.flatMap((way) => (way.film === undefined ? [] : way.stations))),
  );
  return [...new Set(shop.stations.filter((s) => kinds.has(s.kind)).map((s) => s.room))];
}
