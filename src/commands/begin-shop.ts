import { join } from 'node:path';
import { allOrNone } from '../files/all-or-none.ts';
import type { Disk } from '../files/disk.ts';
import { SHOP_FILE } from '../files/shop-files.ts';
import { schemaFiles } from '../files/schema-files.ts';
import { makeFolderFor, writeNewText } from '../files/write-new-text.ts';
import { writeOwnFile } from './own-file.ts';

/** Stands in every schema that we write, and hardly in another file of that name. */
const schemaMark = 'json-schema.org';

/** @returns the names of the files written. */
export function writeSchemas(disk: Disk, folder: string, schemas = schemaFiles()): string[] {
  return schemas.map(({ file, text }) => {
    makeFolderFor(disk, folder, file);
    writeOwnFile(disk, join(folder, file), text, schemaMark);
    return file;
  });
}

/**
 * Writes all that a shop begins with, or nothing; shop.yaml comes last: before it, there is no shop.
 * @returns the names of the files.
 */
export function beginShop(disk: Disk, folder: string, text: string): string[] {
  const schemas = schemaFiles();
  const files = [SHOP_FILE, ...schemas.map(({ file }) => file)];
  allOrNone(disk, folder, files, (noting) => {
    writeSchemas(noting, folder, schemas);
    writeNewText(noting, folder, SHOP_FILE, text);
  });
  return files;
}
