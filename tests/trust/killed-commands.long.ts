import { expect, test } from 'vitest';
import { inShop } from '../commands/small-shop.ts';
import { killMany } from './killed-commands.ts';

test(
  'five hundred commands killed while they write lose nothing that they told of',
  () =>
    inShop({}, async (shop) => {
      const { told, kept } = await killMany(shop, 500, 1500);
      console.log(`${told} told, ${kept} kept`);
      expect(told).toBeGreaterThan(20);
      expect(kept).toBeGreaterThanOrEqual(told);
    }),
  3_600_000,
);
