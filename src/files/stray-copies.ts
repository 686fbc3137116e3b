import { basename, join } from 'node:path';
import type { Finding } from '../model/finding.ts';
import { diskCode, type Disk } from './disk.ts';
import { quoted } from './shapes/quoted.ts';
import { JOURNAL_FILE, SHOP_FILE, SUPPLIES_FILE } from './shop-files.ts';
import { worded } from '../words/worded.ts';

/** Files of a shop of which there is one; `plan.json` is left out: what a copy of it holds can be planned again. */
const single = [SHOP_FILE, JOURNAL_FILE, SUPPLIES_FILE];

/**
 * Is `name` that of a copy of `own` such as a program leaves that keeps folders alike between computers, or a person who
 * tries something: more behind the stem, or before the whole?
 */
function isCopyName(name: string, own: string): boolean {
  const dot = own.lastIndexOf('.');
  const [stem, ending] = [own.slice(0, dot), own.slice(dot)];
  if (!name.startsWith('.') && name.endsWith(` ${own}`)) return true;
  const more = name.startsWith(stem) && name.endsWith(ending) ? name.slice(stem.length, -ending.length) : '';
  return /^[^\p{L}\p{N}]/u.test(more);
}

/** Says of the file at `path` that it is a copy of one of `owns`; undefined where its name is none of a copy. */
export function strayCopy(label: string, path: string, owns: readonly string[]): Finding | undefined {
  const name = basename(path);
  const [own] = owns
    .filter((one) => isCopyName(name, basename(one)))
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  if (own === undefined) return undefined;
  return {
    code: 'stray-copy',
    severity: 'warning',
    message: worded`${quoted(path)} is passed over: of its kind only ${own} is read`,
    advice: worded`such copies are left where two computers changed the same file: see whether it holds what ${own} lacks, then move it out of this folder`,
    place: { file: label + path, line: 1, column: 1 },
  };
}

/** The copies that lie beside shop.yaml, the journal and the supplies. A folder that cannot be listed is told of by who reads it. */
export function strayCopies(disk: Disk, shopDir: string): Finding[] {
  try {
    return disk
      .list(shopDir)
      .sort()
      .flatMap((name) => strayCopy('', name, single) ?? [])
      .filter(({ place }) => disk.statPath(join(shopDir, place?.file ?? '')).isFile);
  } catch (error) {
    if (diskCode(error) === '') throw error;
    return [];
  }
}
