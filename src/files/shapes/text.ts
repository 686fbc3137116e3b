import type { Read, Reader } from '../quantities/read.ts';
import { adviseWord } from '../suggest.ts';
import type { JsonSchema } from './json-schema.ts';
import { wrongKind, type Notes, type Shape } from './shape.ts';

const LONGEST_SHOWN = 60;

/** Offending text as a message quotes it. */
export function quoted(text: string): string {
  const points = Array.from(text.slice(0, 2 * LONGEST_SHOWN));
  return points.length > LONGEST_SHOWN || text.length > 2 * LONGEST_SHOWN
    ? `"${points.slice(0, LONGEST_SHOWN).join('')}…"`
    : `"${text}"`;
}

interface Written<T> {
  /** What must stand here, as in `a length of time`. */
  readonly wanted: string;
  readonly code: string;
  readonly jsonSchema: JsonSchema;
  readonly read: (text: string, notes: Notes) => Read<T>;
}

/** A single value, read by a reader of quantities. */
export function written<T>({ wanted, code, jsonSchema, read }: Written<T>): Shape<T> {
  return {
    read(node, notes) {
      if (node.kind !== 'text' || node.text === '') {
        wrongKind(node, wanted, notes);
        return undefined;
      }
      const result = read(node.text, notes);
      if (result.ok) return result.value;
      notes.error(node, { code, message: `${quoted(node.text)} ${result.why}`, advice: result.write });
      return undefined;
    },
    jsonSchema: () => jsonSchema,
  };
}

/** A quantity with its unit. */
export function quantity<T>(wanted: string, code: string, reader: Reader<T>, example: string): Shape<T> {
  return written({
    wanted: `${wanted} like ${example}`,
    code,
    jsonSchema: { type: 'string', maxLength: 200, examples: [example] },
    read: reader,
  });
}

/** Words in free form: a name, a caution. */
export function words(longest: number): Shape<string> {
  return written({
    wanted: 'some words',
    code: 'too-long',
    jsonSchema: { type: 'string', maxLength: longest },
    read: (text) =>
      text.length <= longest
        ? { ok: true, value: text }
        : { ok: false, why: `has more than ${longest} characters`, write: 'shorten it' },
  });
}

/** One of a few fixed words. */
export function choice<const T extends string>(what: string, known: readonly T[]): Shape<T> {
  const isKnown = (text: string): text is T => (known as readonly string[]).includes(text);
  return written({
    wanted: what,
    code: `unknown-${what.replace(/^an? /, '').replaceAll(' ', '-')}`,
    jsonSchema: { enum: known },
    read: (text) =>
      isKnown(text) ? { ok: true, value: text } : { ok: false, why: `is not ${what}`, write: adviseWord(text, known) },
  });
}
