import { dirname, join } from 'node:path';
import { allOrNone } from './all-or-none.ts';
import type { Disk } from './disk.ts';
import { cannotWrite } from './file-trouble.ts';
import { ABSENT, replaceFile } from './safe-write.ts';

/** Makes the folders that `file` of a shop is to stand in, where they are missing. @throws FileTrouble where the disk refuses. */
export function makeFolderFor(disk: Disk, shopDir: string, file: string): void {
  try {
    disk.makeFolder(dirname(join(shopDir, file)));
  } catch (error) {
    cannotWrite(file, error);
  }
}

/**
 * Writes a file of a shop that is not there yet, and its folder where needed: all of it or nothing. `file` is made of an
 * id, never of a name.
 * @throws FileTrouble where there is one, or the disk refuses.
 */
export function writeNewText(disk: Disk, shopDir: string, file: string, text: string): void {
  allOrNone(disk, shopDir, [file], (noting) => {
    makeFolderFor(noting, shopDir, file);
    replaceFile(noting, join(shopDir, file), text, ABSENT);
  });
}
