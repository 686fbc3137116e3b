import { expect, test } from 'vitest';
import { inShop } from '../commands/small-shop.ts';
import { killMany } from './killed-commands.ts';

test(
  'a dozen commands killed while they write lose nothing that they told of',
  () =>
    inShop({}, async (shop) => {
      const { told, kept } = await killMany(shop, 12, 1500);
      expect(kept).toBeGreaterThanOrEqual(told);
    }),
  300_000,
);
