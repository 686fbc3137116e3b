import { createHash, randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { diskCode, O_CREAT, O_EXCL, O_WRONLY, type Disk } from './disk.ts';
import { cannotWrite, FileTrouble } from './file-trouble.ts';
import { bytesOf, flushFolder, patiently, withHandle, writeAll } from './write-all.ts';
import { worded } from '../words/worded.ts';

const NEW_FILE_MODE = 0o644;
const DAY_MS = 24 * 60 * 60 * 1000;

/** What a file held when it was read, to see whether it still does. `absent`: it was not there. */
export type Seen = string;
export const ABSENT: Seen = 'absent';

export function seen(bytes: Uint8Array): Seen {
  return createHash('sha256').update(bytes).digest('hex');
}

interface Target {
  /** Links resolved: a link stays a link. */
  readonly path: string;
  readonly exists: boolean;
  readonly mode: number;
}

function targetOf(disk: Disk, path: string): Target {
  try {
    const real = disk.realPath(path);
    const stat = disk.statPath(real);
    if (!stat.isFile) throw new FileTrouble('cannot-write', worded`${basename(path)} is not a regular file`);
    return { path: real, exists: true, mode: stat.mode };
  } catch (error) {
    if (diskCode(error) !== 'ENOENT') throw error;
    return { path, exists: false, mode: NEW_FILE_MODE };
  }
}

function checkUnchanged(disk: Disk, target: Target, expected: Seen): void {
  const now = target.exists ? seen(bytesOf(disk, target.path)) : ABSENT;
  if (now === expected) return;
  const name = basename(target.path);
  const what =
    expected === ABSENT ? worded`${name} is there already` : worded`${name} was changed by someone else meanwhile`;
  throw new FileTrouble('changed-on-disk', worded`${what}: nothing was written, try again`);
}

function unlinkIfThere(disk: Disk, path: string): void {
  try {
    disk.unlink(path);
  } catch {
    // It is left for the sweep; the error that led here says more.
  }
}

const TEMPORARY = /^\..{1,200}\.\d{1,10}\.[0-9a-f]{8}\.tmp$/;

/** Takes away what a crash left behind more than a day ago. */
function sweep(disk: Disk, folder: string, now: number): void {
  for (const name of disk.list(folder).filter((n) => TEMPORARY.test(n))) {
    const path = join(folder, name);
    try {
      if (disk.statPath(path).changedMs < now - DAY_MS) disk.unlink(path);
    } catch {
      // Another command swept it first.
    }
  }
}

/**
 * Replaces a file as a whole: whoever looks sees the old text or the new one, and after this returns the new one is on
 * the disk. `expected` is what the file held when it was read: where it holds something else now, nothing is written.
 * @throws FileTrouble, with the file as it was.
 */
export function replaceFile(disk: Disk, path: string, text: string, expected: Seen): void {
  const name = basename(path);
  let temporary: string | undefined;
  try {
    const target = targetOf(disk, path);
    const folder = dirname(target.path);
    sweep(disk, folder, Date.now());
    const made = join(folder, `.${basename(target.path)}.${process.pid}.${randomBytes(4).toString('hex')}.tmp`);
    const handle = disk.open(made, O_WRONLY | O_CREAT | O_EXCL, target.mode);
    temporary = made;
    withHandle(disk, handle, () => {
      writeAll(disk, handle, Buffer.from(text, 'utf8'));
      disk.setMode(handle, target.mode);
      disk.flush(handle);
    });
    checkUnchanged(disk, targetOf(disk, path), expected);
    patiently(() => disk.rename(made, target.path));
    temporary = undefined;
    flushFolder(disk, folder);
  } catch (error) {
    if (temporary !== undefined) unlinkIfThere(disk, temporary);
    if (error instanceof FileTrouble) throw error;
    cannotWrite(name, error);
  }
}
