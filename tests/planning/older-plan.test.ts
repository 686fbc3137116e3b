import { expect, test } from 'vitest';
import type { Plan } from '../../src/model/plan.ts';
import { asMade } from '../../src/planning/as-made.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt } from '../../src/time/zone.ts';
import { demo } from '../trade/shipped.ts';

const whole = demo();
const book = { ...whole, pieces: whole.pieces.filter((piece) => piece.id === 'oak-table') };
const situation = situationOf(book, minuteAt('2027-01-11', 7 * 60 + 30, book.shop.timeZone));

function planned(kept?: Plan): Plan {
  const made = makePlan(situation, { seed: 1, steps: 60, ...(kept && { kept }) });
  if (made.kind !== 'plan') throw new Error(made.kind);
  return made.plan;
}

test('a kept plan without the steps for oily rags is not followed, and the new one moves nothing else', () => {
  const now = planned();
  const rags = new Set(now.steps.flatMap((s) => (s.atOnceAfter === undefined ? [] : [s.id])));
  expect(rags.size).toBeGreaterThan(0);
  const older: Plan = {
    ...now,
    steps: now.steps
      .filter((s) => !rags.has(s.id))
      .map((s) => ({ ...s, after: s.after.filter(({ step }) => !rags.has(step)) })),
  };
  expect(asMade(book, now)).toBeDefined();
  expect(asMade(book, older)).toBeUndefined();

  const anew = planned(older);
  const lies = (plan: Plan) => plan.steps.map(({ id, spans, station, hands }) => ({ id, spans, station, hands }));
  expect(lies({ ...anew, steps: anew.steps.filter((s) => !rags.has(s.id)) })).toEqual(lies(older));
  expect(new Set(anew.steps.filter((s) => s.atOnceAfter !== undefined).map((s) => s.id))).toEqual(rags);
});
