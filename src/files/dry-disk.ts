import { accessSync, constants } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { diskCode, O_APPEND, O_CREAT, O_EXCL, O_RDWR, O_WRONLY, type Disk, type DiskStat } from './disk.ts';
import { bytesOf } from './write-all.ts';

/** What would be at a path afterwards that was not there before, or what would be there no more. */
export type DryChange =
  /** A file; `before` absent: a new one; `after` absent: it is taken away. */
  | { readonly path: string; readonly before?: Uint8Array; readonly after?: Uint8Array }
  /** Something that is no file is given another name. */
  | { readonly path: string; readonly from: string };

/** A disk on which everything can be done, and nothing is. */
export interface DryDisk {
  readonly disk: Disk;
  /** What differs from the disk below, by path; folders that nothing stands in are left out. */
  readonly changes: () => readonly DryChange[];
}

type Held =
  | { readonly kind: 'file'; bytes: Buffer; mode: number }
  | { readonly kind: 'folder' }
  | { readonly kind: 'gone' }
  /** What is no file, under another name. */
  | { readonly kind: 'moved'; readonly from: string };

interface Opened {
  readonly held: Held;
  readonly appends: boolean;
  at: number;
}

const NEW_FOLDER_MODE = 0o755;

function fails(code: string, path: string): never {
  throw Object.assign(new Error(`${code}: ${path}`), { code });
}

/**
 * Lays a disk over another one that is only read: all that is written is held in memory, and read from there. It refuses what
 * the disk below would refuse for want of leave.
 */
