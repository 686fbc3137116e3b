import { beforeAll, describe, expect, test } from 'vitest';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Need, Task } from '../../src/model/task.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt } from '../../src/time/zone.ts';
import type { Breach, RuleName } from '../../src/verify/breach.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { verify } from '../../src/verify/verify.ts';
import { demo } from '../trade/shipped.ts';

// A true plan of the demo shop, broken in each way.

const DAY = 1440;
let plan: Plan;
let evidence: Evidence;
let tasks: ReadonlyMap<string, Task>;

beforeAll(() => {
  const book = demo();
  const situation = situationOf(book, minuteAt('2027-01-11', 7 * 60 + 30, book.shop.timeZone));
  const made = makePlan(situation, { seed: 1, steps: 5 });
  if (made.kind !== 'plan') throw new Error(`the demo shop has no plan: ${made.kind}`);
  ({ plan } = made);
  evidence = { situation, air: made.air, factors: new Map() };
  tasks = new Map(situation.tasks.map((t) => [t.id, t]));
}, 300_000);

const start = (s: PlannedStep): number => s.spans[0]!.start;
const end = (s: PlannedStep): number => s.spans.at(-1)!.end;
const startingAt = (s: PlannedStep, at: number): PlannedStep => ({
  ...s,
  spans: s.spans.map((span) => ({ start: span.start + at - start(s), end: span.end + at - start(s) })),
});
const stepOf = (id: string): PlannedStep => plan.steps.find((s) => s.id === id)!;

/** The first step that fits, with the task behind it. */
function first(fits: (step: PlannedStep, task: Task) => boolean): PlannedStep {
  const found = plan.steps.find((s) => fits(s, tasks.get(s.id)!));
  if (found === undefined) throw new Error('the demo shop has no such step');
  return found;
}

function firstNeed<K extends Need['kind']>(kind: K): { step: PlannedStep; need: Extract<Need, { kind: K }> } {
  const isKind = (n: Need): n is Extract<Need, { kind: K }> => n.kind === kind;
  const step = first((s, t) => t.needs.some((n) => isKind(n) && n.task !== s.id));
  return { step, need: tasks.get(step.id)!.needs.find(isKind)! };
}

/** Breaches of the plan with one step replaced that name this step. */
function afterChange(
  step: PlannedStep | undefined,
  id: string,
  changed: Partial<Evidence['situation']> = {},
): Breach[] {
  const steps = plan.steps.flatMap((s) => (s.id !== id ? [s] : step === undefined ? [] : [step]));
  const situation = { ...evidence.situation, ...changed };
  return verify({ ...evidence, situation }, { ...plan, steps }).filter((b) => b.steps.includes(id));
}

function expectBreach(rule: RuleName, step: PlannedStep, changed?: Partial<Evidence['situation']>): void {
  expect(afterChange(step, step.id, changed).map((b) => b.rule)).toContain(rule);
}

test('a plan of the demo shop keeps every rule', () => {
  expect(plan.steps.length).toBeGreaterThan(100);
  expect(verify(evidence, plan)).toEqual([]);
});

describe('broken in each way, the right rule is named', () => {
  test('a step left out', () => {
    const step = first((_, t) => t.onlyFor === undefined);
    expect(afterChange(undefined, step.id).map((b) => b.rule)).toEqual(['complete']);
  });
  test('1 before what comes before it', () => {
    const { step, need } = firstNeed('order');
    expectBreach('order', startingAt(step, end(stepOf(need.task)) - 1));
  });
  test('2 before its dry mark', () => {
    const { step, need } = firstNeed('mark');
    const wait = step.after.find((a) => a.step === need.task && a.mark === need.mark)!;
    expectBreach('wait', startingAt(step, wait.notBefore - 1));
  });
  test('3 before its window', () => {
    const step = first((s) => s.window !== undefined);
    expectBreach('window', startingAt(step, step.window!.opens - 1));
  });
  test('3 after its window', () => {
    const step = first(
      (s, t) =>
        s.window?.shuts !== undefined &&
        t.needs.every(
          (n) =>
            n.kind !== 'window' ||
            n.windows.length === 1 ||
            n.windows.every((w) => w.shuts !== undefined || w.prepTask !== undefined),
        ),
    );
    expectBreach('window', startingAt(step, step.window!.shuts! + 1));
  });
  test('4 a hand in two places', () => {
    const step = plan.steps[0]!;
    const other = first((s) => s.id !== step.id && s.piece !== step.piece && s.hands[0] === step.hands[0]);
    expectBreach('capacity', startingAt(other, start(step)));
  });
  test('4 a wrong station and a missing hand', () => {
    const step = first((_, t) => t.ways.every((w) => !w.stations.includes('rack')));
    const rack = evidence.situation.book.shop.stations.find((s) => s.kind === 'rack')!;
    expectBreach('means', { ...step, station: rack.id, room: rack.room });
    expectBreach('means', { ...step, hands: [] });
  });
  test('5 in the middle of the night', () => {
    const step = plan.steps[0]!;
    const { timeZone } = evidence.situation.book.shop;
    expectBreach('hours', startingAt(step, minuteAt('2027-01-13', 2 * 60, timeZone)));
  });
  test('6 in air outside the limits', () => {
    const step = first((s) => evidence.situation.book.materials.get(s.material ?? '')?.limits !== undefined);
    const material = evidence.situation.book.materials.get(step.material!)!;
    const limits = { ...material.limits!, maxTempC: -20 };
    const materials = new Map([...evidence.situation.book.materials, [material.id, { ...material, limits }]]);
    expectBreach('air', step, { book: { ...evidence.situation.book, materials } });
  });
  test('7 dust on a wet coat', () => {
    const wet = first((s) => s.dry?.['dust-free'] !== undefined);
    const dusty = first((s, t) => t.dusty && s.piece !== wet.piece && s.room === wet.room);
    expectBreach('dust', startingAt(dusty, start(wet)));
  });
  test('8 past its pot life', () => {
    const { materials } = evidence.situation.book;
    // Fills are mixed in small batches: their pot life bounds the batch, not the step.
    const step = first((s) => s.material !== undefined && materials.get(s.material)?.sheetDepthMm === undefined);
    const material = materials.get(step.material!)!;
    const potLife = { low: 0.01, typical: 0.02, high: 0.03, source: 'invented for the test' };
    const changed = new Map([...materials, [material.id, { ...material, potLife }]]);
    expectBreach('pot-life', step, { book: { ...evidence.situation.book, materials: changed } });
  });
  test('9 otherwise than it was done', () => {
    const step = plan.steps[0]!;
    const done = new Map([[step.id, { from: start(step) - 5, to: end(step) }]]);
    expectBreach('journal', { ...step, done: true }, { done });
  });
  test('10 before the lead test', () => {
    const step = first((_, t) => t.gated);
    expectBreach('gate', step, { leadTests: new Map() });
  });
  test('a tape left on too long', () => {
    const { step, need } = firstNeed('within');
    expectBreach('within', startingAt(step, end(stepOf(need.task)) + need.hours * 60 + 1));
  });
  test('a wrong time shown', () => {
    const step = first((s) => s.dry?.touch !== undefined);
    const touch = step.dry!.touch!;
    expectBreach('shown', { ...step, dry: { ...step.dry, touch: { ...touch, late: touch.late - 1 } } });
  });
  test('in the past', () => {
    expectBreach('order', startingAt(plan.steps[0]!, plan.from - DAY));
  });
});
