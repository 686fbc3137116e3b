import * as z from 'zod/mini';
import { plainOf, type Node } from '../yaml/tree.ts';
import type { JsonSchema } from './json-schema.ts';
import { tellIssues } from './tell-issues.ts';
import { isWarning, notesOf, type Notes, type Settings } from './notes.ts';
import { editorWords, plainWords } from './words.ts';
import { spokenCode, translated, worded, type Later } from '../../words/worded.ts';

export type { Notes, Remark } from './notes.ts';

/** A form that a value in a file must have: a schema that checks and reads plain data, told about in plain words. */
export interface Shape<T> {
  /** The schema, made when it is first asked for. Zone and currency are built into it. */
  schemaFor(settings: Settings): z.ZodMiniType<T>;
  /** The value; or undefined, with at least one error in `notes`. */
  read(node: Node, notes: Notes): T | undefined;
  jsonSchema(): JsonSchema;
}

export type ValueOf<S> = S extends Shape<infer T> ? T : never;

const MOST_ITEMS = 2000;

/** The first list or map that is longer than any file of a shop needs: it is refused before a schema sees it. */
function overlong(node: Node): { readonly node: Node; readonly message: string } | undefined {
  if (node.kind === 'text') return undefined;
  const inner = node.kind === 'list' ? node.items : node.entries.map((entry) => entry.value);
  if (inner.length > MOST_ITEMS)
    return {
      node,
      message:
        node.kind === 'list'
          ? worded`the list has more than ${MOST_ITEMS} items`
          : worded`the map has more than ${MOST_ITEMS} keys`,
    };
  for (const child of inner) {
    const found = overlong(child);
    if (found !== undefined) return found;
  }
  return undefined;
}

function readBy<T>(shape: Pick<Shape<T>, 'schemaFor'>, node: Node, notes: Notes): T | undefined {
  const long = overlong(node);
  if (long !== undefined) {
    notes.error(long.node, { code: 'too-long', message: long.message });
    return undefined;
  }
  const plain = plainOf(node);
  const { zone, currency } = notes;
  const run = (silent: boolean) => {
    const schema = shape.schemaFor({ zone, currency, silent });
    const result = z.safeParse(schema, plain);
    const issues = result.success ? [] : result.error.issues;
    return { value: result.data, schema, issues };
  };
  const first = run(false);
  const warnings = first.issues.filter(isWarning);
  tellIssues({ node, schema: first.schema }, warnings, notes);
  // A schema knows errors only: what it warned of is passed over the second time.
  const last = warnings.length > 0 ? run(true) : first;
  tellIssues({ node, schema: last.schema }, last.issues, notes);
  return last.value;
}

/** A shape from what makes its schema. */
export function shapeOf<T>(make: (settings: Settings) => z.ZodMiniType<T>): Shape<T> {
  const made = new Map<string, z.ZodMiniType<T>>();
  const shape: Shape<T> = {
    schemaFor(settings) {
      const key = `${settings.zone} ${settings.currency} ${settings.silent ? 'silent' : ''} ${spokenCode()}`;
      const known = made.get(key);
      if (known !== undefined) return known;
      const schema = make(settings);
      made.set(key, schema);
      return schema;
    },
    read: (node, notes) => readBy(shape, node, notes),
    jsonSchema() {
      const schema = shape.schemaFor({ zone: 'UTC', currency: 'EUR', silent: true });
      // What the library gives has more kinds of keywords than the schemas here use.
      return z.toJSONSchema(schema, { io: 'input', metadata: editorWords }) as JsonSchema;
    },
  };
  return shape;
}

/** The same shape with its value carried on; `change` may refuse it by `notes.error(here, …)` and undefined. */
export function refined<A, B>(
  shape: Shape<A>,
  change: (value: A, here: Node, notes: Notes) => B | undefined,
): Shape<B> {
  return shapeOf((settings) =>
    z.pipe(
      shape.schemaFor(settings),
      z.transform((value: A, context): B => {
        const { notes, here } = notesOf(context, settings);
        return change(value, here, notes) ?? z.NEVER;
      }),
    ),
  );
}

export interface ByKind<A, B, C> {
  readonly text?: Shape<A>;
  readonly list?: Shape<B>;
  readonly map?: Shape<C>;
}

/** One shape for each kind of node: a short form as text, a long one as keys. */
export function byKind<A = never, B = never, C = never>(shapes: ByKind<A, B, C>, wanted: Later): Shape<A | B | C> {
  return shapeOf((settings) => {
    const present: Shape<A | B | C>[] = [shapes.text, shapes.list, shapes.map].filter((s) => s !== undefined);
    return plainWords(z.union(present.map((shape) => shape.schemaFor(settings))), {
      wanted: translated(wanted),
    });
  });
}

/** A shape that takes part in itself. */
export function later<T>(shape: () => Shape<T>): Shape<T> {
  return shapeOf((settings) => z.lazy(() => shape().schemaFor(settings)));
}
