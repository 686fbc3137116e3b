import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { Deed } from '../../src/model/journal.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { verify } from '../../src/verify/verify.ts';
import { anyBook, now } from '../support/random-shop.ts';

const long = process.env['DRYBENCH_LONG'] === '1';
const numRuns = long ? 200 : 10;

const startOf = (step: PlannedStep): number => step.spans[0]?.start ?? 0;
const endOf = (step: PlannedStep): number => step.spans.at(-1)?.end ?? 0;

/** When all of a piece is done and dry enough to be stacked. */
function readyIn({ steps }: Plan, piece: string): number {
  const own = steps.filter((s) => s.piece === piece);
  return Math.max(...own.map((s) => Math.max(endOf(s), s.dry?.stack?.late ?? 0)));
}

test('no step that moved could have stayed where it was, all else lying as planned', () => {
  let moved = 0;
  fc.assert(
    fc.property(anyBook(3, 5), fc.nat(50), fc.integer({ min: 1, max: 30 }), (book, pick, hours) => {
      const made = makePlan(situationOf(book, now), { seed: 1, steps: 60 });
      if (made.kind !== 'plan') return;
      const first = made.plan;
      const step = first.steps[pick % Math.max(1, first.steps.length)];
      if (step === undefined) return;
      const deed: Deed = { kind: 'slipped', task: step.id, until: startOf(step) + hours * 60 };
      const situation = situationOf({ ...book, journal: [{ number: 1, at: now, deed }] }, now);
      const next = makePlan(situation, { seed: 1, steps: 60, kept: first });
      if (next.kind !== 'plan') throw new Error(next.kind);
      const ground = { situation, air: next.air, factors: next.factors };
      const homes = new Map(first.steps.map((s) => [s.id, s]));
      for (const after of next.plan.steps) {
        const home = homes.get(after.id);
        if (home === undefined || startOf(home) === startOf(after)) continue;
        moved += 1;
        const back: Plan = { ...next.plan, steps: next.plan.steps.map((s) => (s === after ? home : s)) };
        // What is shown beside a step (until when it keeps its place, when it is dry) would be told anew.
        const breaches = verify(ground, back).filter((b) => b.rule !== 'shown');
        const due = book.pieces.find((p) => p.id === after.piece)?.wantedBy ?? Infinity;
        const late = (plan: Plan) => Math.max(0, readyIn(plan, after.piece) - due);
        const stays = breaches.length === 0 && late(back) <= late(next.plan);
        expect(stays ? after.id : '').toBe('');
      }
    }),
    { numRuns },
  );
  expect(moved).toBeGreaterThan(numRuns);
});
