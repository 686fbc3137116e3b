import { basename, dirname } from 'node:path';
import type { Disk } from '../files/disk.ts';
import { readBytes } from '../files/read-source.ts';
import { ABSENT, replaceFile, seen } from '../files/safe-write.ts';
import { CannotGoOn } from './call.ts';
import { worded } from '../words/worded.ts';

const cap = 50_000_000;

/**
 * Writes a file that a command makes as a whole. A file that stands there already is replaced only if it is one of
 * ours, which `mark` tells.
 */
export function writeOwnFile(disk: Disk, path: string, text: string, mark: string): void {
  const name = basename(path);
  const before = readBytes(disk, { path: dirname(path), label: '' }, name, cap);
  if (!before.ok && !before.missing)
    throw new CannotGoOn(worded`"${name}" cannot be replaced`, undefined, 2, [before.finding]);
  if (before.ok && !Buffer.from(before.bytes).includes(mark))
    throw new CannotGoOn(
      worded`"${name}" is there already and was not made by Drybench`,
      worded`name another file with --file`,
    );
  replaceFile(disk, path, text, before.ok ? seen(before.bytes) : ABSENT);
}
