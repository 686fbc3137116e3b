import type { Schedule } from '../engine/problem.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
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
    case 'ready':
      return { mode: 0, step: undefined };
  }
}

/** The plan that the shop follows, as a schedule of the new problem. What it does not know starts now. */
export function keptSchedule(compiled: Compiled, kept: Plan): Schedule {
  const steps = new Map(kept.steps.map((s) => [s.id, s]));
  const { problem } = compiled;
  const places = compiled.meanings.map((meaning, i) => {
    const { mode, step } = modeOf(meaning, steps);
    const start = step?.spans[0]?.start ?? problem.from;
    const end = step?.spans.at(-1)?.end ?? start + (problem.activities[i]?.modes[mode]?.duration ?? 0);
    return { mode, start, end };
  });
  return {
    starts: places.map((p) => p.start),
    ends: places.map((p) => p.end),
    modes: places.map((p) => p.mode),
  };
}
