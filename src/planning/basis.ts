import type { Book } from '../model/book.ts';
import type { Shop } from '../model/shop.ts';
import { standingEntries } from '../model/standing-entries.ts';
import { spokenCode } from '../words/worded.ts';

function plain(_: string, value: unknown): unknown {
  return value instanceof Map ? [...(value as ReadonlyMap<unknown, unknown>)] : value;
}

/** What no plan follows from: what is on the shelf, and what things cost. */
const beside: ReadonlySet<string> = new Set<keyof Shop>([
  'stock',
  'stockCounted',
  'prices',
  'wastePercent',
  'overheadMinorPerDay',
  'sellingFeePercent',
]);

/**
 * All that a plan follows from but the time, as one text: the files, and the entries of the journal that still stand.
 * Taking back what was entered brings back the text that there was before. Long: to be kept as a fingerprint.
 */
export function basisText({ shop, materials, recipes, parts, pieces, journal }: Book): string {
  const planned = Object.fromEntries(Object.entries(shop).filter(([key]) => !beside.has(key)));
  const files = { shop: planned, materials, recipes, parts, pieces };
  const deeds = standingEntries(journal).entries.map(({ at, deed }) => ({ at, deed }));
  // A plan holds words: titles of its steps, warnings.
  const language = spokenCode() === 'en' ? {} : { language: spokenCode() };
  return JSON.stringify({ files, deeds, ...language }, plain);
}
