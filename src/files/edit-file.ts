import { join } from 'node:path';
import type { Finding } from '../model/finding.ts';
import { realDisk, type Disk } from './disk.ts';
import { editYaml, type Edit } from './edit-yaml.ts';
import { decodeSource, readBytes, YAML_CAP } from './read-source.ts';
import { replaceFile, seen } from './safe-write.ts';
import { writeNewText } from './write-new-text.ts';
import type { Plain } from './yaml/tree.ts';
import { yamlLines } from './yaml/write.ts';
import { worded } from '../words/worded.ts';

const BYTE_ORDER_MARK = '\uFEFF';

export type FileEdited =
  | { readonly ok: true }
  /** Nothing was written. */
  | { readonly ok: false; readonly finding: Finding };

/**
 * Makes changes in a YAML file of the shop, one after the other; all of them or none. Comments and order stay. Call it
 * under the shop's lock.
 * @throws FileTrouble where the file was changed meanwhile or the disk refuses.
 */
export function editFile(shopDir: string, file: string, edits: readonly Edit[], disk: Disk = realDisk): FileEdited {
  const read = readBytes(disk, { path: shopDir, label: '' }, file, YAML_CAP);
  if (!read.ok) return read;
  const decoded = decodeSource(file, read.bytes);
  if (!decoded.ok) return decoded;
  let { source } = decoded;
  for (const edit of edits) {
    const edited = editYaml(source, edit);
    if (!edited.ok) {
      const advice = worded`change ${edit.path.join(' › ')} by hand`;
      const place = { file, line: 1, column: 1 };
      return { ok: false, finding: { code: 'cannot-edit', severity: 'error', message: edited.why, advice, place } };
    }
    source = { file, text: edited.text };
  }
  const hasMark = read.bytes[0] === 0xef && read.bytes[1] === 0xbb && read.bytes[2] === 0xbf;
  replaceFile(disk, join(shopDir, file), (hasMark ? BYTE_ORDER_MARK : '') + source.text, seen(read.bytes));
  return { ok: true };
}

/** Writes data as a YAML file that is not there yet; see `writeNewText`. */
export function writeNewFile(shopDir: string, file: string, data: Plain, disk: Disk = realDisk): void {
  writeNewText(disk, shopDir, file, `${yamlLines(data).join('\n')}\n`);
}
