import { createHash } from 'node:crypto';
import type { Minute } from '../../time/span.ts';
import type { CalendarEvent } from './event.ts';
import { derivedUuid } from './uid.ts';

/** What has been told to calendars about one event. */
export interface LedgerEntry {
  readonly sequence: number;
  /** Of all that the event says. */
  readonly hash: string;
  readonly firstSeen: Minute;
  readonly lastChanged: Minute;
  /** Left the plan then, and was called off. */
  readonly goneSince?: Minute;
  /** Hands that no longer have it, and since when. */
  readonly left?: Readonly<Record<string, Minute>>;
  /** As last told, without description and alarms. */
  readonly told: Omit<CalendarEvent, 'uid' | 'description' | 'alarms'>;
}

/** What a shop's calendars have been told so far: kept in its folder as `calendar.json`. */
export interface Ledger {
  readonly format: 'drybench.calendar/1';
  /** Part of every UID; made from the shop's name once, and kept when the shop takes another name. */
  readonly shop: string;
  readonly lastChanged: Minute;
  /** By UID, sorted. */
  readonly events: Readonly<Record<string, LedgerEntry>>;
}

/** How long a file tells that an event was called off; then nobody is waiting for the news any more. */
const TELL_MINUTES = 30 * 24 * 60;

/** 2025-01-01T00:00Z. */
const SEQUENCE_EPOCH: Minute = 28_928_160;

export function newLedger(shopName: string, timeZone: string): Ledger {
  return { format: 'drybench.calendar/1', shop: derivedUuid(['shop', shopName, timeZone]), lastChanged: 0, events: {} };
}

function hashOf(event: CalendarEvent): string {
  return createHash('sha256').update(JSON.stringify(event)).digest('hex').slice(0, 32);
}

function toldOf(event: CalendarEvent): LedgerEntry['told'] {
  const { kind, piece, hands, start, end, date, summary, done } = event;
  return { kind, piece, hands, start, end, ...(date === undefined ? {} : { date }), summary, done };
}

function leftBy(before: LedgerEntry, hands: readonly string[], now: Minute): Record<string, Minute> {
  const lost = before.told.hands.filter((hand) => !hands.includes(hand)).map((hand) => [hand, now] as const);
  const earlier = Object.entries(before.left ?? {}).filter(([hand, at]) => !hands.includes(hand) && isNews(at, now));
  return Object.fromEntries([...earlier, ...lost]);
}

/**
 * A first SEQUENCE is the minutes since a fixed day rather than 0: so it still only grows when the ledger was lost, or
 * when a step comes back after its entry was forgotten. From there each real change adds one.
 */
function entryFor(event: CalendarEvent, before: LedgerEntry | undefined, now: Minute): LedgerEntry {
  const hash = hashOf(event);
  const told = toldOf(event);
  if (before === undefined)
    return { sequence: Math.max(0, now - SEQUENCE_EPOCH), hash, firstSeen: now, lastChanged: now, told };
  if (before.hash === hash && before.goneSince === undefined) return before;
  const left = leftBy(before, event.hands, now);
  return {
    sequence: before.sequence + 1,
    hash,
    firstSeen: before.firstSeen,
    lastChanged: Math.max(now, before.lastChanged),
    ...(Object.keys(left).length > 0 ? { left } : {}),
    told,
  };
}

/** Is it still worth telling, at `now`, that an event went away at `since`? */
export function isNews(since: Minute | undefined, now: Minute): boolean {
  return since !== undefined && now - since <= TELL_MINUTES;
}

function gone(before: LedgerEntry, now: Minute): LedgerEntry {
  if (before.goneSince !== undefined) return before;
  return {
    ...before,
    sequence: before.sequence + 1,
    lastChanged: Math.max(now, before.lastChanged),
    goneSince: Math.max(now, before.lastChanged),
  };
}

/**
 * The ledger once `events` are told, at `now`. Only what really changed gets a new SEQUENCE and a new time of change;
 * where nothing did, the same ledger comes back, to the byte.
 */
export function updateLedger(ledger: Ledger, events: readonly CalendarEvent[], now: Minute): Ledger {
  const present = new Set(events.map((e) => e.uid));
  const kept = events.map((e) => [e.uid, entryFor(e, ledger.events[e.uid], now)] as const);
  const lost = Object.entries(ledger.events)
    .filter(([uid, entry]) => !present.has(uid) && !entry.told.done)
    .map(([uid, entry]) => [uid, gone(entry, now)] as const)
    .filter(([, entry]) => isNews(entry.goneSince, now));
  const entries = [...kept, ...lost].sort(([a], [b]) => (a < b ? -1 : 1));
  const same =
    entries.length === Object.keys(ledger.events).length &&
    entries.every(([uid, entry]) => ledger.events[uid] === entry);
  if (same) return ledger;
  return { ...ledger, lastChanged: Math.max(now, ledger.lastChanged), events: Object.fromEntries(entries) };
}
