import { readAreaM2 } from '../files/quantities/measure.ts';
import { readMoneyMinor } from '../files/quantities/money.ts';
import { wholeReader } from '../files/quantities/plain.ts';
import type { Reader } from '../files/quantities/read.ts';
import { adviseWord } from '../files/suggest.ts';
import { USUAL_THICKNESS_MM, type Piece, type Section } from '../model/piece.ts';
import { promiseDocument, promiseScreen } from '../reports/promise.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { CannotGoOn, textFlag, type Call, type ExitCode } from './call.ts';
import { valueOf } from './flag-values.ts';
import { openShop, readMore, timeOf, type OpenShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';
import { searchStoppably } from './search-stoppably.ts';
import { localTime } from '../time/zone.ts';
import { worded } from '../words/worded.ts';

const END_OF_DAY = 'T23:59';

/** One value for each section, or one for all. */
function eachOf<T>(call: Call, name: string, count: number, usual: T, read: Reader<T>): T[] {
  const written = textFlag(call, name);
  if (written === undefined) return Array.from({ length: count }, () => usual);
  const values = written.split(',').map((part) => valueOf(`--${name}`, part.trim(), read(part.trim())));
  const [first] = values;
  if (first !== undefined && values.length === 1) return Array.from({ length: count }, () => first);
  if (values.length === count) return values;
  throw new CannotGoOn(
    worded`--${name} names ${values.length} values for ${count} recipes`,
    worded`write one for each, or one for all`,
  );
}

function namedWhole(call: Call): string[] {
  const named = textFlag(call, 'whole');
  return named === undefined ? [] : [named];
}

/** The recipe of the joining steps: the one that was named, else what most pieces of the shop have. */
function wholeOf(call: Call, { book }: OpenShop): string | undefined {
  const [named] = namedWhole(call);
  if (named !== undefined) return named;
  const counts = new Map<string, number>();
  for (const { whole } of book.pieces) if (whole !== undefined) counts.set(whole, (counts.get(whole) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

function freeId(shop: OpenShop): string {
  const taken = new Set(shop.book.pieces.map((p) => p.id));
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? 'new-piece' : `new-piece-${n}`;
    if (!taken.has(id)) return id;
  }
}

function byOf(call: Call, shop: OpenShop): number {
  const written = textFlag(call, 'by');
  if (written === undefined) throw new CannotGoOn(worded`say when it is wanted`, worded`write --by 2027-02-20`);
  const { timeZone } = shop.book.shop;
  const by = timeOf(call, '--by', written, timeZone);
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(written.trim());
  const end = isDay ? timeOf(call, '--by', written.trim() + END_OF_DAY, timeZone) : by;
  if (end > shop.now) return end;
  const today = localTime(shop.now, timeZone).date;
  throw new CannotGoOn(worded`--by "${written}" is over already`, worded`write a day from ${today} on`);
}

/** The piece that might be taken on: a section for each recipe that was named. */
function pieceOf(call: Call, shop: OpenShop, { book, recipeIds }: Awaited<ReturnType<typeof readMore>>): Piece {
  const { recipes, shop: settings } = book;
  const whole = wholeOf(call, shop);
  for (const word of [...call.words, ...(whole === undefined ? [] : [whole])])
    if (!recipes.has(word)) throw new CannotGoOn(worded`there is no recipe "${word}"`, adviseWord(word, recipeIds));
  const areas = eachOf(call, 'area', call.words.length, 1, readAreaM2);
  const items = eachOf(call, 'items', call.words.length, 1, wholeReader(1, 999));
  const sections = call.words.map((recipe, i): Section => ({
    id: `section-${i + 1}`,
    name: worded`Section ${i + 1}`,
    recipe,
    areaM2: areas[i] ?? 1,
    items: items[i] ?? 1,
    thicknessMm: USUAL_THICKNESS_MM,
    materials: {},
    without: [],
  }));
  const [price, arrives] = [textFlag(call, 'price'), textFlag(call, 'arrives')];
  return {
    id: freeId(shop),
    name: worded`The new piece`,
    kind: 'piece',
    arrives: arrives === undefined ? shop.now : timeOf(call, '--arrives', arrives, settings.timeZone),
    priceMinor: price === undefined ? 0 : valueOf('--price', price, readMoneyMinor(price, settings.currency)),
    costMinor: 0,
    mayCarryLead: false,
    sections,
    ...(whole !== undefined && { whole }),
    joins: [],
  };
}

/** Could the shop take on such a piece by a date, without making another late? Exit code 1: not by that date. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const more = await readMore(call, shop, { recipes: [...call.words, ...namedWhole(call)] });
  const by = byOf(call, shop);
  const piece = pieceOf(call, shop, more);
  const { plan } = await planOf(call, shop);
  const ask = { book: more.book, now: shop.now, kept: plan, piece, by };
  const promise = await searchStoppably(call, 'promise', ask, {
    saying: worded`planning with the new piece …`,
    steps: plan.steps.length,
  });
  if (wantsJson(call)) printJson(call, promiseDocument(promise, shop.manner));
  else print(call, promiseScreen(harmlessData(promise), shop.manner, await answerLook(call)));
  return promise.kept ? 0 : 1;
}
