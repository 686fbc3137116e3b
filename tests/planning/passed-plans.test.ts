import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { ShopAir } from '../../src/air/shop-air.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import { changed } from '../../src/planning/change.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import type { Breach } from '../../src/verify/breach.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { verify } from '../../src/verify/verify.ts';
import { demoPlan } from './demo.ts';
import { anyBook, now } from '../support/random-shop.ts';

interface Shift {
  readonly step: number;
  readonly minutes: number;
}

interface Otherwise {
  readonly shifts: readonly Shift[];
  /** One step at another's place. */
  readonly swap?: readonly [number, number] | undefined;
  readonly left: number | undefined;
  /** A coat on work that is brought in is begun so much sooner: while it is still cold, perhaps. */
  readonly sooner?: Shift | undefined;
  /** Rooms so much warmer for two days from then on. */
  readonly warmed?: { readonly room: number; readonly byK: number; readonly after: number } | undefined;
  readonly opened: boolean;
}

const otherwise: fc.Arbitrary<Otherwise> = fc.record({
  shifts: fc.array(
    fc.record({ step: fc.nat(1000), minutes: fc.oneof(fc.integer({ min: -90, max: 90 }), fc.constant(-1440)) }),
    { maxLength: 2 },
  ),
  swap: fc.option(fc.tuple(fc.nat(1000), fc.nat(1000)), { nil: undefined, freq: 4 }),
  left: fc.option(fc.nat(1000), { nil: undefined, freq: 8 }),
  sooner: fc.option(fc.record({ step: fc.nat(1000), minutes: fc.integer({ min: -300, max: -5 }) }), {
    nil: undefined,
    freq: 2,
  }),
  warmed: fc.option(fc.record({ room: fc.nat(9), byK: fc.constantFrom(-8, -2, 3), after: fc.nat(10) }), {
    nil: undefined,
    freq: 3,
  }),
  opened: fc.boolean(),
});

function changedPlan(plan: Plan, { shifts, swap, left, sooner }: Otherwise): Plan {
  const steps: PlannedStep[] = [...plan.steps];
  const at = (k: number) => k % steps.length;
  const shift = (k: number, minutes: number) => {
    const spans = steps[k]!.spans.map(({ start, end }) => ({ start: start + minutes, end: end + minutes }));
    steps[k] = { ...steps[k]!, spans };
  };
  for (const { step, minutes } of shifts) shift(at(step), minutes);
  const brought = steps.flatMap((s, k) => (s.broughtIn !== undefined && s.material !== undefined ? [k] : []));
  if (sooner !== undefined && brought.length > 0) shift(brought[sooner.step % brought.length]!, sooner.minutes);
  if (swap !== undefined) {
    const [to, from] = [steps[at(swap[0])]!, steps[at(swap[1])]!];
    steps[at(swap[0])] = { ...to, station: from.station, room: from.room };
  }
  return { ...plan, steps: steps.filter((_, k) => left === undefined || k !== at(left)) };
}

function changedEvidence(evidence: Evidence, plan: Plan, { warmed, opened }: Otherwise): Evidence {
  const { situation } = evidence;
  const { shop } = situation.book;
  const [first] = shop.hands;
  const book =
    opened && first !== undefined
      ? changed(situation.book, {
          kind: 'in',
          hand: first.id,
          date: new Date((plan.from + 2 * 1440) * 60_000).toISOString().slice(0, 10),
          spans: [{ from: 6 * 60, to: 7 * 60 }],
        })
      : situation.book;
  const room = warmed && shop.rooms[warmed.room % shop.rooms.length];
  const series = room && evidence.air.get(room.id);
  const air: ShopAir =
    warmed === undefined || room === undefined || series === undefined
      ? evidence.air
      : new Map([
          ...evidence.air,
          [
            room.id,
            {
              ...series,
              tempC: series.tempC.map((t, i) => {
                const day = Math.floor((series.from + i * series.stepMinutes - plan.from) / 1440) - warmed.after;
                return day >= 0 && day < 2 ? t + warmed.byK : t;
              }),
            },
          ],
        ]);
  return { ...evidence, situation: { ...situation, book }, air };
}

const told = (breaches: readonly Breach[]) =>
  breaches.map((b) => `${b.rule} ${b.steps.join()} ${b.at} ${b.text}`).sort();

function compare(evidence: Evidence, plan: Plan, other: Otherwise): number {
  const after = changedEvidence(evidence, plan, other);
  const then = changedPlan(plan, other);
  const whole = verify(after, then);
  expect(told(verify(after, then, { passed: { evidence, plan } }))).toEqual(told(whole));
  return whole.filter((b) => b.rule === 'air' || b.rule === 'shown').length;
}

test('what is not looked at again, since it was held against the same before, would have been found in order', () => {
  let broken = 0;
  const { plan, situation, air, factors } = demoPlan(50);
  const evidence = { situation, air, factors };
  expect(verify(evidence, plan)).toEqual([]);
  fc.assert(
    fc.property(otherwise, (other) => {
      if (compare(evidence, plan, other) > 0) broken += 1;
    }),
    { numRuns: 60 },
  );
  expect(broken).toBeGreaterThan(20);
});

test('in random shops, too', () => {
  fc.assert(
    fc.property(anyBook(3, 5), otherwise, (book, other) => {
      const situation = situationOf(book, now);
      const made = makePlan(situation, { seed: 1, steps: 50 });
      if (made.kind !== 'plan') return;
      const { plan, air, factors } = made;
      compare({ situation, air, factors }, plan, other);
    }),
    { numRuns: 25 },
  );
});
