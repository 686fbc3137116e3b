// A real process, killed at each of its questions: the shop is as it was.
import { it } from 'vitest';
import { killedAt } from './kill.ts';
import { inEmptyShop, shopText } from './shop.ts';
import { typedTable } from './typed.ts';

it('leaves nothing behind, whichever question it is', () =>
  inEmptyShop(shopText('metric', 'EUR'), (folder) =>
    killedAt(
      folder,
      typedTable.map((_, n) => n),
    ),
  ));
