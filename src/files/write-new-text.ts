import { dirname, join } from 'node:path';
import { allOrNone } from './all-or-none.ts';
import type { Disk } from './disk.ts';
import { cannotWrite } from './file-trouble.ts';
import { ABSENT, replaceFile } from './safe-write.ts';

/**
 * Writes a file of a shop that is not there yet, and its folder where needed: all of it or nothing. `file` is made of an
 * id, never of a name.
 * @throws FileTrouble where there is one, or the disk refuses.
 */
export function writeNewText(disk: Disk, shopDir: string, file: string, text: string): void {
  const path = join(shopDir, file);
  allOrNone(disk, shopDir, [file], (noting) => {
    try {
      noting.makeFolder(dirname(path));
    } catch (error) {
      cannotWrite(file, error);
    }
    replaceFile(noting, path, text, ABSENT);
  });
}
