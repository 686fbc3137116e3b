import * as z from 'zod/mini';
import type { Read, Reader } from '../quantities/read.ts';
import type { JsonSchema } from './json-schema.ts';
import { notesOf, type Notes } from './notes.ts';
import { quoted } from './quoted.ts';
import { shapeOf, type Shape } from './shape.ts';
import { forEditors, plainWords } from './words.ts';
import { translated, worded, type Later } from '../../words/worded.ts';

export { quoted } from './quoted.ts';

interface Written<T> {
  /** What must stand here, as in `a length of time`. */
  readonly wanted: Later;
  readonly code: string;
  readonly jsonSchema: JsonSchema;
  readonly read: (text: string, notes: Notes) => Read<T>;
}

/** As editors of letters put them in. */
const curlyQuote = /^[“”„‘’‚]/;

/** A single value, read by a reader of quantities. */
export function written<T>({ wanted, code, jsonSchema, read }: Written<T>): Shape<T> {
  return shapeOf((settings) =>
    z.pipe(
      forEditors(plainWords(z.string(), { wanted: translated(wanted) }), jsonSchema),
      z.transform((text: string, context): T => {
        const { notes, here } = notesOf(context, settings);
        if (text === '') {
          notes.error(here, {
            code: 'empty-value',
            message: worded`the value is missing`,
            advice: worded`write ${translated(wanted)}`,
          });
          return z.NEVER;
        }
        const result = read(text, notes);
        if (result.ok) return result.value;
        const advice = curlyQuote.test(text) ? worded`take the curly quotes away: they count as letters` : result.write;
        notes.error(here, { code, message: `${quoted(text)} ${result.why}`, advice });
        return z.NEVER;
      }),
    ),
  );
}

/** A quantity with its unit. */
export function quantity<T>(
  wanted: string,
  code: string,
  reader: Reader<T>,
  example: string,
  pattern?: string,
): Shape<T> {
  return written({
    wanted: () => worded`${translated(wanted)} like ${example}`,
    code,
    jsonSchema: { type: 'string', maxLength: 200, examples: [example], ...(pattern !== undefined && { pattern }) },
    read: reader,
  });
}

/** Words in free form: a name, a caution. */
export function words(longest: number): Shape<string> {
  return written({
    wanted: 'a text',
    code: 'too-long',
    jsonSchema: { type: 'string', maxLength: longest },
    read: (text) =>
      text.length <= longest
        ? { ok: true, value: text }
        : { ok: false, why: worded`has more than ${longest} characters`, write: worded`shorten it` },
  });
}

/** One of a few fixed words. */
export function choice<const T extends string>(what: string, known: readonly T[]): Shape<T> {
  const code = `unknown-${what.replace(/^an? /, '').replaceAll(' ', '-')}`;
  return shapeOf<T>(() =>
    plainWords(z.enum(known as readonly [T, ...T[]]) as unknown as z.ZodMiniType<T>, {
      wanted: translated(what),
      code,
    }),
  );
}
