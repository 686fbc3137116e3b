import type { Finding } from '../../model/finding.ts';
import type { Entry } from '../../model/journal.ts';
import type { Disk } from '../disk.ts';
import { readBytes, type Folder } from '../read-source.ts';
import { JOURNAL_FILE } from '../shop-files.ts';
import { FIRST_SUM, readLine } from './line.ts';
import { entryOfRecord } from './record.ts';
import { worded } from '../../words/worded.ts';

export const JOURNAL_CAP = 50_000_000;
const NEWLINE = 0x0a;

/** What a journal holds and how it ends. */
export interface JournalState {
  readonly entries: readonly Entry[];
  /** Sum of the last record, for the next one. */
  readonly sum: string;
  /** Bytes of whole records. */
  readonly soundBytes: number;
  /** Bytes behind the last whole record: one that was cut short while it was written. */
  readonly torn?: Uint8Array;
  /** The last record is whole, but its newline is not there. */
  readonly newlineMissing: boolean;
  /** With an error among them, nothing may be written. */
  readonly findings: readonly Finding[];
}

const empty: JournalState = { entries: [], sum: FIRST_SUM, soundBytes: 0, newlineMissing: false, findings: [] };

function problem(severity: Finding['severity'], code: string, line: number, message: string, advice: string): Finding {
  return { code, severity, message, advice, place: { file: JOURNAL_FILE, line, column: 1 } };
}

function damaged(line: number, byte: number): Finding {
  return problem(
    'error',
    'journal-damaged',
    line,
    worded`line ${line}, from byte ${byte + 1} on, is not what Drybench wrote`,
    worded`drybench check --repair sets aside what is broken and keeps a copy; till then nothing is written to it`,
  );
}

interface Step {
  readonly entry: Entry;
  readonly sum: string;
}

function readRecord(state: JournalState, bytes: Uint8Array, line: number, byte: number): Step | Finding {
  const read = readLine(state.sum, bytes);
  if (read === undefined) return damaged(line, byte);
  const result = entryOfRecord(read.record);
  if (result.ok && result.entry.number === line) return { entry: result.entry, sum: read.sum };
  if (!result.ok && result.newer)
    return problem(
      'error',
      'newer-journal',
      line,
      worded`line ${line} ${result.why}: a newer Drybench wrote it`,
      worded`use that one, or a newer one still`,
    );
  return damaged(line, byte);
}

/** What stands behind the last newline: nothing, a record without its newline, or one that was cut short. */
function readTail(state: JournalState, entries: Entry[], tail: Uint8Array, line: number): JournalState {
  if (tail.length === 0) return { ...state, entries };
  const whole = readLine(state.sum, tail);
  if (whole !== undefined) {
    const step = readRecord(state, tail, line, state.soundBytes);
    if (!('entry' in step)) return { ...state, entries, findings: [step] };
    const soundBytes = state.soundBytes + tail.length;
    return { ...state, entries: [...entries, step.entry], sum: step.sum, soundBytes, newlineMissing: true };
  }
  // A whole record with something else where its newline was: damage, and not a record cut short.
  if (readLine(state.sum, tail.subarray(0, -1)) !== undefined)
    return { ...state, entries, findings: [damaged(line, state.soundBytes)] };
  const message = worded`the last record, line ${line}, was cut short while it was written, and does not count`;
  const advice = worded`it is set aside when the next record is written: enter it again`;
  return { ...state, entries, torn: tail, findings: [problem('warning', 'journal-torn', line, message, advice)] };
}

/** Reads a journal's bytes. */
export function journalIn(bytes: Uint8Array): JournalState {
  const entries: Entry[] = [];
  let state = empty;
  for (;;) {
    const start = state.soundBytes;
    const newline = bytes.indexOf(NEWLINE, start);
    const line = entries.length + 1;
    if (newline < 0) return readTail(state, entries, bytes.subarray(start), line);
    const step = readRecord(state, bytes.subarray(start, newline), line, start);
    if (!('entry' in step)) return { ...state, entries, findings: [step] };
    entries.push(step.entry);
    state = { ...state, sum: step.sum, soundBytes: newline + 1 };
  }
}

/** The journal of a shop; an absent one is empty. */
export function readJournal(disk: Disk, shop: Folder): JournalState {
  const read = readBytes(disk, shop, JOURNAL_FILE, JOURNAL_CAP);
  if (read.ok) return journalIn(read.bytes);
  return read.missing ? empty : { ...empty, findings: [read.finding] };
}
