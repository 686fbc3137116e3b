import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { diskCode, O_CREAT, O_EXCL, O_RDONLY, O_WRONLY, type Disk } from './disk.ts';
import { cannotWrite, FileTrouble } from './file-trouble.ts';
import { patiently, sleep, withHandle, writeAll } from './write-all.ts';
import { worded } from '../words/worded.ts';

// Own rather than a package: those there are keep a lock alive by a timer, which a command that works without ever
// giving way cannot serve, and judge it stale by its age, which a laptop that slept makes wrong. Here a lock is stale
// only when its process is known to be gone.

export const LOCK_FILE = '.drybench.lock';
const TAKEOVER_FILE = '.drybench.lock.takeover';
const WAIT_MS = 5000;
/**
 * A lock whose holder died between making it and writing its name stays unreadable; a living one takes milliseconds.
 * Less than the wait, so that the next command outwaits a dead one.
 */
const UNREADABLE_MS = 2000;

interface Holder {
  readonly pid: number;
  readonly host: string;
  /** When the process started, as the system tells it; empty where it does not. Tells a reused pid apart. */
  readonly began: string;
  readonly since: string;
  readonly command: string;
}

function beganOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // Field 22, counted behind the name in brackets, which may itself hold anything.
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  } catch {
    return '';
  }
}

function isGone(holder: Holder): boolean {
  if (holder.host !== hostname()) return false;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    return diskCode(error) === 'ESRCH';
  }
  const began = beganOf(holder.pid);
  return began !== '' && holder.began !== '' && began !== holder.began;
}

function holderIn(text: string): Holder | undefined {
  try {
    const value = JSON.parse(text) as Partial<Holder> | null;
    const { pid, host, began, since, command } = value ?? {};
    if (typeof pid !== 'number' || !Number.isInteger(pid) || pid <= 0 || typeof host !== 'string') return undefined;
    return { pid, host, began: began ?? '', since: since ?? '', command: command ?? '' };
  } catch {
    return undefined;
  }
}

interface Found {
  readonly text: string;
  readonly ageMs: number;
}

/** What stands in a lock file; undefined where there is none. */
function look(disk: Disk, path: string): Found | undefined {
  try {
    const opened = patiently(() => disk.open(path, O_RDONLY));
    return withHandle(disk, opened, (handle) => {
      const bytes = new Uint8Array(4096);
      const count = disk.read(handle, bytes, 0);
      return {
        text: Buffer.from(bytes.subarray(0, count)).toString('utf8'),
        ageMs: Date.now() - disk.stat(handle).changedMs,
      };
    });
  } catch (error) {
    if (diskCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

function isStale(found: Found): boolean {
  const holder = holderIn(found.text);
  return holder === undefined ? found.ageMs > UNREADABLE_MS : isGone(holder);
}

function make(disk: Disk, path: string, text: string): boolean {
  let handle: number;
  try {
    handle = patiently(() => disk.open(path, O_WRONLY | O_CREAT | O_EXCL, 0o644));
  } catch (error) {
    if (diskCode(error) === 'EEXIST') return false;
    throw error;
  }
  try {
    withHandle(disk, handle, () => writeAll(disk, handle, Buffer.from(text, 'utf8')));
  } catch (error) {
    disk.unlink(path);
    throw error;
  }
  return true;
}

/**
 * Clears away a lock whose process is gone. Only the holder of a second lock may, and it looks again before it does:
 * else two commands that find the same dead lock could each remove the other's new one.
 */
function clearStale(disk: Disk, folder: string, own: string): void {
  const takeover = join(folder, TAKEOVER_FILE);
  if (!make(disk, takeover, own)) {
    const other = look(disk, takeover);
    if (other !== undefined && isStale(other)) disk.unlink(takeover);
    return;
  }
  try {
    const path = join(folder, LOCK_FILE);
    const found = look(disk, path);
    if (found !== undefined && isStale(found)) disk.unlink(path);
  } finally {
    disk.unlink(takeover);
  }
}

function inUse(found: Found | undefined): FileTrouble {
  const holder = found && holderIn(found.text);
  if (holder === undefined) return new FileTrouble('in-use', worded`the shop is in use by another command: try again`);
  const where = holder.host === hostname() ? '' : worded` on ${holder.host}`;
  const who = worded`"${holder.command}" (process ${holder.pid}${where}, since ${holder.since})`;
  const away = where === '' ? '' : worded`; if that is no longer running, remove ${LOCK_FILE} from the shop's folder`;
  return new FileTrouble('in-use', worded`the shop is in use by ${who}: try again${away}`);
}

/** What was done is done, whether the lock goes or not: where it stays, the next command finds its process gone. */
function release(disk: Disk, path: string, own: string): void {
  try {
    if (look(disk, path)?.text === own) patiently(() => disk.unlink(path));
  } catch (error) {
    if (diskCode(error) === '') throw error;
  }
}

export interface LockOptions {
  /** Milliseconds to wait for another command; 5000 if left out. */
  readonly waitMs?: number;
}

/**
 * Acts while no other command writes to the shop. A command that is killed leaves its lock, which the next one finds
 * to be dead and clears.
 * @throws FileTrouble `in-use` after waiting in vain.
 */
export function withLock<T>(disk: Disk, folder: string, command: string, act: () => T, options: LockOptions = {}): T {
  const path = join(folder, LOCK_FILE);
  const own = JSON.stringify({
    pid: process.pid,
    host: hostname(),
    began: beganOf(process.pid),
    since: new Date().toISOString(),
    command,
  } satisfies Holder);
  const until = Date.now() + (options.waitMs ?? WAIT_MS);
  try {
    while (!make(disk, path, own)) {
      const found = look(disk, path);
      if (found !== undefined && isStale(found)) clearStale(disk, folder, own);
      else if (Date.now() >= until) throw inUse(found);
      else if (found !== undefined) sleep(5 + Math.random() * 20);
    }
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    cannotWrite(LOCK_FILE, error);
  }
  try {
    return act();
  } finally {
    release(disk, path, own);
  }
}
