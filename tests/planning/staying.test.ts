import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import type { Deed } from '../../src/model/journal.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import type { Minute } from '../../src/time/span.ts';
import { anyBook, now } from '../support/random-shop.ts';

const long = process.env['DRYBENCH_LONG'] === '1';
const numRuns = long ? 300 : 10;

function planAt(book: Book, at: Minute, deeds: readonly Deed[], kept?: Plan): Plan | undefined {
  const journal = deeds.map((deed, i) => ({ number: i + 1, at, deed }));
  const made = makePlan(situationOf({ ...book, journal }, at), { seed: 1, steps: 60, ...(kept && { kept }) });
  if (made.kind === 'broken') throw new Error(made.breaches.map((b) => `${b.rule}: ${b.text}`).join('\n'));
  return made.kind === 'plan' ? made.plan : undefined;
}

const startOf = (step: PlannedStep | undefined): Minute => step?.spans[0]?.start ?? 0;
const endOf = (step: PlannedStep | undefined): Minute => step?.spans.at(-1)?.end ?? 0;

function doneAsPlanned(step: PlannedStep): Deed {
  return { kind: 'done', task: step.id, from: startOf(step), to: endOf(step), station: step.station };
}

/** Where everything still to do lies: when, where, by whom, how. */
function lies({ steps }: Plan): unknown[] {
  return steps
    .filter((s) => s.done !== true && s.atWork !== true)
    .map(({ id, spans, room, station, hands, way }) => ({ id, spans, room, station, hands, way }));
}

/** Ids of steps still to do that start at another minute, or are new, or gone. */
function moved(before: Plan, after: Plan): string[] {
  const starts = new Map(before.steps.filter((s) => s.done !== true).map((s) => [s.id, startOf(s)]));
  return after.steps.filter((s) => s.done !== true && starts.get(s.id) !== startOf(s)).map((s) => s.id);
}

test('what is done just as planned moves nothing, not by a minute', () => {
  let held = 0;
  fc.assert(
    fc.property(anyBook(3, 5), fc.nat(6), (book, more) => {
      const first = planAt(book, now, []);
      const steps = first?.steps ?? [];
      const last = steps[Math.min(more, steps.length - 1)];
      if (first === undefined || last === undefined) return;
      const at = endOf(last);
      const done = steps.filter((s) => endOf(s) <= at);
      // What goes on at that minute is not done and was not entered as begun.
      if (steps.some((s) => startOf(s) < at && endOf(s) > at)) return;
      const next = planAt(book, at, done.map(doneAsPlanned), first);
      const rest = { ...first, steps: steps.filter((s) => !done.includes(s)) };
      expect(next && lies(next)).toEqual(lies(rest));
      held += 1;
    }),
    { seed: 20270115, numRuns, endOnFailure: true },
  );
  expect(held).toBeGreaterThan(numRuns / 3);
});

test('an hour that passes before anything is due, and a step put off to when it is due, move nothing', () => {
  let held = 0;
  fc.assert(
    fc.property(anyBook(3, 5), fc.nat(50), (book, pick) => {
      const first = planAt(book, now, []);
      const steps = first?.steps ?? [];
      const step = steps[pick % Math.max(1, steps.length)];
      if (first === undefined || step === undefined) return;
      const at = Math.min(...steps.map(startOf));
      const next = planAt(book, at, [{ kind: 'slipped', task: step.id, until: startOf(step) }], first);
      expect(next && lies(next)).toEqual(lies(first));
      held += 1;
    }),
    { seed: 20270115, numRuns, endOnFailure: true },
  );
  expect(held).toBeGreaterThan(numRuns / 2);
});

test('planned anew, all that is weighed is in sum no worse than by the plan that is followed, and sometimes better', () => {
  let better = 0;
  fc.assert(
    fc.property(anyBook(3, 5), (book) => {
      const first = planAt(book, now, []);
      if (first === undefined) return;
      const anew = makePlan(situationOf(book, now), { seed: 2, steps: 600, kept: first, anew: true });
      if (anew.kind !== 'plan') throw new Error(anew.kind);
      expect(costOf(anew.plan)).toBeLessThanOrEqual(costOf(first));
      if (costOf(anew.plan) < costOf(first)) better += 1;
    }),
    { seed: 20270115, numRuns, endOnFailure: true },
  );
  expect(better).toBeGreaterThan(0);
});

function costOf({ proof }: Plan): number {
  return proof.objective.find((o) => o.name === 'all')?.value ?? Infinity;
}

test('a piece that shares neither hand, place nor hour with what slipped stays where it is', () => {
  let slipped = 0;
  fc.assert(
    fc.property(anyBook(3, 5), fc.nat(50), fc.integer({ min: 1, max: 30 }), (book, pick, hours) => {
      const first = planAt(book, now, []);
      const steps = first?.steps ?? [];
      const step = steps[pick % Math.max(1, steps.length)];
      if (first === undefined || step === undefined) return;
      const next = planAt(book, now, [{ kind: 'slipped', task: step.id, until: startOf(step) + hours * 60 }], first);
      if (next === undefined || next.pieces.some((p) => p.lateHours > 0)) return;
      slipped += 1;
      const ids = moved(first, next);
      // All that ended before what slipped was to begin has no part in it.
      const before = steps.filter((s) => s.piece !== step.piece && s.holdsStationUntil <= startOf(step));
      expect(before.filter((s) => ids.includes(s.id)).map((s) => s.id)).toEqual([]);
      // Who moves is of its piece, or what lies in its old place now (or in that of one that moved) met it there.
      const after = new Map(next.steps.map((s) => [s.id, s]));
      const reached = new Set([step.piece]);
      const movers = ids.flatMap((id) => after.get(id) ?? []);
      const homes = new Map(steps.map((s) => [s.id, s]));
      for (let grew = true; grew;) {
        grew = false;
        for (const mover of movers) {
          if (reached.has(mover.piece)) continue;
          const home = homes.get(mover.id);
          const meets = movers.some(
            (other) => reached.has(other.piece) && home !== undefined && shares(other, home) && overlap(other, home),
          );
          if (!meets) continue;
          reached.add(mover.piece);
          grew = true;
        }
      }
      expect(movers.filter((m) => !reached.has(m.piece)).map((m) => m.id)).toEqual([]);
    }),
    { seed: 20270115, numRuns, endOnFailure: true },
  );
  expect(slipped).toBeGreaterThan(numRuns / 5);
});

/** Do two steps need one hand, place or tool, or the same air free of dust? */
function shares(a: PlannedStep, b: PlannedStep): boolean {
  return (
    a.room === b.room ||
    a.hands.some((hand) => b.hands.includes(hand)) ||
    a.tools.some((tool) => b.tools.includes(tool))
  );
}

function overlap(a: PlannedStep, b: PlannedStep): boolean {
  const until = (s: PlannedStep) => Math.max(endOf(s), s.holdsStationUntil, s.dry?.['dust-free']?.late ?? 0);
  return startOf(a) < until(b) && startOf(b) < until(a);
}
