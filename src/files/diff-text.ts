import { isUtf8 } from 'node:buffer';
import { relative, sep } from 'node:path';
import { FILE_HEADERS_ONLY, formatPatch, structuredPatch, type StructuredPatch } from 'diff';
import type { DryChange } from './dry-disk.ts';

const NOTHING = '/dev/null';
/** Two texts that differ by more lines than these are shown as the one taken away and the other put there. */
const MOST_EDITS = 2000;

/** What would happen to one file. */
export interface FileDiff {
  /** Relative to the folder that was asked from, with forward slashes. */
  readonly path: string;
  readonly change: 'new' | 'changed' | 'gone' | 'renamed';
  /** What it was called, where it is renamed. */
  readonly from?: string;
  /** Unified, with its heading; what is not UTF-8 is only named. */
  readonly text: string;
}

const textOf = (bytes: Uint8Array | undefined) => Buffer.from(bytes ?? []).toString('utf8');

function patchOf(oldName: string, newName: string, before: string, after: string): StructuredPatch {
  const near = { context: 3, maxEditLength: MOST_EDITS };
  const patch = structuredPatch(oldName, newName, before, after, undefined, undefined, near);
  if (patch !== undefined) return patch;
  const [taken, put] = [structuredPatch(oldName, newName, before, ''), structuredPatch(oldName, newName, '', after)];
  const [old] = taken.hunks;
  const [own] = put.hunks;
  if (old === undefined || own === undefined) return old === undefined ? put : taken;
  const { oldStart, oldLines } = old;
  const { newStart, newLines } = own;
  return { ...put, hunks: [{ oldStart, oldLines, newStart, newLines, lines: [...old.lines, ...own.lines] }] };
}

/** What would change, as unified diffs; paths relative to `base`, which has its links resolved. */
export function diffOf(changes: readonly DryChange[], base: string): FileDiff[] {
  const named = (path: string) => relative(base, path).replaceAll(sep, '/');
  return changes.map((change): FileDiff => {
    const path = named(change.path);
    if ('from' in change) {
      const from = named(change.from);
      return { path, change: 'renamed', from, text: `rename from ${from}\nrename to ${path}\n` };
    }
    const { before, after } = change;
    const kind = before === undefined ? 'new' : after === undefined ? 'gone' : 'changed';
    const [oldName, newName] = [before === undefined ? NOTHING : path, after === undefined ? NOTHING : path];
    if (!isUtf8(before ?? new Uint8Array()) || !isUtf8(after ?? new Uint8Array()))
      return { path, change: kind, text: `Binary files ${oldName} and ${newName} differ\n` };
    const patch = patchOf(oldName, newName, textOf(before), textOf(after));
    return { path, change: kind, text: formatPatch(patch, FILE_HEADERS_ONLY) };
  });
}
