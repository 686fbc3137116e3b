import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** What is published of an instance. */
export interface Known {
  readonly lower: number | undefined;
  readonly upper: number | undefined;
  readonly status: string;
}

/** The row of an instance in the best-known.csv beside it, if there is one. */
export function bestKnown(path: string): Known | undefined {
  const csv = join(dirname(path), 'best-known.csv');
  if (!existsSync(csv)) return undefined;
  const row = readFileSync(csv, 'utf8')
    .split('\n')
    .map((line) => line.split(','))
    .find(([instance]) => instance === basename(path));
  if (row === undefined) return undefined;
  const [, lower = '', upper = '', status = ''] = row;
  const number = (text: string) => (text === '' ? undefined : Number(text));
  return { lower: number(lower), upper: number(upper), status };
}
