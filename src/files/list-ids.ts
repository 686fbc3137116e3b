import { join } from 'node:path';
import type { Finding } from '../model/finding.ts';
import { diskCode, type Disk } from './disk.ts';
import { readId } from './quantities/plain.ts';
import type { Folder } from './read-source.ts';
import { quoted } from './shapes/text.ts';
import { strayCopy } from './stray-copies.ts';
import { worded } from '../words/worded.ts';

export interface ListedIds {
  /** Sorted. */
  readonly ids: readonly string[];
  readonly findings: readonly Finding[];
}

const ENDING = '.yaml';
const MOST_FILES = 2000;

function oddName(folder: Folder, path: string, advice: string): Finding {
  return {
    code: 'bad-file-name',
    severity: 'warning',
    message: worded`${quoted(path)} is passed over: its name is not an id`,
    advice,
    place: { file: folder.label + path, line: 1, column: 1 },
  };
}

/** The ids that `NAME.yaml` files of a folder give; none where there is no such folder. Odd names are pointed out. */
export function listIds(disk: Disk, folder: Folder, sub: string): ListedIds {
  let names: string[];
  try {
    names = disk.list(join(folder.path, sub)).sort();
  } catch (error) {
    const code = diskCode(error);
    if (code === '') throw error;
    if (code === 'ENOENT') return { ids: [], findings: [] };
    const place = { file: folder.label + sub, line: 1, column: 1 };
    const message = worded`the folder cannot be read (${code})`;
    return { ids: [], findings: [{ code: 'unreadable', severity: 'error', message, place }] };
  }
  const ids: string[] = [];
  const findings: Finding[] = [];
  const odd: { readonly path: string; readonly advice: string }[] = [];
  for (const name of names.slice(0, MOST_FILES)) {
    if (name.startsWith('.')) continue;
    const path = `${sub}/${name}`;
    if (name.endsWith('.yml')) findings.push(oddName(folder, path, worded`let its name end in .yaml`));
    if (!name.endsWith(ENDING)) continue;
    const id = name.slice(0, -ENDING.length);
    const read = readId(id);
    if (read.ok) ids.push(id);
    else odd.push({ path, advice: read.write });
  }
  const owns = ids.map((id) => `${sub}/${id}${ENDING}`);
  for (const { path, advice } of odd)
    findings.push(strayCopy(folder.label, path, owns) ?? oddName(folder, path, advice));
  return { ids, findings };
}
