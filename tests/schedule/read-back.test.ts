import { beforeAll, describe, expect, it } from 'vitest';
import type { PlannedStep } from '../../src/model/plan.ts';
import { compile } from '../../src/schedule/compile.ts';
import type { Compiled } from '../../src/schedule/compiled.ts';
import { decode, decodeBare } from '../../src/schedule/decode.ts';
import { keptSchedule } from '../../src/schedule/kept-schedule.ts';
import { demoPlan } from '../planning/demo.ts';

describe('a plan of which nothing moves', () => {
  let made: ReturnType<typeof demoPlan>;
  let compiled: Compiled;

  beforeAll(() => {
    made = demoPlan(200);
    const { plan, air, factors, situation } = made;
    compiled = compile(situation, air, { to: plan.to, factors, kept: plan, anew: true, moving: new Map() });
  });

  it('is laid out in just the manner of each step', () => {
    const steps = new Map(made.plan.steps.map((s) => [s.id, s]));
    let held = 0;
    for (const meaning of compiled.meanings) {
      if (meaning.kind !== 'task') continue;
      const step = steps.get(meaning.task.id)!;
      expect(meaning.manners).toHaveLength(1);
      const [manner] = meaning.manners;
      expect(manner?.way.name).toBe(step.way);
      expect(manner?.hands).toEqual(step.hands);
      // Rags are put away wherever the hands are.
      if (step.atOnceAfter === undefined) expect(manner?.place.stations.map((s) => s.id)).toContain(step.station);
      held += 1;
    }
    expect(held).toBeGreaterThan(100);
  });

  it('is read back alike, with and without what is shown of films and of carrying', () => {
    const { air, plan } = made;
    const schedule = keptSchedule(compiled, plan);
    const told = (step: PlannedStep): Omit<PlannedStep, 'dry' | 'window' | 'broughtIn'> => {
      const shownOnly = ['dry', 'window', 'broughtIn'];
      const bare = Object.entries(step).filter(([key]) => !shownOnly.includes(key));
      return { ...(Object.fromEntries(bare) as unknown as PlannedStep), after: [] };
    };
    const shown = decode(compiled.ground, air, compiled, schedule);
    expect(shown.some((s) => s.dry !== undefined && s.after.length > 0)).toBe(true);
    expect(decodeBare(compiled.ground, air, compiled, schedule)).toEqual(shown.map(told));
  });
});
