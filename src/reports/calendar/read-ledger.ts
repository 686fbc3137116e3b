import { eventKinds, type EventKind } from './event.ts';
import type { Ledger, LedgerEntry } from './ledger.ts';
import { worded } from '../../words/worded.ts';

type Raw = Readonly<Record<string, unknown>>;

class Malformed extends Error {}
class Newer extends Error {}

function must(good: boolean, what: string): asserts good {
  if (!good) throw new Malformed(what);
}

function record(value: unknown, what: string): Raw {
  must(typeof value === 'object' && value !== null && !Array.isArray(value), worded`${what} must be an object`);
  return value as Raw;
}

function whole(value: unknown, what: string): number {
  must(typeof value === 'number' && Number.isSafeInteger(value), worded`${what} must be a whole number`);
  return value;
}

function text(value: unknown, what: string): string {
  must(typeof value === 'string', worded`${what} must be text`);
  return value;
}

function kindOf(value: unknown): EventKind {
  const kind = eventKinds.find((k) => k === value);
  must(kind !== undefined, worded`"kind" must be one of ${eventKinds.join(', ')}`);
  return kind;
}

function told(value: unknown): LedgerEntry['told'] {
  const raw = record(value, '"told"');
  must(Array.isArray(raw['hands']), worded`"hands" must be a list`);
  must(typeof raw['done'] === 'boolean', worded`"done" must be true or false`);
  const date = raw['date'] === undefined ? undefined : text(raw['date'], '"date"');
  must(date === undefined || /^\d{4}-\d{2}-\d{2}$/.test(date), worded`"date" must be like 2027-01-16`);
  return {
    kind: kindOf(raw['kind']),
    piece: text(raw['piece'], '"piece"'),
    hands: raw['hands'].map((hand) => text(hand, 'a hand')),
    start: whole(raw['start'], '"start"'),
    end: whole(raw['end'], '"end"'),
    ...(date === undefined ? {} : { date }),
    summary: text(raw['summary'], '"summary"'),
    done: raw['done'],
  };
}

function entry(value: unknown, uid: string): LedgerEntry {
  must(/^[0-9a-f-]{36}$/.test(uid), worded`an event has no proper UID`);
  const raw = record(value, worded`an event`);
  const sequence = whole(raw['sequence'], '"sequence"');
  must(sequence >= 0 && sequence < 2 ** 31, worded`"sequence" is out of range`);
  const left = raw['left'] === undefined ? undefined : Object.entries(record(raw['left'], '"left"'));
  return {
    sequence,
    hash: text(raw['hash'], '"hash"'),
    firstSeen: whole(raw['firstSeen'], '"firstSeen"'),
    lastChanged: whole(raw['lastChanged'], '"lastChanged"'),
    ...(raw['goneSince'] === undefined ? {} : { goneSince: whole(raw['goneSince'], '"goneSince"') }),
    ...(left === undefined ? {} : { left: Object.fromEntries(left.map(([k, v]) => [k, whole(v, '"left"')])) }),
    told: told(raw['told']),
  };
}

export type ReadLedger =
  | { readonly ok: true; readonly ledger: Ledger }
  | { readonly ok: false; readonly newer: boolean; readonly why: string };

function ledgerOf(content: string): Ledger {
  const raw = record(JSON.parse(content), worded`the document`);
  const version = /^drybench\.calendar\/(\d{1,4})$/.exec(String(raw['format']))?.[1];
  if (Number(version) > 1) throw new Newer(worded`a newer Drybench wrote it`);
  must(raw['format'] === 'drybench.calendar/1', worded`its "format" is not "drybench.calendar/1"`);
  const events = Object.entries(record(raw['events'], '"events"'));
  return {
    format: 'drybench.calendar/1',
    shop: text(raw['shop'], '"shop"'),
    lastChanged: whole(raw['lastChanged'], '"lastChanged"'),
    events: Object.fromEntries(events.map(([uid, value]) => [uid, entry(value, uid)])),
  };
}

/** Reads what `ledgerText` wrote, and says what is wrong with anything else. */
export function readLedger(content: string): ReadLedger {
  try {
    return { ok: true, ledger: ledgerOf(content) };
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, newer: false, why: worded`it is not JSON` };
    if (error instanceof Malformed) return { ok: false, newer: false, why: error.message };
    if (error instanceof Newer) return { ok: false, newer: true, why: error.message };
    throw error;
  }
}

/** The same ledger always gives the same text. */
export function ledgerText(ledger: Ledger): string {
  return `${JSON.stringify(ledger, null, 1)}\n`;
}
