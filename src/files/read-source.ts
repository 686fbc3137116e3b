import { isUtf8 } from 'node:buffer';
import { join, sep } from 'node:path';
import type { Finding } from '../model/finding.ts';
import { diskCode, O_NONBLOCK, O_RDONLY, type Disk } from './disk.ts';
import { placeAt, type SourceText } from './source-text.ts';
import { worded } from '../words/worded.ts';

/** A folder that files are read from, and what findings call it: `` for the shop's own, `shipped/` for Drybench's. */
export interface Folder {
  readonly path: string;
  readonly label: string;
}

export type ReadSource =
  | { readonly ok: true; readonly source: SourceText }
  | { readonly ok: false; readonly finding: Finding; readonly missing: boolean };

export const YAML_CAP = 1_000_000;
export const CSV_CAP = 20_000_000;

const MB = 1_000_000;

function problem(file: string, code: string, message: string, advice?: string): ReadSource {
  const place = { file, line: 1, column: 1 };
  const finding: Finding = { code, severity: 'error', message, place, ...(advice !== undefined && { advice }) };
  return { ok: false, finding, missing: code === 'missing-file' };
}

function readAll(disk: Disk, handle: number, bytes: number, cap: number): Uint8Array | undefined {
  // One byte more than the file had: a file that grows meanwhile is read to its new end or refused.
  let buffer = new Uint8Array(bytes + 1);
  let filled = 0;
  for (;;) {
    const count = disk.read(handle, buffer, filled);
    if (count === 0) return buffer.subarray(0, filled);
    filled += count;
    if (filled > cap) return undefined;
    if (filled < buffer.length) continue;
    const larger = new Uint8Array(buffer.length * 2);
    larger.set(buffer);
    buffer = larger;
  }
}

/** Where the first byte stands that is not UTF-8: every replacement sign that the file does not itself hold is one. */
function firstBadByte(bytes: Uint8Array, text: string): { readonly byte: number; readonly offset: number } {
  let byte = 0;
  let from = 0;
  for (;;) {
    const offset = text.indexOf('\uFFFD', from);
    if (offset < 0) return { byte: bytes.length, offset: text.length };
    byte += Buffer.byteLength(text.slice(from, offset));
    const isOwn = bytes[byte] === 0xef && bytes[byte + 1] === 0xbf && bytes[byte + 2] === 0xbd;
    if (!isOwn) return { byte, offset };
    byte += 3;
    from = offset + 1;
  }
}

/** Bytes as text: UTF-8, a byte-order mark taken off. */
export function decodeSource(file: string, bytes: Uint8Array): ReadSource {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const text = buffer.toString('utf8');
  if (isUtf8(buffer)) return { ok: true, source: { file, text: text.startsWith('\uFEFF') ? text.slice(1) : text } };
  const bad = firstBadByte(bytes, text);
  const finding: Finding = {
    code: 'not-utf-8',
    severity: 'error',
    message: worded`byte ${bad.byte + 1} of the file is not UTF-8`,
    advice: worded`save the file as UTF-8`,
    place: placeAt({ file, text }, bad.offset),
  };
  return { ok: false, finding, missing: false };
}

/** The bytes of a regular file inside `folder`, of at most `cap` bytes. A link may not lead out of the folder. */
export function readBytes(
  disk: Disk,
  folder: Folder,
  name: string,
  cap: number,
): { readonly ok: true; readonly bytes: Uint8Array } | Extract<ReadSource, { ok: false }> {
  const file = folder.label + name;
  const fail = (code: string, message: string, advice?: string) =>
    problem(file, code, message, advice) as Extract<ReadSource, { ok: false }>;
  let handle: number | undefined;
  try {
    const real = disk.realPath(join(folder.path, name));
    const root = disk.realPath(folder.path);
    if (real !== root && !real.startsWith(root.endsWith(sep) ? root : root + sep))
      return fail(
        'link-out-of-shop',
        worded`this is a link that leads out of the shop`,
        worded`copy the file into the shop`,
      );
    handle = disk.open(real, O_RDONLY | O_NONBLOCK);
    const stat = disk.stat(handle);
    if (!stat.isFile) return fail('not-a-file', worded`this is not a regular file`);
    const tooBig = () =>
      fail('too-big', worded`the file is larger than ${cap / MB} MB`, worded`split it, or shorten it`);
    if (stat.bytes > cap) return tooBig();
    const bytes = readAll(disk, handle, stat.bytes, cap);
    return bytes === undefined ? tooBig() : { ok: true, bytes };
  } catch (error) {
    const code = diskCode(error);
    if (code === '') throw error;
    if (code === 'ENOENT' || code === 'ENOTDIR') return fail('missing-file', worded`there is no such file`);
    return fail('unreadable', worded`the file cannot be read (${code})`);
  } finally {
    if (handle !== undefined) disk.close(handle);
  }
}

/** The same as text: UTF-8, its byte-order mark taken off. */
export function readSource(disk: Disk, folder: Folder, name: string, cap: number): ReadSource {
  const read = readBytes(disk, folder, name, cap);
  return read.ok ? decodeSource(folder.label + name, read.bytes) : read;
}
