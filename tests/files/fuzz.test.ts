import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { fillWithDemo, mutation, spoilAndRead } from './mutations.ts';
import { emptyFolder } from './shop-folder.ts';

test('files spoilt in any way end in a book or in errors with places', () => {
  const folder = emptyFolder();
  const files = fillWithDemo(folder);
  const ends = { book: 0, errors: 0 };
  fc.assert(
    fc.property(fc.constantFrom(...files), fc.array(mutation, { minLength: 1, maxLength: 3 }), (file, mutations) => {
      ends[spoilAndRead(folder, file, mutations)] += 1;
    }),
    { numRuns: 40 },
  );
  expect(ends.errors).toBeGreaterThan(0);
}, 300_000);
