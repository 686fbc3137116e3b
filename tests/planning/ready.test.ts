import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { COAT_2, filmBook, start } from './film-book.ts';

const HOUR = 60;
/** Standard normal deviates that 90 % and 95 % lie below: normal tables, for example NIST/SEMATECH e-Handbook 1.3.6.7.1. */
const Z90 = 1.2816;
const Z95 = 1.6449;

function planned() {
  const made = makePlan(situationOf(filmBook({}), start - HOUR), { seed: 1, steps: 200 });
  if (made.kind !== 'plan') throw new Error(made.kind);
  return made.plan;
}

test('the date that holds with 90 % is the quantile of the log-normal spread of the last film and of the air', () => {
  const plan = planned();
  const end = plan.steps.find((s) => s.id === COAT_2)?.spans.at(-1)?.end ?? 0;
  const touch = plan.pieces[0]?.ready.touch;
  if (touch === undefined) throw new Error('no touch');
  expect(touch.typical - end).toBe(2 * HOUR);
  // The sheet says 2 h [1 h - 4 h]; the air's speed deviates by a tenth.
  const deviation = Math.hypot(Math.log(4 / 2) / Z95, 0.1);
  const expected = 2 * Math.exp(Z90 * deviation);
  expect((touch.safe - end) / HOUR / expected).toBeGreaterThan(0.9);
  expect((touch.safe - end) / HOUR / expected).toBeLessThan(1.1);
  expect(touch.chance).toBeGreaterThanOrEqual(0.9);
  expect(touch.chance).toBeLessThan(0.93);
});

test('handing over waits for the shop to open, and says the chance that it then has', () => {
  const { pieces, steps } = planned();
  const ready = pieces[0]?.ready;
  const [listed, over] = [ready?.listed, ready?.handedOver];
  if (listed === undefined || over === undefined) throw new Error('not ready');
  const lastEnd = Math.max(...steps.map((s) => s.spans.at(-1)?.end ?? 0));
  expect(listed.typical).toBe(lastEnd);
  expect(over.safe).toBeGreaterThanOrEqual(over.typical);
  expect(over.typical).toBeGreaterThan(listed.typical);
  for (const minute of [over.safe, over.typical]) {
    const clock = minute % 1440;
    expect(clock).toBeGreaterThanOrEqual(6 * HOUR);
    expect(clock).toBeLessThan(22 * HOUR);
  }
  expect(over.chance).toBeGreaterThanOrEqual(0.9);
  expect(over.chance).toBeLessThanOrEqual(1);
});
