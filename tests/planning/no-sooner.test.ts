import { expect, test } from 'vitest';
import { startOf } from '../../src/model/plan.ts';
import { noSooner } from '../../src/planning/no-sooner.ts';
import { demoNow, demoPlan } from './demo.ts';

const { situation, plan } = demoPlan();
const moment = { now: demoNow, sameAir: true };
const start = new Map(plan.steps.map((s) => [s.id, startOf(s)]));

test('a plan that holds has no step before the least that can be said of it, however many of them move', () => {
  const ids = plan.steps.map((s) => s.id);
  for (let k = 0; k < ids.length; k += 9) {
    const moving = new Set(ids.slice(Math.max(0, k - 12), k + 1));
    const bound = noSooner(situation, plan, moving, moment);
    for (const id of moving) expect(bound(id)).toBeLessThanOrEqual(start.get(id) ?? -Infinity);
  }
});

test('what moves waits for the work of what moves before it, for what stays as it dries, and for its piece', () => {
  const [first, second] = ['pine-washstand/body/sand-120', 'pine-washstand/body/sand-180'];
  const both = noSooner(situation, plan, new Set([first, second]), moment);
  expect(both(second)).toBeGreaterThan(both(first));
  const scuff = plan.steps.find((s) => s.id === 'pine-washstand/body/scuff-primer');
  const dried = scuff?.after.find((a) => a.mark !== undefined)?.notBefore;
  expect(noSooner(situation, plan, new Set(['pine-washstand/body/scuff-primer']), moment)(scuff?.id ?? '')).toBe(dried);
  const later = demoNow + 40 * 1440;
  const pieces = situation.book.pieces.map((p) => (p.id === 'pine-washstand' ? { ...p, arrives: later } : p));
  const comesLater = { ...situation, book: { ...situation.book, pieces } };
  expect(noSooner(comesLater, plan, new Set([first]), moment)(first)).toBe(later);
});
