import { adviseWord, nearest } from '../suggest.ts';
import type { MapNode } from '../yaml/tree.ts';
import { wrongKind, type Notes, type Shape } from './shape.ts';
import { quoted } from './text.ts';

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

const MOST_UNKNOWN = 50;

interface UnknownKeys {
  readonly any: boolean;
  /** Keys that misspelt ones most likely stand for: they need not be told to be missing as well. */
  readonly meant: ReadonlySet<string>;
}

function refuseUnknownKeys(node: MapNode, fields: Fields, notes: Notes): UnknownKeys {
  const known = Object.keys(fields);
  const present = new Set(node.entries.map(({ key }) => key.text));
  const unused = known.filter((key) => !present.has(key));
  const unknown = node.entries.filter(({ key }) => !Object.hasOwn(fields, key.text));
  const meant = new Set<string>();
  for (const { key } of unknown.slice(0, MOST_UNKNOWN)) {
    const guess = nearest(key.text, unused);
    if (guess !== undefined) meant.add(guess);
    notes.error(key, {
      code: 'unknown-key',
      message: `${quoted(key.text)} is no key that can stand here`,
      advice: adviseWord(key.text, unused.length > 0 ? unused : known),
    });
  }
  return { any: unknown.length > 0, meant };
}

function readFields(
  node: MapNode,
  fields: Fields,
  what: string,
  meant: ReadonlySet<string>,
  notes: Notes,
): Record<string, unknown> | undefined {
  const found = new Map(node.entries.map((e) => [e.key.text, e.value]));
  const values: Record<string, unknown> = {};
  let sound = true;
  for (const [key, field] of Object.entries(fields)) {
    const value = found.get(key);
    if (value === undefined) {
      if (!field.required) continue;
      sound = false;
      if (meant.has(key)) continue;
      notes.error(node, { code: 'missing-key', message: `${what} needs the key ${key}`, advice: field.about });
      continue;
    }
    const read = field.shape.read(value, notes);
    if (read === undefined) sound = false;
    else values[key] = read;
  }
  return sound ? values : undefined;
}

const nothingUnknown: UnknownKeys = { any: false, meant: new Set() };

export interface RecordOptions {
  /** Keys that are not known are passed over: for files that only Drybench writes. */
  readonly open?: boolean;
}

/** Keys that are fixed. Unknown ones are refused, with a guess at what was meant; all errors are found at once. */
export function record<const F extends Fields>(
  what: string,
  fields: F,
  options: RecordOptions = {},
): Shape<RecordOf<F>> {
  return {
    read(node, notes) {
      if (node.kind !== 'map') {
        wrongKind(node, `the keys of ${what}`, notes);
        return undefined;
      }
      const odd = options.open === true ? nothingUnknown : refuseUnknownKeys(node, fields, notes);
      const values = readFields(node, fields, what, odd.meant, notes);
      // Each value came from the shape of its own key, which the compiler cannot follow through a loop.
      return odd.any || values === undefined ? undefined : (values as RecordOf<F>);
    },
    jsonSchema: () => ({
      type: 'object',
      properties: Object.fromEntries(
        Object.entries(fields).map(([key, f]) => [key, { ...f.shape.jsonSchema(), description: f.about }]),
      ),
      required: Object.keys(fields).filter((key) => fields[key]?.required === true),
      additionalProperties: options.open === true,
    }),
  };
}
