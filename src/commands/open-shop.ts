import { resolve } from 'node:path';
import { findShop } from '../files/find-shop.ts';
import type { ReadBook, ReadBookOptions } from '../files/read-book.ts';
import { readOnce, type Reading } from '../files/read-once.ts';
import { shippedDir } from '../files/shipped.ts';
import { strayCopies } from '../files/stray-copies.ts';
import type { Book } from '../model/book.ts';
import type { Finding } from '../model/finding.ts';
import { countFindings, findingsScreen } from '../reports/findings.ts';
import { journalFindings } from '../planning/situation-of.ts';
import type { Manner } from '../reports/say-time.ts';
import { harmless } from '../terminal/harmless.ts';
import { lookOf } from '../terminal/look.ts';
import type { Minute } from '../time/span.ts';
import { type KnownOffsets, localTime, offsetsThrough, readTime, recallOffsets } from '../time/zone.ts';
import { CannotGoOn, isFlagged, textFlag, type Call } from './call.ts';
import { memoryOf } from './memory.ts';
import { worded } from '../words/worded.ts';

const msPerMinute = 60_000;

export interface OpenShop {
  readonly folder: string;
  readonly book: Book;
  readonly now: Minute;
  readonly manner: Manner;
  /** Of the book as it was read. */
  readonly sum?: string;
}

/** The folder of the shop that is meant: `--shop`, or the one that the user stands in. */
export function shopFolder(call: Call): string {
  const told = textFlag(call, 'shop');
  const from = told === undefined ? call.io.folder : resolve(call.io.folder, told);
  const folder = findShop(from);
  if (folder !== undefined) return folder;
  throw new CannotGoOn(
    told === undefined
      ? worded`there is no shop.yaml in this folder or above it`
      : worded`there is no shop.yaml in "${told}"`,
    worded`go to the folder of your shop, or name it with --shop FOLDER`,
  );
}

type Wanted = Omit<ReadBookOptions, 'shippedDir' | 'disk'>;

/** Loaded only where the files are read: what was read before is remembered without. */
async function reader(): Promise<(folder: string, more: Omit<ReadBookOptions, 'shippedDir'>) => ReadBook> {
  const { readBook } = await import('../files/read-book.ts');
  return (folder, more) => readBook(folder, { shippedDir: shippedDir(), ...more });
}

/** What stands in the files of the shop, and what is wrong there; `everything`: in those, too, that no piece uses. */
export async function readShop(call: Call, more: Wanted = {}): Promise<ReadBook & { readonly folder: string }> {
  const folder = shopFolder(call);
  return { folder, ...(await reader())(folder, { ...more, disk: call.disk }) };
}

type Remembered = Pick<ReadBook, 'book' | 'findings' | 'recipeIds'> & { readonly offsets?: KnownOffsets };

/** The clocks of the shop in the years that its pieces are there, and one before and after: to ask the platform takes longer than all else. */
function clocksOf({ shop, pieces }: Book): KnownOffsets {
  const years = pieces
    .flatMap(({ arrives, wantedBy }) => [arrives, wantedBy])
    .flatMap((minute) => (minute === undefined ? [] : [localTime(minute, shop.timeZone).year]));
  return years.length === 0
    ? new Map<number, Map<number, number>>()
    : offsetsThrough(shop.timeZone, { from: Math.min(...years) - 1, to: Math.max(...years) + 1 });
}

/** The same without what takes a look at the files again. */
export async function rememberedShop(call: Call, folder: string, more: Wanted): Promise<Reading<Remembered>> {
  const memory = memoryOf(call);
  const reading = await readOnce(
    memory,
    JSON.stringify(['book', folder, shippedDir(), more]),
    async (disk): Promise<Remembered> => {
      const { book, findings, recipeIds } = (await reader())(folder, { ...more, disk });
      const offsets = book && memory && clocksOf(book);
      return { ...(book && { book }), findings, recipeIds, ...(offsets && { offsets }) };
    },
    call.disk,
  );
  const { book, offsets } = reading.value;
  if (book !== undefined && offsets !== undefined) recallOffsets(book.shop.timeZone, offsets);
  return reading;
}

/**
 * The book of a shop that is open already, with recipes and materials that nothing in it uses yet.
 * @throws CannotGoOn if those hold errors.
 */
export async function readMore(
  call: Call,
  { folder }: Pick<OpenShop, 'folder'>,
  more: { readonly recipes?: readonly string[]; readonly materials?: readonly string[] },
): Promise<{ readonly book: Book; readonly recipeIds: readonly string[] }> {
  const { book, findings, recipeIds } = (await rememberedShop(call, folder, more)).value;
  if (book !== undefined) return { book, recipeIds };
  throw new CannotGoOn(worded`what was named cannot be used in this shop`, undefined, 2, findings);
}

/** The time that `--at` names, or DRYBENCH_AT, on the shop's wall clock; else what the clock says. */
export function nowOf(call: Call, zone: string): Minute {
  const written = textFlag(call, 'at');
  if (written !== undefined) return timeOf(call, '--at', written, zone);
  const always = call.io.env['DRYBENCH_AT'] ?? '';
  if (always !== '') return timeOf(call, 'DRYBENCH_AT', always, zone);
  return Math.floor(call.io.clock() / msPerMinute);
}

/** A time as a person wrote it. What the clock shows twice is taken as the first, with a word to the person. */
export function timeOf(call: Call, what: string, written: string, zone: string): Minute {
  const time = readTime(written, zone);
  if (!time.ok) throw new CannotGoOn(worded`${what} "${written}" is no time`, time.why);
  if (time.notice !== undefined) call.io.stderr.write(`drybench: ${harmless(time.notice)}\n`);
  return time.minute;
}

/** Tells of findings that keep nobody from going on. */
export async function warn(call: Call, findings: readonly Finding[]): Promise<void> {
  if (findings.length === 0) return;
  const look = await lookOf(call.io.stderr, call.io.env, isFlagged(call, 'plain'));
  call.io.stderr.write(`${findingsScreen(findings, look, harmless)}\n`);
}

/**
 * Finds and reads the shop that a command is to work on; says what is worth knowing of its files on standard error.
 * `supplies`: with what work uses up beside its materials.
 * @throws CannotGoOn if its files hold errors.
 */
export async function openShop(call: Call, more: { readonly supplies?: boolean } = {}): Promise<OpenShop> {
  const folder = shopFolder(call);
  const { value, sum } = await rememberedShop(call, folder, more);
  const { book, findings } = value;
  if (book === undefined || findings.some((f) => f.severity === 'error'))
    throw new CannotGoOn(
      worded`the files of the shop are not right: ${countFindings(findings)}`,
      worded`mend them first; \`drybench check\` shows them again`,
      2,
      findings,
    );
  // A plan warns of what is not said of lead, beside the work; `check` says where to write it.
  const worthKnowing = [
    ...strayCopies(call.disk, folder),
    ...findings.filter((f) => f.code !== 'lead-unsaid'),
    ...journalFindings(book),
  ];
  await warn(call, worthKnowing);
  const { timeZone, clock, units, currency } = book.shop;
  const now = nowOf(call, timeZone);
  return { folder, book, now, manner: { now, zone: timeZone, clock, units, currency }, ...(sum && { sum }) };
}
