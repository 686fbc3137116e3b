import { basename, dirname, resolve } from 'node:path';
import { realDisk } from '../files/disk.ts';
import { withLock } from '../files/lock.ts';
import { readBytes } from '../files/read-source.ts';
import { ABSENT, replaceFile, seen } from '../files/safe-write.ts';
import { calendarOf } from '../reports/calendar/calendar-of.ts';
import { newLedger, type Ledger } from '../reports/calendar/ledger.ts';
import { ledgerText, readLedger } from '../reports/calendar/read-ledger.ts';
import { harmless } from '../terminal/harmless.ts';
import { print, printJson, wantsJson } from './answers.ts';
import { CannotGoOn, textFlag, type Call, type ExitCode } from './call.ts';
import { openShop, type OpenShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';

const ledgerFile = 'calendar.json';
const cap = 50_000_000;
/** How long before a window shuts its alarm rings: an hour, to finish what is in hand and set up. */
const warnMinutes = 60;

interface KeptLedger {
  readonly ledger: Ledger;
  readonly seen: string;
}

/** What calendars have been told so far. */
function keptLedger({ folder, book }: OpenShop): KeptLedger {
  const read = readBytes(realDisk, { path: folder, label: '' }, ledgerFile, cap);
  if (!read.ok) {
    if (read.missing) return { ledger: newLedger(book.shop.name, book.shop.timeZone), seen: ABSENT };
    throw new CannotGoOn(`${ledgerFile} cannot be read`, undefined, 2, [read.finding]);
  }
  const ledger = readLedger(Buffer.from(read.bytes).toString('utf8'));
  if (ledger.ok) return { ledger: ledger.ledger, seen: seen(read.bytes) };
  throw new CannotGoOn(`${ledgerFile} is not right: ${ledger.why}`, 'take the file away: it is made again');
}

/** Replaces the whole file, whatever stood there before. */
function replace(path: string, text: string): void {
  const [folder, name] = [dirname(path), basename(path)];
  const before = readBytes(realDisk, { path: folder, label: '' }, name, cap);
  if (!before.ok && !before.missing)
    throw new CannotGoOn(`"${name}" cannot be replaced`, undefined, 2, [before.finding]);
  replaceFile(realDisk, path, text, before.ok ? seen(before.bytes) : ABSENT);
}

/** Writes the plan as a calendar that a phone can import. */
export async function answer(call: Call): Promise<ExitCode> {
  const file = textFlag(call, 'file');
  if (file === undefined) throw new CannotGoOn('say where the calendar is to go', 'write --file shop.ics');
  const path = resolve(call.io.folder, file);
  const shop = await openShop(call);
  const { plan } = planOf(call, shop);
  const calendar = withLock(realDisk, shop.folder, 'phone', () => {
    const kept = keptLedger(shop);
    const { book, now } = shop;
    const made = calendarOf({ plan, book, now, warnMinutes, ledger: kept.ledger, choice: {}, form: 'file' });
    replace(path, made.text);
    if (made.ledger !== kept.ledger)
      replaceFile(realDisk, resolve(shop.folder, ledgerFile), ledgerText(made.ledger), kept.seen);
    return made;
  });
  if (wantsJson(call)) printJson(call, { format: 'drybench.phone/1', file: path, events: calendar.eventCount });
  else print(call, `Wrote ${calendar.eventCount} entries to ${harmless(file)}.\n`);
  return 0;
}
