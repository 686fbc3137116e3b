import { spokenCode, translated } from '../words/worded.ts';

/** Keys of the files that come with Drybench whose texts people read. Sources are citations, and stay as published. */
export const readKeys: ReadonlySet<string> = new Set([
  'name',
  'about',
  'do',
  'caution',
  'cautions',
  'why',
  'of',
  'title',
  'short',
  'covers',
  'text',
  'say',
]);

function worded(value: unknown, key: string): unknown {
  if (typeof value === 'string') return readKeys.has(key) ? translated(value) : value;
  if (Array.isArray(value)) return value.map((item) => worded(item, key));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, worded(inner, name)]));
}

/** What a file that comes with Drybench holds, with its texts in the language that is spoken. */
export function shippedWords<T>(value: T): T {
  return spokenCode() === 'en' ? value : (worded(value, '') as T);
}
