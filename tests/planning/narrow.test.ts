import { expect, test } from 'vitest';
import { startOf } from '../../src/model/plan.ts';
import { changed } from '../../src/planning/change.ts';
import { placed } from '../../src/planning/come-forward.ts';
import { narrowTo } from '../../src/planning/narrow.ts';
import { whyChain } from '../../src/planning/why.ts';
import { localDays } from '../../src/time/zone.ts';
import { demoNow, demoPlan } from './demo.ts';

const { situation, plan, air, factors } = demoPlan();
const { tasks, book } = situation;
const objectOf = new Map(tasks.map((t) => [t.id, t.object]));

/** All that stands of the pieces of which something moves. */
function wholePieces(moving: ReadonlySet<string>): Set<string> {
  const pieces = new Set(tasks.filter((t) => moving.has(t.id)).map((t) => t.piece));
  return new Set(tasks.filter((t) => pieces.has(t.piece)).map((t) => t.object));
}

/** Somebody is there to help all day, so that much may begin sooner. */
const helped = {
  ...situation,
  book: localDays(demoNow, plan.to, book.shop.timeZone).reduce(
    (sum, { date }) => changed(sum, { kind: 'helper', date, spans: [{ from: 8 * 60, to: 17 * 60 }] }),
    book,
  ),
};

function triedWith(shop: typeof situation, moving: ReadonlySet<string>, step: string, met?: ReadonlySet<string>) {
  const narrow = narrowTo(situation, plan, moving, demoNow, met);
  const by = Math.min(...plan.steps.filter((s) => s.id === step).map(startOf)) - 15;
  const among = { situation: narrow.of(shop), plan: narrow.plan, to: narrow.to, air, factors, blocks: narrow.blocks };
  return { narrow, found: placed(among, moving, demoNow, { step, by })?.start };
}

test('of what has nothing to do with what moves, what it keeps says as much as all of it', () => {
  let [sooner, fewer] = [0, 0];
  for (let k = 5; k < plan.steps.length; k += 11) {
    const step = plan.steps[k]?.id ?? '';
    const chain = whyChain(situation, air, plan, step).map((link) => link.step.id);
    for (const long of [1, 4]) {
      const moving = new Set(chain.slice(0, long));
      for (const shop of [situation, helped]) {
        const whole = triedWith(shop, moving, step, wholePieces(moving));
        const met = triedWith(shop, moving, step);
        expect(met.found, [...moving].join(' ')).toBe(whole.found);
        if (met.found !== undefined) sooner += 1;
        if (met.narrow.plan.steps.length < whole.narrow.plan.steps.length) fewer += 1;
      }
    }
  }
  expect(sooner).toBeGreaterThan(5);
  expect(fewer).toBeGreaterThan(5);
});

test('nothing that is met is left out: each step is laid out, or in the way, or over', () => {
  const moving = new Set(['pine-washstand/body/glue', 'pine-washstand/body/fill']);
  const narrow = narrowTo(situation, plan, moving, demoNow);
  const laid = new Set(narrow.plan.steps.map((s) => s.id));
  const kept = new Set(narrow.blocks.map((b) => b.step.id));
  const last = Math.max(...plan.steps.filter((s) => moving.has(s.id)).map(startOf));
  for (const step of plan.steps.filter((s) => startOf(s) >= narrow.from && startOf(s) <= last))
    expect(Number(laid.has(step.id)) + Number(kept.has(step.id)), step.id).toBe(1);
  for (const id of moving) expect(laid.has(id)).toBe(true);
  const objects = new Set([...moving].map((id) => objectOf.get(id)));
  for (const id of kept) expect(objects.has(objectOf.get(id))).toBe(false);
});
