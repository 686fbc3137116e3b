import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';
import { fillWithDemo, spoilAndRead, spoiling } from './spoiling.ts';

test('files spoilt in any way end in a plan, in the word that there is none, or in errors with places', () => {
  const folder = emptyFolder();
  const ends = { book: 0, errors: 0, plan: 0, none: 0 };
  fc.assert(
    fc.property(spoiling(fillWithDemo(folder)), (spoilt) => void (ends[spoilAndRead(folder, spoilt)] += 1)),
    { numRuns: 40 },
  );
  expect(ends.errors).toBeGreaterThan(0);
  expect(ends.book + ends.plan).toBeGreaterThan(0);
}, 300_000);
