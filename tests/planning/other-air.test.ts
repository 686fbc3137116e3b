import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { airForAWhile } from '../../src/air/room-air.ts';
import { startOf, type PlannedStep } from '../../src/model/plan.ts';
import { driesTooLate, type FilmWait, spoilsWhatStays } from '../../src/planning/other-air.ts';
import { whyChain } from '../../src/planning/why.ts';
import { verify } from '../../src/verify/verify.ts';
import { demoPlan } from './demo.ts';

const made = demoPlan(300);
const { plan, air, factors, situation } = made;
const day = 1440;

const coats = plan.steps.filter((s) => s.material !== undefined);
const sourceOf = (room: string) => situation.book.shop.rooms.find((r) => r.id === room)!.air;

/** Other air while a coat is laid and dries, as it is tried. */
const changes = fc.record({
  coat: fc.constantFrom(...coats.map((s) => s.id)),
  from: fc.integer({ min: -120, max: 120 }),
  minutes: fc.integer({ min: 15, max: 2 * day }),
  change: fc.constantFrom({ byK: 3 }, { byK: 10 }, { byK: 10 }, { toRhPercent: 40 }),
});
type OtherAir = typeof changes extends fc.Arbitrary<infer T> ? T : never;

function inOther({ coat, from, minutes, change }: OtherAir) {
  const { room, ...step } = coats.find((s) => s.id === coat)!;
  const start = startOf(step) + from;
  const during = { start, end: start + minutes };
  const then = airForAWhile({ kind: 'for-a-while', of: sourceOf(room), during, ...change }, air.get(room)!);
  return { room, during, then: new Map([...air, [room, then]]) };
}

const section = (step: PlannedStep) => `${step.piece}/${step.section}`;

describe('other air for a while', () => {
  it('spoils a coat that stays just where the verifier, shown the whole plan in that air, says so', () => {
    const seen = { spoilt: 0, sound: 0 };
    fc.assert(
      fc.property(changes, (change) => {
        const other = inOther(change);
        const said = verify({ situation, air: other.then, factors }, plan).some(({ rule, steps: [id] }) => {
          const coat = plan.steps.find((s) => s.id === id)!;
          return rule === 'air' && startOf(coat) < other.during.end + day;
        });
        expect(spoilsWhatStays(situation, made, new Set(), other)).toBe(said);
        seen[said ? 'spoilt' : 'sound'] += 1;
      }),
      { numRuns: 60 },
    );
    expect(Math.min(seen.spoilt, seen.sound)).toBeGreaterThan(5);
  });

  it('is not said to spoil what moves: a coat of a section of which nothing moves is unfit', () => {
    fc.assert(
      fc.property(
        changes,
        fc.subarray(
          plan.steps.map((s) => s.id),
          { maxLength: 9 },
        ),
        (change, ids) => {
          const other = inOther(change);
          const moving = new Set(ids);
          if (!spoilsWhatStays(situation, made, moving, other)) return;
          const moved = new Set(plan.steps.filter((s) => moving.has(s.id)).map(section));
          const unfit = verify({ situation, air: other.then, factors }, plan).filter((b) => b.rule === 'air');
          const coats = unfit.map((b) => plan.steps.find((s) => s.id === b.steps[0])!);
          expect(coats.some((coat) => !moved.has(section(coat)))).toBe(true);
        },
      ),
      { numRuns: 30 },
    );
  });

  const waits = plan.steps.flatMap((step): (Pick<FilmWait, 'cause'> & { readonly step: string })[] => {
    const [link] = whyChain(situation, air, plan, step.id);
    const cause = link!.cause;
    const task = situation.tasks.find((t) => t.id === step.id)!;
    const waitsFor = task.needs.some(
      (n) =>
        (cause.kind === 'dry' && n.kind === 'mark' && n.task === cause.by && n.mark === cause.mark) ||
        (cause.kind === 'window' && n.kind === 'window' && n.task === cause.by),
    );
    return (cause.kind === 'dry' || cause.kind === 'window') && waitsFor ? [{ step: step.id, cause }] : [];
  });

  it('lets a film dry too late just where the verifier finds the step that waits for it, begun so much sooner, too early', () => {
    const seen = { late: 0, inTime: 0 };
    fc.assert(
      fc.property(
        changes,
        fc.constantFrom(...waits),
        fc.integer({ min: 1, max: 60 }),
        (change, { step: id, cause }, minutes) => {
          const wait = { step: plan.steps.find((s) => s.id === id)!, cause };
          const other = inOther({ ...change, coat: coats.some((s) => s.id === cause.by) ? cause.by : change.coat });
          const late = driesTooLate(situation, made, { ...wait, minutes }, other.then);
          const by = wait.cause.until - minutes - startOf(wait.step);
          const spans = wait.step.spans.map((s) => ({ start: s.start + by, end: s.end + by }));
          const sooner = plan.steps.map((s) => (s.id === wait.step.id ? { ...s, spans } : s));
          const tooEarly = verify({ situation, air: other.then, factors }, { ...plan, steps: sooner }).some(
            ({ rule, steps }) =>
              (rule === 'wait' || rule === 'window') && steps[0] === wait.step.id && steps[1] === wait.cause.by,
          );
          expect(late).toBe(tooEarly);
          seen[late ? 'late' : 'inTime'] += 1;
        },
      ),
      { numRuns: 60 },
    );
    expect(Math.min(seen.late, seen.inTime)).toBeGreaterThan(5);
  });
});
