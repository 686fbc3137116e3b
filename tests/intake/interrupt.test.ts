// A real process, killed at the first of its questions, in the midst and at the last: the shop is as it was.
import { it } from 'vitest';
import { answeredAll, killedAt } from './kill.ts';
import { inEmptyShop, shopText } from './shop.ts';
import { typedTable } from './typed.ts';

it('leaves nothing behind where it is interrupted', { timeout: 300_000 }, () =>
  inEmptyShop(shopText('metric', 'EUR'), async (folder) => {
    await killedAt(folder, [0, 11, typedTable.length - 1]);
    await answeredAll(folder);
  }),
);
