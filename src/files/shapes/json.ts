import * as z from 'zod/mini';
import { minuteOfIso } from '../../time/iso.ts';
import type { Minute } from '../../time/span.ts';
import type { Node } from '../yaml/tree.ts';
import { shapeOf, type Shape } from './shape.ts';
import { written } from './text.ts';
import { plainWords } from './words.ts';
import { worded } from '../../words/worded.ts';

const NOWHERE = { start: 0, end: 0 };

/** Nothing that Drybench writes is deeper; what is deeper reads as empty, and so is not what its place asks for. */
const DEEPEST = 32;

/** Data out of JSON as a tree that shapes can read; it has no places. Null reads as an empty value. */
export function nodeOfJson(value: unknown, depth = 0): Node {
  if (depth > DEEPEST) return textOf('');
  if (Array.isArray(value))
    return { kind: 'list', items: value.map((item) => nodeOfJson(item, depth + 1)), flow: true, ...NOWHERE };
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).map(([key, v]) => ({ key: textOf(key), value: nodeOfJson(v, depth + 1) }));
    return { kind: 'map', entries, flow: true, ...NOWHERE };
  }
  return textOf(
    typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? String(value) : '',
  );
}

function textOf(text: string) {
  return { kind: 'text', text, style: 'plain', ...NOWHERE } as const;
}

/** Any text; it may be empty, as the name of the one way of a step is. */
export const jsonText: Shape<string> = shapeOf(() => plainWords(z.string(), { wanted: worded`a text` }));

/** A number as JSON writes it. */
export const jsonNumber: Shape<number> = written({
  wanted: 'a number',
  code: 'bad-number',
  jsonSchema: { type: ['number'] },
  read: (text) => {
    const value = text.length > 40 ? NaN : Number(text);
    return Number.isFinite(value)
      ? { ok: true, value }
      : { ok: false, why: worded`is not a number`, write: worded`write a number` };
  },
});

/** A time with its offset, as Drybench writes it. */
export const jsonTime: Shape<Minute> = written({
  wanted: 'a time',
  code: 'bad-time',
  jsonSchema: { type: 'string' },
  read: (text) => {
    const minute = minuteOfIso(text);
    return minute === undefined
      ? {
          ok: false,
          why: worded`is not a time with its offset`,
          write: worded`write a time like 2027-01-11T07:30:00+01:00`,
        }
      : { ok: true, value: minute };
  },
});
