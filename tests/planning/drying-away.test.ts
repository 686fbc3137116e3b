import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt } from '../../src/time/zone.ts';
import { demo } from '../trade/shipped.ts';

const HOUR = 60;
const { pieces, ...rest } = demo();
const { timeZone } = rest.shop;
const stool = pieces.find((piece) => piece.id === 'piano-stool')!;
const arrives = minuteAt('2027-01-18', 0, timeZone);
const now = minuteAt('2027-01-18', 7 * HOUR + 30, timeZone);

function stepsWith(away: { start: number; end: number }[]) {
  const there = { ...stool, arrives, away: away.map((span) => ({ ...span, at: 'upholsterer' })) };
  const made = makePlan(situationOf({ ...rest, pieces: [there] }, now), { seed: 1, steps: 60 });
  if (made.kind !== 'plan') throw new Error(made.kind);
  return made.plan.steps;
}

// Common practice, no source: paste grain filler stands a day, here 24 h to 48 h, and lacquer two days before it is rubbed.
test('films go on drying while the piece is away: the wait is over when it is back, and nothing is done meanwhile', () => {
  const home = stepsWith([]);
  const filled = home.find((s) => s.step === 'grain-fill')!;
  const movable = filled.dry!.handle!.late;
  // It leaves as soon as the filler is safe to move, and is back a day after the filler can be sanded.
  const away = { start: movable, end: filled.dry!.sand!.late + 24 * HOUR };
  const steps = stepsWith([away]);
  const again = steps.find((s) => s.step === 'grain-fill')!;
  const smooth = steps.find((s) => s.step === 'sand-filled')!;

  expect(again.spans).toEqual(filled.spans);
  expect(again.dry).toEqual(filled.dry);
  for (const { start, end } of steps.flatMap((s) => s.spans)) expect(start >= away.end || end <= away.start).toBe(true);
  // Nothing of the stay is added to the wait: it is sanded on the first working day that it is back.
  const firstDay = smooth.spans[0]!.start - away.end;
  expect(firstDay).toBeGreaterThanOrEqual(0);
  expect(firstDay).toBeLessThan(24 * HOUR);
});
