import { dirname, join } from 'node:path';
import { diskCode, type Disk } from './disk.ts';
import { cannotWrite } from './file-trouble.ts';
import { patiently } from './write-all.ts';

function isThere(disk: Disk, path: string): boolean {
  try {
    disk.statPath(path);
    return true;
  } catch (error) {
    const code = diskCode(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return false;
    cannotWrite(path, error);
  }
}

/** The folders around `path` that are not there yet, the innermost first. */
function missingAround(disk: Disk, path: string): string[] {
  const folder = dirname(path);
  return folder === path || isThere(disk, folder) ? [] : [folder, ...missingAround(disk, folder)];
}

function takeAway(act: () => void): void {
  try {
    act();
  } catch {
    // It was never made, or the disk refuses that, too; the error that led here says more.
  }
}

/**
 * Writes `files` of `folder` by `write`, all or none: where that fails, those of them that were not there and that it has put
 * there are taken away again, and so are the folders that were made for them, as long as nothing else stands there.
 * @param write writes by the disk that it is given.
 * @throws what `write` throws; FileTrouble where the disk refuses to tell what is there.
 */
export function allOrNone<T>(disk: Disk, folder: string, files: readonly string[], write: (disk: Disk) => T): T {
  const paths = files.map((file) => join(folder, file));
  const newFolders = [...new Set(paths.flatMap((path) => missingAround(disk, path)))].sort(
    (a, b) => b.length - a.length,
  );
  const newFiles = paths.filter((path) => newFolders.includes(dirname(path)) || !isThere(disk, path));
  // What another command puts there meanwhile is not ours to take away.
  const put: string[] = [];
  const noting: Disk = {
    ...disk,
    rename: (from, to) => {
      patiently(() => disk.rename(from, to));
      put.push(to);
    },
  };
  try {
    return write(noting);
  } catch (error) {
    for (const path of newFiles.filter((p) => put.includes(p))) takeAway(() => disk.unlink(path));
    for (const path of newFolders) takeAway(() => disk.removeFolder(path));
    throw error;
  }
}
