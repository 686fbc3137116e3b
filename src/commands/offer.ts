import { homedir } from 'node:os';
import { resolve } from 'node:path';
import type { Disk } from '../files/disk.ts';
import { findShop } from '../files/find-shop.ts';
import { listIds } from '../files/list-ids.ts';
import { shippedDir, SHIPPED_RECIPES } from '../files/shipped.ts';
import { harmless } from '../terminal/harmless.ts';
import { print } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { faces } from './faces.ts';
import { askedOf, optionsOf, type Asked, type Offered } from './shell/asked.ts';
import { wordsOf } from './shell/line.ts';
import { translated } from '../words/worded.ts';

const alone = (words: readonly string[]): readonly Offered[] => words.map((word) => [word, '']);

/** Only what an own file of the shop can be called: no name from outside comes to the shell. */
const idsIn = (disk: Disk, folder: string, sub: string) => listIds(disk, { path: folder, label: '' }, sub).ids;

/** The folder of the shop that the line is about. */
function shopOf(call: Call, { shop }: Asked): string | undefined {
  if (shop === undefined) return findShop(call.io.folder);
  return findShop(resolve(call.io.folder, shop.replace(/^~(?=\/|$)/, call.io.env['HOME'] ?? homedir())));
}

async function offersOf(call: Call, asked: Asked): Promise<readonly Offered[]> {
  const shop = shopOf(call, asked);
  switch (asked.kind) {
    case 'command':
      return faces.map(({ name, about }) => [name, translated(about)]);
    case 'option':
      return optionsOf(asked.face).map(([flags, about]) => [flags.split(' ')[0] ?? '', translated(about)]);
    case 'choice':
      return alone(asked.choices ?? []);
    case 'file':
    case 'folder':
      return alone([`:${asked.kind}`]);
    case 'piece':
      return shop === undefined ? [] : alone(idsIn(call.disk, shop, 'pieces'));
    case 'recipe': {
      const own = shop === undefined ? [] : idsIn(call.disk, shop, 'recipes');
      return alone([...new Set([...own, ...idsIn(call.disk, shippedDir(), SHIPPED_RECIPES)])].sort());
    }
    case 'step':
    case 'change':
    case 'hand': {
      // Reading the files of a shop takes what the other answers do without.
      const { changesIn, handsIn, stepsIn } = await import('./shell/shop-words.ts');
      if (shop === undefined) return [];
      if (asked.kind === 'change') return changesIn(call, shop, asked);
      return asked.kind === 'hand' ? handsIn(call, shop) : stepsIn(call, shop, asked);
    }
    case 'free':
      return [];
  }
}

function fits([word]: Offered, typed: string): boolean {
  return word.startsWith(':') || word.startsWith(typed);
}

/** What a shell may offer at the end of a line of `drybench`: a line each of a word, a tab and what it is. */
export async function answer(call: Call): Promise<ExitCode> {
  const asked = askedOf(wordsOf(call.words[0] ?? '').slice(1));
  try {
    const offers = (await offersOf(call, asked)).filter((offered) => fits(offered, asked.typed));
    print(call, offers.map(([word, about]) => `${harmless(word)}\t${harmless(about)}\n`).join(''));
  } catch (error) {
    // In the midst of a line that a person types there is no place for troubles: then nothing is offered.
    if (call.io.env['DRYBENCH_DEBUG'] === '1') throw error;
  }
  return 0;
}
