import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { SHOP_FILE } from '../files/shop-files.ts';
import { shopFileText } from '../files/new-shop.ts';
import { harmless } from '../terminal/harmless.ts';
import { printJson, tell, wantsJson } from './answers.ts';
import { beginShop, writeSchemas } from './begin-shop.ts';
import { CannotGoOn, isFlagged, type Call, type ExitCode } from './call.ts';
import { asking } from './questions.ts';
import { knowShop } from './setup-answers.ts';
import { worded } from '../words/worded.ts';

async function told(
  call: Call,
  word: string,
  folder: string,
  files: readonly string[],
  next: string,
): Promise<ExitCode> {
  if (wantsJson(call)) printJson(call, { format: 'drybench.setup/1', folder, files });
  else await tell(call, worded`Written in ${harmless(word)}: ${files.join(', ')}\n${next}`);
  return 0;
}

/** Makes a shop to begin with: asks, or takes it from options. */
export async function answer(call: Call): Promise<ExitCode> {
  const [word = '.'] = call.words;
  const folder = resolve(call.io.folder, word);
  const isShop = existsSync(join(folder, SHOP_FILE));
  if (isFlagged(call, 'schemas')) {
    if (!isShop) throw new CannotGoOn(worded`there is no ${SHOP_FILE} in "${word}"`, worded`name the folder of a shop`);
    return told(call, word, folder, writeSchemas(call.disk, folder), '');
  }
  if (isShop)
    throw new CannotGoOn(
      worded`"${word}" holds a shop already: nothing was written`,
      worded`name another folder, or edit shop.yaml`,
    );
  return asking(call, worded`nothing was written`, async (asker) => {
    const text = shopFileText(await knowShop(asker));
    const files = beginShop(call.disk, folder, text);
    const next = worded`  Look shop.yaml through. Then go there, and take in a piece: drybench intake\n`;
    return told(call, word, folder, files, next);
  });
}
