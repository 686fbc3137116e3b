import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';
import { fillWithDemo, spoilAndRead, spoiling } from './spoiling.ts';

const SEED = Number(process.env['DRYBENCH_SEED'] ?? 20270111);
const thousands = Array.from({ length: 20 }, (_, i) => i + 1);

// Each thousand has a seed of its own, so that these are twenty thousand different cases.
test.each(thousands)(
  'spoilt shops, thousand %i of twenty',
  (thousand) => {
    const folder = emptyFolder();
    const ends = { book: 0, errors: 0, plan: 0, none: 0 };
    let slowestMs = 0;
    fc.assert(
      fc.property(spoiling(fillWithDemo(folder)), (spoilt) => {
        const before = performance.now();
        ends[spoilAndRead(folder, spoilt)] += 1;
        slowestMs = Math.max(slowestMs, performance.now() - before);
      }),
      { numRuns: 1000, endOnFailure: true, seed: SEED + thousand },
    );
    expect(ends.book + ends.plan).toBeGreaterThan(50);
    expect(ends.errors).toBeGreaterThan(50);
    expect(ends.plan).toBeGreaterThan(5);
    console.log(thousand, JSON.stringify(ends), `the slowest in ${Math.round(slowestMs)} ms`);
  },
  3_600_000,
);
