import type { Schedule } from '../engine/problem.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import type { Compiled, Meaning } from './compiled.ts';
import type { Manner } from './manners.ts';

function sameManner(manner: Manner, step: PlannedStep): boolean {
  return (
    manner.way.name === step.way &&
    manner.place.stations.some((s) => s.id === step.station) &&
    manner.hands.length === step.hands.length &&
    manner.hands.every((h) => step.hands.includes(h))
  );
}

function modeOf(
  meaning: Meaning,
  steps: ReadonlyMap<string, PlannedStep>,
): { mode: number; step: PlannedStep | undefined } {
  switch (meaning.kind) {
    case 'task': {
      const step = steps.get(meaning.task.id);
      const mode = step === undefined ? -1 : meaning.manners.findIndex((m) => sameManner(m, step));
      return { mode: Math.max(0, mode), step };
    }
    case 'window': {
      const coat = steps.get(meaning.coat.id);
      const mode = meaning.choices.findIndex(({ prep }) => {
        const step = prep && steps.get(prep.task.id);
        return prep !== undefined && step !== undefined && sameManner(prep.manner, step);
      });
      const prep = meaning.choices[mode]?.prep;
      if (prep !== undefined) return { mode, step: steps.get(prep.task.id) };
      const plain = meaning.choices.findIndex((c) => c.prep === undefined);
      return { mode: Math.max(0, plain), step: coat };
    }
    case 'done':
    case 'drying':
    case 'cleared':
    case 'ready':
      return { mode: 0, step: undefined };
  }
}

function latest(minutes: readonly Minute[]): Minute {
  return Math.max(...minutes, Number.NEGATIVE_INFINITY);
}

/** When the piece could be handed over by the plan that the shop follows: all done, and every film at its last. */
function readyBy(kept: Plan, piece: string): Minute {
  const own = kept.steps.filter((s) => s.piece === piece);
  return latest(own.flatMap((s) => [endOf(s), s.dry?.stack?.late ?? endOf(s)]));
}

/** When all films of the task's section can be moved by the plan that the shop follows. */
function movableBy(kept: Plan, task: Task): Minute {
  const films = kept.steps.filter((s) => s.piece === task.piece && s.section === task.section);
  return latest(films.flatMap((s) => s.dry?.handle?.late ?? []));
}

function endOf(step: PlannedStep): Minute {
  return step.spans.at(-1)?.end ?? 0;
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
  const places = compiled.meanings.map((meaning, i) => {
    const { mode, step } = modeOf(meaning, steps);
    const minutes = problem.activities[i]?.modes[mode]?.duration ?? 0;
    const start = ((): Minute => {
      switch (meaning.kind) {
        case 'task':
          return Math.max(step?.spans[0]?.start ?? problem.from, problem.from, waitedFor(meaning.task, ends));
        case 'window':
          return Math.max(step?.spans[0]?.start ?? problem.from, problem.from, ends.get(meaning.film) ?? problem.from);
        case 'cleared':
          return Math.max(ends.get(meaning.task.id) ?? problem.from, movableBy(kept, meaning.task), problem.from);
        case 'ready':
          return Math.max(readyBy(kept, meaning.piece.id), problem.from);
        case 'done':
        case 'drying':
          return problem.from;
      }
    })();
    return { mode, start, end: start + minutes };
  });
  return {
    starts: places.map((p) => p.start),
    ends: places.map((p) => p.end),
    modes: places.map((p) => p.mode),
  };
}
