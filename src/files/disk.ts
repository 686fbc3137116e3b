import * as fs from 'node:fs';
import { dirname } from 'node:path';

export interface DiskStat {
  readonly isFile: boolean;
  readonly isFolder: boolean;
  /** It belongs to who runs the program, as far as the system tells. */
  readonly isOwn: boolean;
  readonly bytes: number;
  readonly mode: number;
  readonly changedMs: number;
}

/** Every call that reaches the disk goes through here, so that a test can make the n-th one fail. All throw as node:fs does. */
export interface Disk {
  open(path: string, flags: number, mode?: number): number;
  stat(handle: number): DiskStat;
  /** Of what stands at the path itself: a link is not followed. */
  statPath(path: string): DiskStat;
  /** Bytes read into `into` at `offset`; 0 at the end. */
  read(handle: number, into: Uint8Array, offset: number): number;
  /** Bytes written of `bytes` from `offset` on; may be fewer than there are. */
  write(handle: number, bytes: Uint8Array, offset: number): number;
  truncate(handle: number, bytes: number): void;
  setMode(handle: number, mode: number): void;
  flush(handle: number): void;
  close(handle: number): void;
  rename(from: string, to: string): void;
  unlink(path: string): void;
  makeFolder(path: string): void;
  /** Of an empty folder. */
  removeFolder(path: string): void;
  realPath(path: string): string;
  list(folder: string): string[];
}

/** One that is there already will do. */
function makeOne(path: string): void {
  try {
    fs.mkdirSync(path);
  } catch (error) {
    if (diskCode(error) !== 'EEXIST' || !fs.statSync(path).isDirectory()) throw error;
  }
}

/** With its parents. Node's own way to do so never ends where parents are there and still nothing can be made in them, as in /proc. */
function makeFolder(path: string): void {
  try {
    makeOne(path);
  } catch (error) {
    if (diskCode(error) !== 'ENOENT' || dirname(path) === path) throw error;
    makeFolder(dirname(path));
    makeOne(path);
  }
}

function plainStat(stat: fs.Stats): DiskStat {
  return {
    isFile: stat.isFile(),
    isFolder: stat.isDirectory(),
    isOwn: stat.uid === (process.geteuid?.() ?? stat.uid),
    bytes: stat.size,
    mode: stat.mode & 0o777,
    changedMs: stat.mtimeMs,
  };
}

export const realDisk: Disk = {
  open: (path, flags, mode) => fs.openSync(path, flags, mode),
  stat: (handle) => plainStat(fs.fstatSync(handle)),
  statPath: (path) => plainStat(fs.lstatSync(path)),
  read: (handle, into, offset) => fs.readSync(handle, into, offset, into.length - offset, null),
  write: (handle, bytes, offset) => fs.writeSync(handle, bytes, offset, bytes.length - offset, null),
  truncate: (handle, bytes) => fs.ftruncateSync(handle, bytes),
  setMode: (handle, mode) => fs.fchmodSync(handle, mode),
  flush: (handle) => fs.fsyncSync(handle),
  close: (handle) => fs.closeSync(handle),
  rename: (from, to) => fs.renameSync(from, to),
  unlink: (path) => fs.unlinkSync(path),
  makeFolder,
  removeFolder: (path) => fs.rmdirSync(path),
  realPath: (path) => fs.realpathSync(path),
  list: (folder) => fs.readdirSync(folder),
};

export const { O_RDONLY, O_WRONLY, O_RDWR, O_CREAT, O_EXCL, O_APPEND } = fs.constants;
/** Opening a pipe or a device with this never waits; not known on Windows. */
export const O_NONBLOCK: number = (fs.constants as Partial<typeof fs.constants>).O_NONBLOCK ?? 0;

/** `ENOENT` and the like of an error of the disk; empty for any other error. */
export function diskCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}
