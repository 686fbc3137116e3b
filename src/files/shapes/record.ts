import * as z from 'zod/mini';
import type { Settings } from './notes.ts';
import { shapeOf, type Shape } from './shape.ts';
import { forEditors, plainWords } from './words.ts';
import { translated, worded } from '../../words/worded.ts';

/** One key of a record. */
export interface Field<T, Required extends boolean> {
  readonly shape: Shape<T>;
  readonly required: Required;
  /** For an editor that shows it beside the key. */
  readonly about: string;
}

export function must<T>(shape: Shape<T>, about: string): Field<T, true> {
  return { shape, required: true, about };
}

export function may<T>(shape: Shape<T>, about: string): Field<T, false> {
  return { shape, required: false, about };
}

export type Fields = Readonly<Record<string, Field<unknown, boolean>>>;

type Value<F> = F extends Field<infer T, boolean> ? T : never;

export type RecordOf<F extends Fields> = {
  readonly [K in keyof F as F[K]['required'] extends true ? K : never]: Value<F[K]>;
} & {
  readonly [K in keyof F as F[K]['required'] extends true ? never : K]?: Value<F[K]>;
};

export interface RecordOptions {
  /** Keys that are not known are passed over: for files that only Drybench writes. */
  readonly open?: boolean;
}

function fieldSchema({ shape, required, about }: Fields[string], settings: Settings): z.ZodMiniType {
  const schema = shape.schemaFor(settings);
  // A schema may serve several keys, each with its own description.
  return forEditors(required ? z.clone(schema) : z.exactOptional(schema), { description: translated(about) });
}

/** Keys that are fixed. Unknown ones are refused, with a guess at what was meant; all errors are found at once. */
export function record<const F extends Fields>(
  what: string,
  fields: F,
  options: RecordOptions = {},
): Shape<RecordOf<F>> {
  return shapeOf((settings) => {
    const entries = Object.entries(fields).map(([key, field]) => [key, fieldSchema(field, settings)] as const);
    const keys = Object.fromEntries(entries);
    const schema = options.open === true ? z.object(keys) : z.strictObject(keys);
    const told = { what: translated(what), wanted: worded`the keys of ${translated(what)}` };
    // Each key's value is of its own field's type, which the compiler cannot follow through a loop.
    return plainWords(schema, told) as unknown as z.ZodMiniType<RecordOf<F>>;
  });
}

/** Records told apart by the first key of each; `otherwise` is said where none of these stands. */
export function oneOfForms<T>(
  forms: readonly Shape<T>[],
  otherwise: { readonly code: string; readonly message: string; readonly advice: string },
): Shape<T> {
  return shapeOf((settings) =>
    plainWords(z.union(forms.map((form) => form.schemaFor(settings))), {
      noForm: { ...otherwise, message: translated(otherwise.message), advice: translated(otherwise.advice) },
    }),
  );
}
