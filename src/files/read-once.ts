import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import { realDisk, type Disk } from './disk.ts';
import { recalled, remember, shelfOf, type Memory } from './remembered.ts';
import { answersAlike, watched, type Asked } from './watched-disk.ts';

/** What was read. */
export interface Reading<T> {
  readonly value: T;
  /** Of all that stands in the value; undefined where it was not remembered. */
  readonly sum?: string;
}

interface Remembered extends Required<Reading<unknown>> {
  readonly asked: readonly Asked[];
}

/**
 * What `read` makes of the disk that it is given, and of nothing else; remembered under `name`. Another time it is taken from
 * memory, if the disk then answers each question of the reading as it did: each file is the same to the last byte, each
 * folder holds the same names, what was missing still is. Else it is read anew.
 */
export async function readOnce<T>(
  memory: Memory | undefined,
  name: string,
  read: (disk: Disk) => Promise<T>,
  disk: Disk = realDisk,
): Promise<Reading<T>> {
  if (memory === undefined) return { value: await read(disk) };
  const shelf = shelfOf(memory, name);
  const before = recalled(disk, shelf) as Remembered | undefined;
  if (before !== undefined && answersAlike(disk, before.asked)) return { value: before.value as T, sum: before.sum };
  const watching = watched(disk);
  const value = await read(watching.disk);
  const asked = watching.asked();
  if (asked === undefined) return { value };
  const sum = createHash('sha256').update(serialize(value)).digest('base64');
  remember(disk, shelf, { asked, value, sum } satisfies Remembered);
  return { value, sum };
}

/**
 * What `work` makes of readings, and of nothing else; `from` are their sums. Another time it is taken from memory, if it was
 * made of readings with the same sums. What comes to nothing is not remembered.
 */
export async function workedOutOnce<T extends object>(
  memory: Memory | undefined,
  name: string,
  from: readonly (string | undefined)[],
  work: () => Promise<T | undefined>,
  disk: Disk = realDisk,
): Promise<T | undefined> {
  const sums = from.filter((sum) => sum !== undefined);
  if (memory === undefined || sums.length < from.length) return work();
  const shelf = shelfOf(memory, name, sums);
  const before = recalled(disk, shelf) as T | undefined;
  if (before !== undefined) return before;
  const made = await work();
  if (made !== undefined) remember(disk, shelf, made);
  return made;
}