export function dryDisk(below: Disk): DryDisk {
  const held = new Map<string, Held>();
  const opened = new Map<number, Opened>();
  let lastHandle = 0;

  const real = (path: string): string | undefined => {
    try {
      return below.realPath(path);
    } catch (error) {
      if (diskCode(error) === 'ENOENT' || diskCode(error) === 'ENOTDIR') return undefined;
      throw error;
    }
  };
  const realFolder = (path: string): string =>
    held.has(path) || dirname(path) === path ? path : (real(path) ?? join(realFolder(dirname(path)), basename(path)));
  /** One name for each place, with a link at the place itself not followed. */
  const placeOf = (path: string): string => {
    const full = resolve(path);
    return dirname(full) === full ? full : join(realFolder(dirname(full)), basename(full));
  };
  const followed = (path: string): string => {
    const place = placeOf(path);
    return held.has(place) ? place : (real(place) ?? place);
  };
  const statBelow = (place: string): DiskStat | undefined => {
    try {
      return below.statPath(place);
    } catch (error) {
      if (diskCode(error) === 'ENOENT') return undefined;
      throw error;
    }
  };
  const statOf = (place: string): DiskStat | undefined => {
    const own = held.get(place);
    if (own === undefined) return statBelow(place);
    if (own.kind === 'gone') return undefined;
    if (own.kind === 'moved') return below.statPath(own.from);
    const isFile = own.kind === 'file';
    const [bytes, mode] = isFile ? [own.bytes.length, own.mode] : [0, NEW_FOLDER_MODE];
    return { isFile, isFolder: !isFile, isOwn: true, bytes, mode, changedMs: Date.now() };
  };
  const there = (place: string): DiskStat => statOf(place) ?? fails('ENOENT', place);
  /** May what stands in the folder be changed? */
  const insistOnFolderOf = (place: string): void => {
    const folder = dirname(place);
    if (!there(folder).isFolder) fails('ENOTDIR', folder);
    if (!held.has(folder)) accessSync(folder, constants.W_OK);
  };
  const handleOf = (entry: Held, appends: boolean): number => {
    lastHandle -= 1;
    opened.set(lastHandle, { held: entry, appends, at: 0 });
    return lastHandle;
  };
  /** The file at a place, to be changed in memory. */
  const taken = (place: string): Held => {
    const own = held.get(place);
    if (own !== undefined) return own;
    const file: Held = { kind: 'file', bytes: bytesOf(below, place), mode: there(place).mode };
    held.set(place, file);
    return file;
  };
  const fileOf = (handle: number): Opened & { readonly held: Extract<Held, { kind: 'file' }> } => {
    const open = opened.get(handle);
    if (open?.held.kind !== 'file') return fails('EBADF', `${handle}`);
    return open as Opened & { readonly held: Extract<Held, { kind: 'file' }> };
  };
  const takeAway = (place: string): void => {
    if (statBelow(place) === undefined) held.delete(place);
    else held.set(place, { kind: 'gone' });
  };

  const open = (path: string, flags: number, mode = 0o666): number => {
    const place = (flags & O_EXCL) === 0 ? followed(path) : placeOf(path);
    const stat = statOf(place);
    if ((flags & (O_WRONLY | O_RDWR)) === 0) {
      const own = held.get(place);
      if (own === undefined) return below.open(path, flags, mode);
      if (stat === undefined) return fails('ENOENT', path);
      return own.kind === 'moved' ? below.open(own.from, flags, mode) : handleOf(own, false);
    }
    if (stat !== undefined) {
      if ((flags & O_EXCL) !== 0) return fails('EEXIST', path);
      if (!stat.isFile) return fails('EISDIR', path);
      if (!held.has(place)) accessSync(place, constants.W_OK);
      return handleOf(taken(place), (flags & O_APPEND) !== 0);
    }
    if ((flags & O_CREAT) === 0) return fails('ENOENT', path);
    insistOnFolderOf(place);
    const made: Held = { kind: 'file', bytes: Buffer.alloc(0), mode };
    held.set(place, made);
    return handleOf(made, (flags & O_APPEND) !== 0);
  };

  const rename = (from: string, to: string): void => {
    const [old, target] = [placeOf(from), placeOf(to)];
    const stat = there(old);
    insistOnFolderOf(old);
    insistOnFolderOf(target);
    const own = held.get(old);
    if (own?.kind === 'folder') return fails('EXDEV', from);
    const entry = own ?? (stat.isFile ? taken(old) : ({ kind: 'moved', from: old } as const));
    takeAway(old);
    held.set(target, entry);
  };

  const makeFolder = (path: string): void => {
    const place = followed(path);
    const stat = statOf(place);
    if (stat !== undefined) return stat.isFolder ? undefined : fails('EEXIST', path);
    makeFolder(dirname(place));
    insistOnFolderOf(place);
    held.set(place, { kind: 'folder' });
  };

  const list = (folder: string): string[] => {
    const place = followed(folder);
    if (held.get(place)?.kind === 'gone') return fails('ENOENT', folder);
    const names = new Set(held.has(place) ? [] : below.list(place));
    for (const [path, { kind }] of held) {
      if (dirname(path) !== place) continue;
      if (kind === 'gone') names.delete(basename(path));
      else names.add(basename(path));
    }
    return [...names];
  };

  const disk: Disk = {
    open,
    rename,
    makeFolder,
    list,
    stat: (handle) => {
      const file = opened.get(handle);
      if (file === undefined) return below.stat(handle);
      const isFile = file.held.kind === 'file';
      const [bytes, mode] = file.held.kind === 'file' ? [file.held.bytes.length, file.held.mode] : [0, NEW_FOLDER_MODE];
      return { isFile, isFolder: !isFile, isOwn: true, bytes, mode, changedMs: Date.now() };
    },
    statPath: (path) => there(placeOf(path)),
    read: (handle, into, offset) => {
      if (!opened.has(handle)) return below.read(handle, into, offset);
      const file = fileOf(handle);
      const count = file.held.bytes.copy(into, offset, file.at);
      file.at += count;
      return count;
    },
    write: (handle, bytes, offset) => {
      const file = fileOf(handle);
      const { held: entry } = file;
      const from = file.appends ? entry.bytes.length : file.at;
      const part = bytes.subarray(offset);
      entry.bytes = Buffer.concat([entry.bytes.subarray(0, from), part, entry.bytes.subarray(from + part.length)]);
      file.at = from + part.length;
      return part.length;
    },
    truncate: (handle, bytes) => {
      const { held: entry } = fileOf(handle);
      entry.bytes = Buffer.concat([entry.bytes.subarray(0, bytes)], bytes);
    },
    setMode: (handle, mode) => {
      fileOf(handle).held.mode = mode;
    },
    // Nothing here outlives the process.
    flush: () => undefined,
    close: (handle) => {
      if (!opened.delete(handle)) below.close(handle);
    },
    unlink: (path) => {
      const place = placeOf(path);
      if (there(place).isFolder) fails('EPERM', path);
      insistOnFolderOf(place);
      takeAway(place);
    },
    removeFolder: (path) => {
      const place = placeOf(path);
      if (!there(place).isFolder) fails('ENOTDIR', path);
      if (list(place).length > 0) fails('ENOTEMPTY', path);
      insistOnFolderOf(place);
      takeAway(place);
    },
    realPath: (path) => {
      const place = placeOf(path);
      const own = held.get(place);
      if (own === undefined) return below.realPath(path);
      return own.kind === 'gone' ? fails('ENOENT', path) : place;
    },
  };

  const changes = (): DryChange[] => {
    const movedAway = new Set([...held.values()].flatMap((entry) => (entry.kind === 'moved' ? [entry.from] : [])));
    const found = [...held].flatMap(([path, entry]): DryChange[] => {
      if (entry.kind === 'folder' || movedAway.has(path)) return [];
      if (entry.kind === 'moved') return [{ path, from: entry.from }];
      const before = statBelow(path)?.isFile === true ? bytesOf(below, path) : undefined;
      const after = entry.kind === 'file' ? entry.bytes : undefined;
      if (before === undefined ? after === undefined : after?.equals(before) === true) return [];
      return [{ path, ...(before && { before }), ...(after && { after }) }];
    });
    return found.sort((a, b) => (a.path < b.path ? -1 : 1));
  };

  return { disk, changes };
}
