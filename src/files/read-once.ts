import { createHash } from 'node:crypto';
import { dirname, join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { diskCode, O_CREAT, O_EXCL, O_RDONLY, O_WRONLY, realDisk, type Disk } from './disk.ts';
import { answersAlike, watched, type Asked } from './watched-disk.ts';
import { withHandle, writeAll } from './write-all.ts';

/** A folder of the user's own in which what was read is remembered. */
export interface Memory {
  readonly folder: string;
  /** All but the files that a reading follows from: the program, its Node, the language. */
  readonly stamp: string;
}

/** So many readings are remembered; the oldest go first. */
const MOST_REMEMBERED = 40;
const SUM_BYTES = 32;
/** More than this is quicker read anew. */
const MOST_BYTES = 50_000_000;

/** What was read. */
export interface Reading<T> {
  readonly value: T;
  /** Of all that stands in the value; undefined where it was not remembered. */
  readonly sum?: string;
}

interface Remembered extends Required<Reading<unknown>> {
  readonly asked: readonly Asked[];
}

/** The file in which something is remembered, and the words that tell it from all else. */
interface Shelf {
  readonly file: string;
  readonly stamp: string;
}

/** One file for each name; `from` beside the name: what it must have been made from to be taken. */
function shelfOf(memory: Memory, name: string, from: readonly string[] = []): Shelf {
  return {
    file: join(memory.folder, createHash('sha256').update(name).digest('hex').slice(0, 32)),
    stamp: [memory.stamp, name, ...from].join(' '),
  };
}

/** Of what it was made by and from, and of the bytes: nothing is made of bytes that somebody else wrote or that are damaged. */
const sumOf = (stamp: string, bytes: Uint8Array) => createHash('sha256').update(`${stamp}\n`).update(bytes).digest();

function bytesAt(disk: Disk, path: string): Buffer | undefined {
  return withHandle(disk, disk.open(path, O_RDONLY), (handle) => {
    const { isFile, bytes } = disk.stat(handle);
    if (!isFile || bytes > MOST_BYTES) return undefined;
    const buffer = Buffer.alloc(bytes);
    for (let filled = 0; filled < bytes;) {
      const count = disk.read(handle, buffer, filled);
      if (count === 0) return undefined;
      filled += count;
    }
    return buffer;
  });
}

/** What stands there, as `remember` was given it; undefined for nothing that can be taken. */
function recalled(disk: Disk, { file, stamp }: Shelf): unknown {
  try {
    const bytes = bytesAt(disk, file);
    if (bytes === undefined) return undefined;
    const [sum, rest] = [bytes.subarray(0, SUM_BYTES), bytes.subarray(SUM_BYTES)];
    return sumOf(stamp, rest).equals(sum) ? (deserialize(rest) as unknown) : undefined;
  } catch (error) {
    if (diskCode(error) === '') throw error;
    return undefined;
  }
}

function forgetOldest(disk: Disk, folder: string): void {
  const names = disk.list(folder);
  if (names.length <= MOST_REMEMBERED) return;
  const aged = names.map((name) => ({ name, changedMs: disk.statPath(join(folder, name)).changedMs }));
  aged.sort((a, b) => a.changedMs - b.changedMs);
  for (const { name } of aged.slice(0, aged.length - MOST_REMEMBERED)) disk.unlink(join(folder, name));
}

/** Where it cannot be written, the answer is the same without; what was cut short is known by its sum. */
function remember(disk: Disk, { file, stamp }: Shelf, made: unknown): void {
  const bytes = serialize(made);
  if (bytes.length > MOST_BYTES) return;
  const draft = `${file}.${process.pid}.tmp`;
  try {
    disk.makeFolder(dirname(file));
    withHandle(disk, disk.open(draft, O_WRONLY | O_CREAT | O_EXCL, 0o600), (handle) => {
      writeAll(disk, handle, sumOf(stamp, bytes));
      writeAll(disk, handle, bytes);
    });
    disk.rename(draft, file);
    forgetOldest(disk, dirname(file));
  } catch (error) {
    if (diskCode(error) === '') throw error;
  }
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
