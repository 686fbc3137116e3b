import { expect, test } from 'vitest';
import { whyChain } from '../../src/planning/why.ts';
import type { PlannedStep } from '../../src/model/plan.ts';
import { verify } from '../../src/verify/verify.ts';
import { demoPlan } from './demo.ts';

const made = demoPlan(2000);
const { plan, situation, air } = made;

test('eight pieces and at least 120 steps are planned, and no plan is later than its bound says', () => {
  expect(plan.pieces).toHaveLength(8);
  expect(plan.steps.length).toBeGreaterThanOrEqual(120);
  for (const { value, bound } of plan.proof.objective) expect(bound).toBeLessThanOrEqual(value);
});

test('the same shop gives the same plan to the byte', () => {
  expect(JSON.stringify(demoPlan(2000).plan)).toBe(JSON.stringify(plan));
});

function moved(step: PlannedStep, start: number): PlannedStep {
  const by = start - (step.spans[0]?.start ?? 0);
  return { ...step, spans: step.spans.map((s) => ({ start: s.start + by, end: s.end + by })) };
}

function breaksIfAt(step: PlannedStep, start: number): string[] {
  const steps = plan.steps.map((s) => (s.id === step.id ? moved(s, start) : s));
  return verify({ situation, air, factors: new Map() }, { ...plan, steps })
    .filter((b) => b.rule !== 'shown')
    .map((b) => b.rule);
}

test('what is said to hold a step does: a minute earlier the verifier names that rule', () => {
  const rules = { order: 'order', dry: 'wait', window: 'window' } as const;
  let checked = 0;
  for (const step of plan.steps) {
    const [link] = whyChain(situation, air, plan, step.id);
    const kind = link?.cause.kind;
    if (kind !== 'order' && kind !== 'dry' && kind !== 'window') continue;
    if (checked >= 25) break;
    checked += 1;
    expect(breaksIfAt(step, link!.start - 1)).toContain(rules[kind]);
  }
  expect(checked).toBeGreaterThan(10);
});

test('what is over before the step starts is not all that is said to hold it: the verifier names the rest', () => {
  let told = 0;
  for (const step of plan.steps) {
    const [link] = whyChain(situation, air, plan, step.id);
    if (link === undefined || !('until' in link.cause) || link.cause.until >= link.start) {
      expect(link?.then).toBeUndefined();
      continue;
    }
    const { cause, then, start } = link;
    expect(then, `${step.id} is held by ${cause.kind} for a while only`).toMatchObject({ until: start });
    for (const share of [0, 0.3, 0.7])
      expect(breaksIfAt(step, Math.floor(cause.until + share * (start - cause.until)))).toEqual(
        expect.arrayContaining([expect.stringMatching(then?.kind === 'hours' ? /^hours$/ : /^(air|hours)$/)]),
      );
    told += 1;
  }
  expect(told).toBeGreaterThan(3);
});

test('every chain of reasons ends', () => {
  for (const step of plan.steps) {
    const chain = whyChain(situation, air, plan, step.id);
    expect(chain[0]?.step.id).toBe(step.id);
    const lastKind = chain.at(-1)?.cause.kind;
    expect(lastKind).toBeDefined();
  }
});
