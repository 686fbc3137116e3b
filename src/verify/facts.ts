import type { AirSeries } from '../air/series.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { SessionPart } from '../model/session-part.ts';
import type { Situation } from '../model/situation.ts';
import type { Task, Way } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { lateMark, type Fact, type LaidFilm } from './fact.ts';

/** What a plan is checked against. */
export interface Evidence {
  readonly situation: Situation;
  /** Room id -> its air. */
  readonly air: ReadonlyMap<string, AirSeries>;
  /** Task id -> factor on the hours of its film, where something was seen of it. */
  readonly factors: ReadonlyMap<string, number>;
}

/** Whole minutes in order, none inside another; only what is done may have taken no time. */
export function wellFormed(step: PlannedStep, done: boolean): boolean {
  return (
    step.spans.length > 0 &&
    step.spans.every(({ start, end }, i) => {
      const before = step.spans[i - 1];
      const ordered = before === undefined || before.end <= start;
      return Number.isInteger(start) && Number.isInteger(end) && (start < end || (done && start === end)) && ordered;
    })
  );
}

function laidBy(task: Task, way: Way, room: string, evidence: Evidence): LaidFilm | undefined {
  if (way.film === undefined) return undefined;
  const material = evidence.situation.book.materials.get(way.film.material);
  const air = evidence.air.get(room);
  if (material === undefined || air === undefined) return undefined;
  return { material, film: way.film, air, factor: evidence.factors.get(task.id) ?? 1 };
}

/** What can be said of a planned step; undefined where the plan makes no sense of it, which other rules tell. */
export function factOf(
  step: PlannedStep,
  task: Task,
  evidence: Evidence,
  sureUntil: Minute,
  part?: SessionPart,
): Fact | undefined {
  const { situation } = evidence;
  const way = task.ways.find((w) => w.name === step.way);
  const station = situation.book.shop.stations.find((s) => s.id === step.station);
  const done = situation.done.has(task.id);
  const first = step.spans[0];
  const last = step.spans.at(-1);
  if (way === undefined || station === undefined || first === undefined || last === undefined) return undefined;
  if (!wellFormed(step, done)) return undefined;
  const laid = laidBy(task, way, station.room, evidence);
  const film = { ...(laid !== undefined && { laid }), end: last.end, step, sureUntil };
  return {
    id: task.id,
    task,
    way,
    station,
    start: first.start,
    ...film,
    ...(part === undefined ? {} : { part }),
    settled: done || situation.atWork.has(task.id),
    wetUntil: lateMark(film, 'dust-free'),
    movableFrom: lateMark(film, 'handle'),
  };
}
