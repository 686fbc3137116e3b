import { resolve } from 'node:path';
import type { Disk } from '../files/disk.ts';
import { withLock } from '../files/lock.ts';
import type { OwnFile } from '../files/repair-shop.ts';
import { readBytes } from '../files/read-source.ts';
import { ABSENT, replaceFile, seen } from '../files/safe-write.ts';
import { isTameJson } from '../files/tame-json.ts';
import type { Plan } from '../model/plan.ts';
import { calendarOf, type Calendar, type CalendarRequest } from '../reports/calendar/calendar-of.ts';
import { newLedger, type Ledger } from '../reports/calendar/ledger.ts';
import { ledgerText, readLedger, type ReadLedger } from '../reports/calendar/read-ledger.ts';
import { CannotGoOn } from './call.ts';
import type { OpenShop } from './open-shop.ts';
import { worded } from '../words/worded.ts';

const ledgerFile = 'calendar.json';
const cap = 20_000_000;

function ledgerIn(bytes: Uint8Array): ReadLedger {
  const text = Buffer.from(bytes).toString('utf8');
  return isTameJson(text)
    ? readLedger(text)
    : { ok: false, newer: false, why: worded`it holds more than any calendar does` };
}

/** For the repair of a shop. What a newer Drybench wrote is not broken. */
export const toldFile: OwnFile = {
  file: ledgerFile,
  isBroken: (bytes) => {
    const read = ledgerIn(bytes);
    return !read.ok && !read.newer;
  },
};

interface KeptLedger {
  readonly ledger: Ledger;
  readonly seen: string;
}

/** What calendars have been told so far. */
function keptLedger(disk: Disk, { folder, book }: OpenShop): KeptLedger {
  const read = readBytes(disk, { path: folder, label: '' }, ledgerFile, cap);
  if (!read.ok) {
    if (read.missing) return { ledger: newLedger(book.shop.name, book.shop.timeZone), seen: ABSENT };
    throw new CannotGoOn(worded`${ledgerFile} cannot be read`, undefined, 2, [read.finding]);
  }
  const ledger = ledgerIn(read.bytes);
  if (ledger.ok) return { ledger: ledger.ledger, seen: seen(read.bytes) };
  if (ledger.newer)
    throw new CannotGoOn(
      worded`${ledgerFile} was written by a newer Drybench`,
      worded`use that one, or a newer one still`,
    );
  throw new CannotGoOn(
    worded`${ledgerFile} is not right: ${ledger.why}`,
    worded`drybench check --repair sets it aside`,
  );
}

/**
 * The calendar of a plan, with what it tells written down in the shop's folder before it is handed out: so a later one
 * never says something else under the same number. `handOut` runs under the shop's lock.
 */
export function toldCalendar(
  disk: Disk,
  shop: OpenShop,
  plan: Plan,
  wishes: Pick<CalendarRequest, 'choice' | 'form' | 'warnMinutes'>,
  handOut: (calendar: Calendar) => void = () => undefined,
): Calendar {
  return withLock(disk, shop.folder, 'phone', () => {
    const kept = keptLedger(disk, shop);
    const calendar = calendarOf({ ...wishes, plan, book: shop.book, now: shop.now, ledger: kept.ledger });
    if (calendar.ledger !== kept.ledger)
      replaceFile(disk, resolve(shop.folder, ledgerFile), ledgerText(calendar.ledger), kept.seen);
    handOut(calendar);
    return calendar;
  });
}
