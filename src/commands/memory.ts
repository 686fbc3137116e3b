import { existsSync, readFileSync } from 'node:fs';
import { rememberedIn, type Memory } from '../files/remembered.ts';
import { isFlagged, type Call } from './call.ts';
import { languageSpoken } from './language.ts';

/** The build leaves it beside the program: the sum of all its code. */
const stampFile = new URL('./stamp.txt', import.meta.url);

/**
 * Where what was read of shops is remembered: in the user's own folder for such things, never in the shop's, which may come
 * from somebody else. The program run from its sources, where it changes any moment, remembers nothing; nor does a dry run.
 */
export function memoryOf(call: Call): Memory | undefined {
  if (isFlagged(call, 'dryRun')) return undefined;
  const folder = rememberedIn(call.io.env, 'read');
  if (folder === undefined || !existsSync(stampFile)) return undefined;
  const { node, icu, tz } = process.versions;
  const stamp = [readFileSync(stampFile, 'utf8'), node, icu, tz, languageSpoken()].join(' ');
  return { folder, stamp };
}
