import type { Reader } from '../quantities/read.ts';
import type { MapEntry, TextNode } from '../yaml/tree.ts';
import { wrongKind, type Notes, type Shape } from './shape.ts';
import { quoted } from './text.ts';

const MOST_ITEMS = 2000;

/** A list; all its items are read before it fails. */
export function listOf<T>(item: Shape<T>, wanted: string): Shape<readonly T[]> {
  return {
    read(node, notes) {
      if (node.kind !== 'list') {
        wrongKind(node, `a list of ${wanted}`, notes);
        return undefined;
      }
      if (node.items.length > MOST_ITEMS) {
        notes.error(node, { code: 'too-long', message: `the list has more than ${MOST_ITEMS} items` });
        return undefined;
      }
      const values = node.items.map((n) => item.read(n, notes));
      const good = values.filter((v) => v !== undefined);
      return good.length === values.length ? good : undefined;
    },
    jsonSchema: () => ({ type: 'array', items: item.jsonSchema() }),
  };
}

/** A list, or one item alone. */
export function oneOrMany<T>(item: Shape<T>, wanted: string): Shape<readonly T[]> {
  const list = listOf(item, wanted);
  return {
    read(node, notes) {
      if (node.kind === 'list') return list.read(node, notes);
      const value = item.read(node, notes);
      return value === undefined ? undefined : [value];
    },
    jsonSchema: () => ({ anyOf: [item.jsonSchema(), list.jsonSchema()] }),
  };
}

/** An entry of a map whose keys the user chooses. */
export interface Named<K, T> {
  readonly key: K;
  readonly value: T;
}

function readKey<K>(key: TextNode, reader: Reader<K>, code: string, notes: Notes): K | undefined {
  const result = reader(key.text);
  if (result.ok) return result.value;
  notes.error(key, { code, message: `${quoted(key.text)} ${result.why}`, advice: result.write });
  return undefined;
}

/** A map whose keys the user chooses; its entries in the order of the file. */
export function namedBy<K, T>(
  keys: Reader<K>,
  value: Shape<T>,
  wanted: string,
  badKey = 'bad-id',
): Shape<readonly Named<K, T>[]> {
  const readEntry = (entry: MapEntry, notes: Notes): Named<K, T> | undefined => {
    const key = readKey(entry.key, keys, badKey, notes);
    const read = value.read(entry.value, notes);
    return key === undefined || read === undefined ? undefined : { key, value: read };
  };
  return {
    read(node, notes) {
      if (node.kind !== 'map') {
        wrongKind(node, `${wanted}, each with a name`, notes);
        return undefined;
      }
      if (node.entries.length > MOST_ITEMS) {
        notes.error(node, { code: 'too-long', message: `the map has more than ${MOST_ITEMS} keys` });
        return undefined;
      }
      const read = node.entries.map((entry) => readEntry(entry, notes));
      const good = read.filter((v) => v !== undefined);
      return good.length === read.length ? good : undefined;
    },
    jsonSchema: () => ({ type: 'object', additionalProperties: value.jsonSchema() }),
  };
}
