import type * as z from 'zod/mini';
import { childOf, type Node } from '../yaml/tree.ts';
import { wordsOf } from './words.ts';

export type AnySchema = z.core.$ZodType;

/** A node and the schema that it is read by. */
export interface Spot {
  readonly node: Node;
  readonly schema: AnySchema;
}

const kindOfType: Readonly<Record<string, Node['kind']>> = {
  string: 'text',
  enum: 'text',
  array: 'list',
  object: 'map',
  record: 'map',
};

function defOf(schema: AnySchema): z.core.$ZodTypes['_zod']['def'] {
  return (schema as z.core.$ZodTypes)._zod.def;
}

/** The schema that looks at the data first, out of what only carries its value on. */
export function unwrapped(schema: AnySchema): z.core.$ZodTypes['_zod']['def'] & { readonly type: string } {
  const def = defOf(schema);
  if (def.type === 'pipe') return unwrapped(def.in);
  if (def.type === 'optional') return unwrapped(def.innerType);
  return def.type === 'lazy' ? unwrapped(def.getter()) : def;
}

/** Words of the schema, or of the one inside that looks at the data. */
export function innerWords(schema: AnySchema): ReturnType<typeof wordsOf> {
  const def = defOf(schema);
  const own = wordsOf(schema);
  if (def.type === 'pipe') return { ...innerWords(def.in), ...own };
  if (def.type === 'optional') return { ...innerWords(def.innerType), ...own };
  return def.type === 'lazy' ? { ...innerWords(def.getter()), ...own } : own;
}

function leadsIn(node: Node, option: AnySchema): boolean {
  const def = unwrapped(option);
  const [leading] = def.type === 'object' ? Object.keys(def.shape) : [];
  return leading !== undefined && childOf(node, leading) !== undefined;
}

function takes(schema: AnySchema, kind: Node['kind']): boolean {
  const def = unwrapped(schema);
  return def.type === 'union' ? def.options.some((option) => takes(option, kind)) : kindOfType[def.type] === kind;
}

/** The one of several forms that a node is meant to have, by its kind, and by its keys where that is not enough. */
export function optionFor(node: Node, options: readonly AnySchema[]): number | undefined {
  const fitting = options.flatMap((option, index) => (takes(option, node.kind) ? [index] : []));
  if (fitting.length < 2) return fitting[0];
  return fitting.find((index) => {
    const option = options[index];
    return option !== undefined && leadsIn(node, option);
  });
}

/** The schema of one value inside, as the node has it. */
export function childSchema({ node, schema }: Spot, key: string | number): AnySchema | undefined {
  const def = unwrapped(schema);
  if (def.type === 'object') return def.shape[key];
  if (def.type === 'array') return def.element;
  if (def.type === 'record') return def.valueType;
  if (def.type !== 'union') return undefined;
  const option = def.options[optionFor(node, def.options) ?? -1];
  return option && childSchema({ node, schema: option }, key);
}
