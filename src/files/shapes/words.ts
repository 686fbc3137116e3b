import * as z from 'zod/mini';
import type { JsonSchema } from './json-schema.ts';
import type { Remark } from './notes.ts';

/** What a person is told about a schema. */
export interface Words {
  /** What must stand here, as in `a length of time like 45 min`. */
  readonly wanted?: string;
  /** What the keys belong to, as in `a piece`. */
  readonly what?: string;
  /** Of a fixed set of words: the code of a finding about another. */
  readonly code?: string;
  /** Of forms told apart by their keys: where none of these stands. */
  readonly noForm?: Remark;
}

const spoken = z.registry<Words>();

/** Keywords of JSON Schema that an editor shows or checks by. */
export const editorWords = z.registry<JsonSchema & Record<string, unknown>>();

export function plainWords<S extends z.core.$ZodType>(schema: S, words: Words): S {
  spoken.add(schema, words);
  return schema;
}

export function wordsOf(schema: z.core.$ZodType): Words {
  return spoken.get(schema) ?? {};
}

export function forEditors<S extends z.core.$ZodType>(schema: S, keywords: JsonSchema): S {
  editorWords.add(schema, { ...keywords });
  return schema;
}
