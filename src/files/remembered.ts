import { createHash } from 'node:crypto';
import { dirname, isAbsolute, join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { diskCode, O_CREAT, O_EXCL, O_RDONLY, O_WRONLY, type Disk } from './disk.ts';
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

/** The user's own folder for what may be taken away at any time: the part of it that holds `part`; undefined where there is none. */
export function rememberedIn(env: Readonly<Record<string, string | undefined>>, part: string): string | undefined {
  const above =
    process.platform === 'win32'
      ? env['LOCALAPPDATA']
      : (env['XDG_CACHE_HOME'] ?? (env['HOME'] === undefined ? undefined : join(env['HOME'], '.cache')));
  return above !== undefined && isAbsolute(above) ? join(above, 'drybench', part) : undefined;
}

/** The file in which something is remembered, and the words that tell it from all else. */
export interface Shelf {
  readonly file: string;
  readonly stamp: string;
}

/** One file for each name; `from` beside the name: what it must have been made from to be taken. */
export function shelfOf(memory: Memory, name: string, from: readonly string[] = []): Shelf {
  return {
    file: join(memory.folder, createHash('sha256').update(name).digest('hex').slice(0, 32)),
    stamp: [memory.stamp, name, ...from].join(' '),
  };
}

/** Of what it was made by and from, and of the bytes: nothing is made of bytes that somebody else wrote or that are damaged. */
const sumOf = (stamp: string, bytes: Uint8Array) => createHash('sha256').update(`${stamp}\n`).update(bytes).digest();

function bytesAt(disk: Disk, path: string): Buffer | undefined {
  return withHandle(disk, disk.open(path, O_RDONLY), (handle) => {
    const { isFile, isOwn, bytes } = disk.stat(handle);
    // What somebody else could write is not even looked at: code is remembered, too.
    if (!isFile || !isOwn || bytes > MOST_BYTES) return undefined;
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
export function recalled(disk: Disk, { file, stamp }: Shelf): unknown {
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
export function remember(disk: Disk, { file, stamp }: Shelf, made: unknown): void {
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
