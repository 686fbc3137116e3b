import { mkdirSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { O_APPEND, O_CREAT, O_EXCL, type Disk, type DiskStat } from '../../src/files/disk.ts';

/** The power goes here. */
export class PowerGone extends Error {}

interface Inode {
  readonly mode: number;
  /** As any process sees it, and as it was when it was last flushed. */
  now: Uint8Array;
  kept: Uint8Array;
}

interface Open {
  readonly inode: Inode | 'folder';
  readonly appends: boolean;
  at: number;
}

/** One change of the folder that was not flushed: it may or may not have reached the disk. */
type Change = (names: Map<string, Inode>) => void;

/** Chooses what of the unflushed reached the disk: `choose(n)` is one of 0 … n - 1. */
export type Choose = (count: number) => number;

export interface LosingPower {
  readonly disk: Disk;
  /** Did the power go? */
  readonly gone: () => boolean;
  /** Writes what the disk may hold after the power came back into a real folder. */
  readonly after: (folder: string, choose: Choose) => void;
}

const fail = (code: string): never => {
  throw Object.assign(new Error(code), { code });
};

/**
 * A disk of one folder, all in memory, that forgets at its `goneAt`-th call what was not flushed: of each file any part of
 * what was written behind it since, or blanks in its place, and of the folder any of the names made, given over and taken away since.
 */
export function losingPower(folder: string, files: Readonly<Record<string, Uint8Array>>, goneAt: number): LosingPower {
  const inodeOf = (bytes: Uint8Array): Inode => ({ mode: 0o644, now: bytes, kept: bytes });
  const names = new Map(Object.entries(files).map(([name, bytes]) => [name, inodeOf(bytes)]));
  let keptNames = new Map(names);
  let changes: Change[] = [];
  const open = new Map<number, Open>();
  let calls = 0;
  let handles = 0;

  const change = (make: Change): void => {
    make(names);
    changes.push(make);
  };
  const found = (path: string): Inode => names.get(basename(path)) ?? fail('ENOENT');
  const held = (handle: number): Open => open.get(handle) ?? fail('EBADF');
  const file = (handle: number): Inode => {
    const { inode } = held(handle);
    return inode === 'folder' ? fail('EISDIR') : inode;
  };
  const statOf = (inode: Inode): DiskStat => ({
    isFile: true,
    isFolder: false,
    isOwn: true,
    bytes: inode.now.length,
    mode: inode.mode,
    changedMs: Date.now(),
  });

  const calm: Disk = {
    open(path, flags, mode = 0o644) {
      const isFolder = path === folder;
      if (!isFolder && dirname(path) !== folder) fail('ENOENT');
      const there = names.get(basename(path));
      if (!isFolder && there !== undefined && (flags & O_EXCL) !== 0) fail('EEXIST');
      if (!isFolder && there === undefined) {
        if ((flags & O_CREAT) === 0) fail('ENOENT');
        const made: Inode = { mode, now: new Uint8Array(), kept: new Uint8Array() };
        change((all) => all.set(basename(path), made));
      }
      const inode = isFolder ? 'folder' : found(path);
      open.set((handles += 1), { inode, appends: (flags & O_APPEND) !== 0, at: 0 });
      return handles;
    },
    stat: (handle) => statOf(file(handle)),
    statPath: (path) => statOf(found(path)),
    read(handle, into, offset) {
      const state = held(handle);
      const bytes = file(handle).now.subarray(state.at, state.at + into.length - offset);
      into.set(bytes, offset);
      state.at += bytes.length;
      return bytes.length;
    },
    write(handle, bytes, offset) {
      const state = held(handle);
      const inode = file(handle);
      const at = state.appends ? inode.now.length : state.at;
      const more = bytes.subarray(offset);
      const whole = new Uint8Array(Math.max(inode.now.length, at + more.length));
      whole.set(inode.now);
      whole.set(more, at);
      inode.now = whole;
      state.at = at + more.length;
      return more.length;
    },
    truncate: (handle, bytes) => void (file(handle).now = file(handle).now.slice(0, bytes)),
    setMode: () => undefined,
    flush(handle) {
      const { inode } = held(handle);
      if (inode !== 'folder') inode.kept = inode.now;
      else {
        keptNames = new Map(names);
        changes = [];
      }
    },
    close: (handle) => void open.delete(handle),
    rename(from, to) {
      const inode = found(from);
      change((all) => {
        all.delete(basename(from));
        all.set(basename(to), inode);
      });
    },
    unlink(path) {
      found(path);
      change((all) => void all.delete(basename(path)));
    },
    makeFolder: () => undefined,
    removeFolder: () => undefined,
    realPath(path) {
      if (path !== folder) found(path);
      return path;
    },
    list: () => [...names.keys()],
  };

  const disk = Object.fromEntries(
    Object.entries(calm).map(([name, call]) => [
      name,
      (...args: unknown[]) => {
        if (calls < goneAt) calls += 1;
        if (calls >= goneAt) throw new PowerGone();
        return (call as (...all: unknown[]) => unknown)(...args);
      },
    ]),
  ) as unknown as Disk;

  return {
    disk,
    gone: () => calls >= goneAt,
    after(real, choose) {
      const left = new Map(keptNames);
      for (const make of changes) if (choose(2) === 1) make(left);
      mkdirSync(real, { recursive: true });
      for (const [name, inode] of left) writeFileSync(join(real, name), survived(inode, choose));
    },
  };
}

/** What was flushed, what was written, or what was flushed with a part of what was written behind it, or with blanks for it. */
function survived({ now, kept }: Inode, choose: Choose): Uint8Array {
  if (now === kept) return kept;
  if (now.length <= kept.length) return choose(2) === 1 ? now : kept;
  const until = kept.length + choose(now.length - kept.length + 1);
  const blanks = choose(2) === 1 ? new Uint8Array(now.length - until) : new Uint8Array();
  return Buffer.concat([now.subarray(0, until), blanks]);
}
