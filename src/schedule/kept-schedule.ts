import type { Schedule } from '../engine/problem.ts';
import { endOf, startOf, type Plan, type PlannedStep } from '../model/plan.ts';
import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import type { Compiled, Meaning } from './compiled.ts';
import type { Manner } from './manners.ts';
import { mannerAsPlanned } from './task-activity.ts';

interface Known {
  readonly compiled: Compiled;
  readonly steps: ReadonlyMap<string, PlannedStep>;
  /** Task id -> when it is over, by what has slipped since. */
  readonly ends: ReadonlyMap<string, Minute>;
}

/** Did it keep its place until the section's next step began, or longer than it would by itself? */
export function keptItsPlace(step: PlannedStep, next: PlannedStep | undefined): boolean {
  if (next !== undefined && step.holdsStationUntil === startOf(next)) return true;
  return step.holdsStationUntil > (step.dry?.handle?.late ?? endOf(step));
}

/** Is the step planned just so? */
export function sameManner(manner: Manner, step: PlannedStep): boolean {
  return (
    manner.way.name === step.way &&
    manner.place.stations.some((s) => s.id === step.station) &&
    manner.hands.length === step.hands.length &&
    manner.hands.every((h) => step.hands.includes(h))
  );
}

function taskMode({ compiled, steps }: Known, { task, manners }: Meaning & { kind: 'task' }): number {
  const step = steps.get(task.id);
  if (step === undefined) return 0;
  const inPlace = keptItsPlace(step, steps.get(compiled.ground.nextOf.get(task.id)?.id ?? ''));
  const same = manners.map((manner) => sameManner(manner, step));
  const exact = manners.findIndex((m, k) => same[k] === true && (m.inPlace !== undefined) === inPlace);
  return Math.max(0, exact < 0 ? same.indexOf(true) : exact);
}

/** The film that a coat goes over: how it is laid, and when it is over. */
function filmBelow({ compiled, ends }: Known, film: string, modes: readonly number[]) {
  const activity = compiled.activityOf.get(film) ?? -1;
  const meaning = compiled.meanings[activity];
  const end = ends.get(film);
  const manner =
    meaning?.kind === 'done'
      ? mannerAsPlanned(compiled.ground, meaning.task)
      : meaning?.kind === 'task'
        ? meaning.manners[modes[activity] ?? 0]
        : undefined;
  return manner?.way.film === undefined || end === undefined
    ? undefined
    : { film: manner.way.film, room: manner.place.room, end };
}

function windowMode(known: Known, { coat, film, choices }: Meaning & { kind: 'window' }, modes: readonly number[]) {
  const { compiled, steps, ends } = known;
  const prepared = choices.findIndex(({ prep }) => {
    const step = prep && steps.get(prep.task.id);
    return prep !== undefined && step !== undefined && sameManner(prep.manner, step);
  });
  if (prepared >= 0) return prepared;
  const coatStep = steps.get(coat.id);
  const below = filmBelow(known, film, modes);
  const need = coat.needs.find((n) => n.kind === 'window' && n.task === film);
  const holds = choices.findIndex(({ prep, window }) => {
    const choice = need?.kind === 'window' ? need.windows[window] : undefined;
    if (prep !== undefined || choice === undefined || coatStep === undefined || below === undefined) return false;
    const { ground } = compiled;
    const { opens, shuts } = ground.drying.window(below.film, below.room, choice, ground.factorOf(film));
    const start = Math.max(startOf(coatStep), ground.from, waitedFor(coat, ends));
    return opens.at(below.end) <= start && start <= (shuts?.at(below.end) ?? start);
  });
  return holds >= 0
    ? holds
    : Math.max(
        0,
        choices.findIndex((c) => c.prep === undefined),
      );
}

function latest(minutes: readonly Minute[]): Minute {
  return Math.max(...minutes, Number.NEGATIVE_INFINITY);
}

/** When the piece could be handed over by the plan that the shop follows: all done, and every film at its last. */
function readyBy(kept: Plan, piece: string): Minute {
  const own = kept.steps.filter((s) => s.piece === piece);
  return latest(own.flatMap((s) => [endOf(s), s.dry?.stack?.late ?? endOf(s)]));
}

function startIn(steps: ReadonlyMap<string, PlannedStep>, task: string | undefined): Minute {
  const step = steps.get(task ?? '');
  return step === undefined ? Number.NEGATIVE_INFINITY : startOf(step);
}

/** When all that a task waits for is over by the places given so far. */
function waitedFor(task: Task, ends: ReadonlyMap<string, Minute>): Minute {
  return latest(task.needs.flatMap((need) => (need.kind === 'within' ? [] : (ends.get(need.task) ?? []))));
}

/**
 * The plan that the shop follows, as a schedule of the new problem. What has slipped pushes on what waits for it, and what
 * the plan does not know stands behind what it waits for: so that the order of the starts is one in which all can be placed.
 */
export function keptSchedule(compiled: Compiled, kept: Plan): Schedule {
  const steps = new Map(kept.steps.map((s) => [s.id, s]));
  const { problem, ground } = compiled;
  const { now, done, atWork } = ground.situation;
  const ends = new Map<string, Minute>();
  for (const task of ground.situation.tasks) {
    const step = steps.get(task.id);
    const minutes = step === undefined ? 0 : endOf(step) - (step.spans[0]?.start ?? 0);
    const from = atWork.get(task.id) ?? Math.max(now, step?.spans[0]?.start ?? now, waitedFor(task, ends));
    ends.set(task.id, done.get(task.id)?.to ?? from + minutes);
  }
  const known = { compiled, steps, ends };
  const modes = compiled.meanings.map((meaning) => (meaning.kind === 'task' ? taskMode(known, meaning) : 0));
  compiled.meanings.forEach((meaning, i) => {
    if (meaning.kind === 'window') modes[i] = windowMode(known, meaning, modes);
  });
  const starts = compiled.meanings.map((meaning, i): Minute => {
    switch (meaning.kind) {
      case 'task':
        return Math.max(startIn(steps, meaning.task.id), problem.from, waitedFor(meaning.task, ends));
      case 'window': {
        const prep = meaning.choices[modes[i] ?? 0]?.prep;
        return Math.max(startIn(steps, prep?.task.id), problem.from, ends.get(meaning.film) ?? problem.from);
      }
      case 'cleared':
        return Math.max(ends.get(meaning.task.id) ?? problem.from, problem.from);
      case 'ready':
        return Math.max(readyBy(kept, meaning.piece.id), problem.from);
      case 'block':
        return startOf(meaning.step);
      case 'done':
      case 'drying':
        return problem.from;
    }
  });
  return {
    starts,
    ends: starts.map((start, i) => start + (problem.activities[i]?.modes[modes[i] ?? 0]?.duration ?? 0)),
    modes,
  };
}
