import { join } from 'node:path';
import type { Finding } from '../../model/finding.ts';
import type { Deed, Entry } from '../../model/journal.ts';
import type { Minute } from '../../time/span.ts';
import { O_APPEND, O_CREAT, O_RDWR, O_WRONLY, realDisk, type Disk } from '../disk.ts';
import { cannotWrite, FileTrouble } from '../file-trouble.ts';
import { withLock, type LockOptions } from '../lock.ts';
import { keepCopy } from '../set-aside.ts';
import { flushFolder, withHandle, writeAll } from '../write-all.ts';
import { JOURNAL_FILE } from '../shop-files.ts';
import { readJournal, type JournalState } from './read.ts';
import { writeLine } from './line.ts';
import { entryOfRecord, recordOfEntry } from './record.ts';
import { worded } from '../../words/worded.ts';

export interface AppendOptions extends LockOptions {
  /** When the deeds are entered. */
  readonly at: Minute;
  readonly zone: string;
  /** Name of the command, for others that find the shop in use. */
  readonly command: string;
  readonly disk?: Disk;
}

export type Appended =
  | { readonly ok: true; readonly entries: readonly Entry[]; readonly findings: readonly Finding[] }
  /** The journal is damaged or too new: nothing was written. */
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Keeps a record that was cut short in a file of its own, and takes it off the journal. */
function setAside(disk: Disk, folder: string, torn: Uint8Array, soundBytes: number): Finding {
  const name = keepCopy(disk, folder, 'journal.torn', torn);
  withHandle(disk, disk.open(join(folder, JOURNAL_FILE), O_RDWR), (handle) => {
    disk.truncate(handle, soundBytes);
    disk.flush(handle);
  });
  return {
    code: 'journal-torn',
    severity: 'warning',
    message: worded`the record before this one had been cut short while it was written; what there was of it is in ${name}`,
    advice: worded`enter it again`,
  };
}

function linesFor(state: JournalState, deeds: readonly Deed[], options: AppendOptions) {
  const entries: Entry[] = [];
  let text = state.newlineMissing ? '\n' : '';
  let sum = state.sum;
  for (const deed of deeds) {
    const entry: Entry = { number: state.entries.length + entries.length + 1, at: options.at, deed };
    const record = recordOfEntry(entry, options.zone);
    const readBack = entryOfRecord(record);
    if (!readBack.ok) throw new RangeError(`a deed of the kind ${deed.kind} cannot be kept: it ${readBack.why}`);
    const written = writeLine(sum, record);
    text += written.line;
    sum = written.sum;
    entries.push(entry);
  }
  return { text, entries };
}

function append(disk: Disk, folder: string, text: string, soundBytes: number): void {
  const path = join(folder, JOURNAL_FILE);
  const handle = disk.open(path, O_WRONLY | O_APPEND | O_CREAT, 0o644);
  withHandle(disk, handle, () => {
    try {
      writeAll(disk, handle, Buffer.from(text, 'utf8'));
      disk.flush(handle);
    } catch (error) {
      // What was not acknowledged should not be there either. Where even this fails, the next reader finds it cut short.
      try {
        disk.truncate(handle, soundBytes);
      } catch {
        // The first error says more.
      }
      throw error;
    }
  });
  if (soundBytes === 0) flushFolder(disk, folder);
}

/**
 * Enters deeds into the journal. `deedsOf` sees the entries that there are at that moment, under the lock. When this
 * returns, they are on the disk.
 * @throws FileTrouble where the shop is in use or the disk refuses.
 */
export function appendDeeds(
  shopDir: string,
  deedsOf: (entries: readonly Entry[]) => readonly Deed[],
  options: AppendOptions,
): Appended {
  const disk = options.disk ?? realDisk;
  const act = (): Appended => {
    const state = readJournal(disk, { path: shopDir, label: '' });
    if (state.findings.some((f) => f.severity === 'error')) return { ok: false, findings: state.findings };
    const { text, entries } = linesFor(state, deedsOf(state.entries), options);
    if (entries.length === 0) return { ok: true, entries, findings: [] };
    const findings = state.torn === undefined ? [] : [setAside(disk, shopDir, state.torn, state.soundBytes)];
    append(disk, shopDir, text, state.soundBytes);
    return { ok: true, entries, findings };
  };
  return withLock(
    disk,
    shopDir,
    options.command,
    () => {
      try {
        return act();
      } catch (error) {
        if (error instanceof FileTrouble) throw error;
        cannotWrite(JOURNAL_FILE, error);
      }
    },
    options,
  );
}
