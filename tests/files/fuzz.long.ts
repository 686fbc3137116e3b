import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { fillWithDemo, mutation, spoilAndRead } from './mutations.ts';
import { emptyFolder } from './shop-folder.ts';

const thousands = Array.from({ length: 20 }, (_, i) => i + 1);

test.each(thousands)(
  'spoilt shops, thousand %i of twenty',
  () => {
    const folder = emptyFolder();
    const files = fillWithDemo(folder);
    const ends = { book: 0, errors: 0 };
    let slowestMs = 0;
    fc.assert(
      fc.property(fc.constantFrom(...files), fc.array(mutation, { minLength: 1, maxLength: 4 }), (file, mutations) => {
        const before = performance.now();
        ends[spoilAndRead(folder, file, mutations)] += 1;
        slowestMs = Math.max(slowestMs, performance.now() - before);
      }),
      { numRuns: 1000, endOnFailure: true },
    );
    expect(ends.book).toBeGreaterThan(50);
    expect(ends.errors).toBeGreaterThan(50);
    console.log(`${ends.book} books, ${ends.errors} with errors, the slowest in ${Math.round(slowestMs)} ms`);
  },
  3_600_000,
);
