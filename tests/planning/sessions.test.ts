import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { whyChain } from '../../src/planning/why.ts';
import { savedMinutes } from '../../src/reports/sessions.ts';
import { demoPlan } from './demo.ts';

test('the first week of the demo shop saves an hour of mixing and washing up, and keeps every rule', () => {
  const { plan, situation, air } = demoPlan();
  const week = { start: situation.now, end: situation.now + 7 * 24 * 60 };
  expect(savedMinutes(plan, week)).toBeGreaterThanOrEqual(60);
  expect(plan.pieces.filter((p) => p.lateHours > 0)).toEqual([]);

  const later = (plan.sessions ?? []).flatMap((s) => s.steps.slice(1).map((id, k) => [id, s.steps[k]] as const));
  for (const [id, before] of later) {
    const [link] = whyChain(situation, air, plan, id);
    expect(link?.cause).toMatchObject({ kind: 'session', by: before });
  }

  const again = makePlan(situation, { seed: 1, kept: plan });
  if (again.kind !== 'plan') throw new Error(again.kind);
  expect(again.plan.sessions).toEqual(plan.sessions);
});

test('coats that were to be laid in one go are given up with all that a lead test shuts out', () => {
  const { plan, situation } = demoPlan(300);
  const piece = plan.sessions?.[0]?.steps[0]?.split('/')[0];
  if (piece === undefined) throw new Error('the demo plan has sessions');
  const leadTests = new Map([...situation.leadTests, [piece, { at: situation.now, found: true }] as const]);
  const again = makePlan({ ...situation, leadTests }, { seed: 1, steps: 300, kept: plan });
  if (again.kind !== 'plan') throw new Error(again.kind);
  expect(again.plan.sessions?.flatMap((s) => s.steps).filter((id) => id.startsWith(`${piece}/`)) ?? []).toEqual([]);
});
