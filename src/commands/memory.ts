import { existsSync, readFileSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import type { Memory } from '../files/read-once.ts';
import type { Environment } from '../terminal/colour.ts';
import type { Call } from './call.ts';
import { languageSpoken } from './language.ts';

/** The build leaves it beside the program: the sum of all its code. */
const stampFile = new URL('./stamp.txt', import.meta.url);

function folderIn(env: Environment): string | undefined {
  const above =
    process.platform === 'win32'
      ? env['LOCALAPPDATA']
      : (env['XDG_CACHE_HOME'] ?? (env['HOME'] === undefined ? undefined : join(env['HOME'], '.cache')));
  return above !== undefined && isAbsolute(above) ? join(above, 'drybench', 'read') : undefined;
}

/**
 * Where what was read of shops is remembered: in the user's own folder for such things, never in the shop's, which may come
 * from somebody else. The program run from its sources, where it changes any moment, remembers nothing.
 */
export function memoryOf({ io }: Call): Memory | undefined {
  const folder = folderIn(io.env);
  if (folder === undefined || !existsSync(stampFile)) return undefined;
  const { node, icu, tz } = process.versions;
  const stamp = [readFileSync(stampFile, 'utf8'), node, icu, tz, languageSpoken()].join(' ');
  return { folder, stamp };
}
