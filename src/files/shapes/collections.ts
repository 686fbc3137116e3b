import * as z from 'zod/mini';
import type { Reader } from '../quantities/read.ts';
import { addKeyRemark } from './notes.ts';
import { quoted } from './quoted.ts';
import { shapeOf, type Shape } from './shape.ts';
import { plainWords } from './words.ts';
import { translated, worded } from '../../words/worded.ts';

/** A list; all its items are read before it fails. */
export function listOf<T>(item: Shape<T>, wanted: string): Shape<readonly T[]> {
  return shapeOf((settings) =>
    plainWords(z.array(item.schemaFor(settings)), { wanted: worded`a list of ${translated(wanted)}` }),
  );
}

/** A list, or one item alone. */
export function oneOrMany<T>(item: Shape<T>, wanted: string): Shape<readonly T[]> {
  const list = listOf(item, wanted);
  return shapeOf((settings) => {
    const one = z.pipe(
      item.schemaFor(settings),
      z.transform((value: T): readonly T[] => [value]),
    );
    return z.union([one, list.schemaFor(settings)]);
  });
}

/** An entry of a map whose keys the user chooses. */
export interface Named<K, T> {
  readonly key: K;
  readonly value: T;
}

/** A map whose keys the user chooses; its entries in the order of the file, those with whole numbers as keys first. */
export function namedBy<K, T>(
  keys: Reader<K>,
  value: Shape<T>,
  wanted: string,
  badKey = 'bad-id',
): Shape<readonly Named<K, T>[]> {
  return shapeOf((settings) => {
    const map = z.record(z.string(), value.schemaFor(settings)).check(
      // Also where values are wrong: all errors are found at once.
      z.check(
        (payload) => {
          for (const key of Object.keys(payload.value)) {
            const result = keys(key);
            if (result.ok) continue;
            const message = `${quoted(key)} ${result.why}`;
            addKeyRemark(payload, key, { code: badKey, message, advice: result.write });
          }
        },
        { when: ({ value }) => typeof value === 'object' && value !== null && !Array.isArray(value) },
      ),
    );
    return z.pipe(
      plainWords(map, { wanted: worded`${translated(wanted)}, each with a name` }),
      z.transform((entries: Readonly<Record<string, T>>): readonly Named<K, T>[] =>
        Object.entries(entries).flatMap(([key, read]) => {
          const name = keys(key);
          return name.ok ? [{ key: name.value, value: read }] : [];
        }),
      ),
    );
  });
}
