import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { demoBook, demoNow } from './demo.ts';

test('a coat entered as done before the work beneath it leaves a plan that the verifier passes', () => {
  const book = demoBook();
  const now = demoNow + 270;
  const deed = { kind: 'done' as const, task: 'oak-table/top/oil-1', from: now - 60, to: now };
  const made = makePlan(situationOf({ ...book, journal: [{ number: 1, at: now, deed }] }, now), {
    seed: 1,
    steps: 200,
  });
  expect(made.kind === 'broken' ? made.breaches : made.kind).toBe('plan');
});
