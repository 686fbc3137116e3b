import type { Read } from '../files/quantities/read.ts';
import { adviseWord } from '../files/suggest.ts';
import { CannotGoOn, type Call } from './call.ts';
import { worded } from '../words/worded.ts';

/** All values of an option that may be given several times. */
export function listFlag(call: Call, name: string): readonly string[] {
  const value = call.flags[name];
  return Array.isArray(value) ? value.filter((v): v is string => typeof v === 'string') : [];
}

/** `NAME=VALUE`, parted at the first equals sign. */
export function pairOf(
  option: string,
  written: string,
  example: string,
): { readonly name: string; readonly value: string } {
  const at = written.indexOf('=');
  if (at > 0 && at < written.length - 1)
    return { name: written.slice(0, at).trim(), value: written.slice(at + 1).trim() };
  throw new CannotGoOn(worded`${option} "${written}" is not NAME=VALUE`, worded`write it like ${option} ${example}`);
}

/** @throws CannotGoOn with what is wrong and what to write. */
export function valueOf<T>(option: string, written: string, read: Read<T>): T {
  if (read.ok) return read.value;
  throw new CannotGoOn(`${option} "${written}" ${read.why}`, read.write);
}

/** The thing of that id. */
export function knownId<T extends { readonly id: string }>(option: string, id: string, things: readonly T[]): T {
  const found = things.find((thing) => thing.id === id);
  if (found !== undefined) return found;
  throw new CannotGoOn(
    worded`${option}: there is no "${id}"`,
    adviseWord(
      id,
      things.map((thing) => thing.id),
    ),
  );
}
