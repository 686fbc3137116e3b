import type { MapNode, Node, TextNode } from '../yaml/tree.ts';
import type { JsonSchema } from './json-schema.ts';

/** Something wrong at a node. */
export interface Remark {
  readonly code: string;
  readonly message: string;
  readonly advice?: string;
}

/** What a shape needs to know while it reads, and where it says what is wrong. */
export interface Notes {
  /** Zone of the wall clock that times without an offset are read on. */
  readonly zone: string;
  /** ISO 4217 code that amounts of money must have. */
  readonly currency: string;
  error(at: Node, remark: Remark): void;
  warn(at: Node, remark: Remark): void;
}

/** A form that a value in a file must have: reads it, and describes itself to an editor. */
export interface Shape<T> {
  /** The value; or undefined, with at least one error in `notes`. */
  read(node: Node, notes: Notes): T | undefined;
  jsonSchema(): JsonSchema;
}

export type ValueOf<S> = S extends Shape<infer T> ? T : never;

const kindWords = { text: 'a single value', list: 'a list', map: 'keys with values' };

/** Says that `node` is of the wrong kind. */
export function wrongKind(node: Node, wanted: string, notes: Notes): void {
  const empty = node.kind === 'text' && node.text === '';
  notes.error(node, {
    code: empty ? 'empty-value' : 'wrong-kind',
    message: empty ? 'the value is missing' : `${wanted} must stand here, not ${kindWords[node.kind]}`,
    advice: `write ${wanted}`,
  });
  return undefined;
}

/** The same shape with its value carried on; `change` may refuse it by `notes.error` and undefined. */
export function refined<A, B>(
  shape: Shape<A>,
  change: (value: A, node: Node, notes: Notes) => B | undefined,
): Shape<B> {
  return {
    read(node, notes) {
      const value = shape.read(node, notes);
      return value === undefined ? undefined : change(value, node, notes);
    },
    jsonSchema: () => shape.jsonSchema(),
  };
}

export interface ByKind<A, B, C> {
  readonly text?: Shape<A>;
  readonly list?: Shape<B>;
  readonly map?: Shape<C>;
}

/** One shape for each kind of node: a short form as text, a long one as keys. */
export function byKind<A = never, B = never, C = never>(shapes: ByKind<A, B, C>, wanted: string): Shape<A | B | C> {
  return {
    read(node: TextNode | MapNode | Node, notes) {
      const shape: Shape<A | B | C> | undefined =
        node.kind === 'text' && node.text === '' ? undefined : shapes[node.kind];
      if (shape === undefined) wrongKind(node, wanted, notes);
      return shape?.read(node, notes);
    },
    jsonSchema: () => ({
      anyOf: [shapes.text, shapes.list, shapes.map].flatMap((s) => (s === undefined ? [] : [s.jsonSchema()])),
    }),
  };
}
