// What Windows does otherwise, on a disk that behaves so: nothing here has been tried on Windows itself.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { O_CREAT, realDisk, type Disk } from '../../src/files/disk.ts';
import { journalIn } from '../../src/files/journal/read.ts';
import { withLock } from '../../src/files/lock.ts';
import { rememberedIn } from '../../src/files/remembered.ts';
import { replaceFile, seen } from '../../src/files/safe-write.ts';
import { tokenFile } from '../../src/phone/token.ts';
import { journalLines } from './journal-lines.ts';
import { emptyFolder } from './shop-folder.ts';

const really = process.platform;
const asOn = (platform: NodeJS.Platform) => Object.defineProperty(process, 'platform', { value: platform });
afterEach(() => asOn(really));

function refuse(code: string): never {
  throw Object.assign(new Error(code), { code });
}

/** Folders cannot be opened, and what is to be renamed, opened anew or taken away is held by somebody else the first so many times. */
function windowsDisk(heldFor: number, code = 'EPERM'): Disk {
  const tries = { rename: 0, make: 0, unlink: 0 };
  const held = (what: keyof typeof tries) => {
    if (tries[what]++ < heldFor) refuse(code);
  };
  return {
    ...realDisk,
    open: (path, flags, mode) => {
      if ((flags & O_CREAT) !== 0 && path.endsWith('.lock')) held('make');
      if (flags === 0 && realDisk.statPath(path).isFolder) refuse('EISDIR');
      return realDisk.open(path, flags, mode);
    },
    rename: (from, to) => {
      held('rename');
      realDisk.rename(from, to);
    },
    unlink: (path) => {
      held('unlink');
      realDisk.unlink(path);
    },
  };
}

describe('on Windows', () => {
  beforeEach(() => asOn('win32'));

  it.each(['EPERM', 'EACCES', 'EBUSY'])('a file that is held for a moment is replaced all the same: %s', (code) => {
    const file = join(emptyFolder(), 'shop.yaml');
    writeFileSync(file, 'old');
    replaceFile(windowsDisk(2, code), file, 'new', seen(Buffer.from('old')));
    expect(readFileSync(file, 'utf8')).toBe('new');
  });

  it('one that is held for good stays as it was, and no other file is left', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'shop.yaml'), 'old');
    const disk = { ...windowsDisk(0), rename: () => refuse('EPERM') };
    expect(() => replaceFile(disk, join(folder, 'shop.yaml'), 'new', seen(Buffer.from('old')))).toThrow('shop.yaml');
    expect(readFileSync(join(folder, 'shop.yaml'), 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(['shop.yaml']);
  });

  it('a lock that goes away this moment is waited for, and one that is let go is gone', () => {
    const folder = emptyFolder();
    expect(withLock(windowsDisk(2), folder, 'done', () => readdirSync(folder))).toEqual(['.drybench.lock']);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('what is remembered, and the secret of the feed, stand in the folder of the user’s own', () => {
    const env = { LOCALAPPDATA: really === 'win32' ? 'C:\\Users\\Me\\Local' : '/Users/Me/Local' };
    expect(rememberedIn(env, 'code')).toBe(join(env.LOCALAPPDATA, 'drybench', 'code'));
    expect(tokenFile('C:\\shop', env).startsWith(join(env.LOCALAPPDATA, 'drybench'))).toBe(true);
  });
});

it('elsewhere what is refused is refused at once', () => {
  asOn('linux');
  const file = join(emptyFolder(), 'shop.yaml');
  writeFileSync(file, 'old');
  const disk = { ...realDisk, rename: () => refuse('EPERM') };
  expect(() => replaceFile(disk, file, 'new', seen(Buffer.from('old')))).toThrow('shop.yaml');
});

it('a journal to whose lines CRLF was put is the same journal, and a changed one is none the less found', () => {
  const at = Date.UTC(2027, 0, 11, 7, 30) / 60_000;
  const lines = journalLines(
    [
      { kind: 'skipped', task: 'a/b/c' },
      { kind: 'skipped', task: 'a/b/d' },
    ],
    at,
  );
  const [plain, crlf] = [lines.join(''), lines.join('').replaceAll('\n', '\r\n')];
  const read = journalIn(Buffer.from(crlf));
  expect(read.findings).toEqual([]);
  expect(read.entries).toEqual(journalIn(Buffer.from(plain)).entries);
  expect(read.soundBytes).toBe(crlf.length);
  expect(journalIn(Buffer.from(crlf.replace('a/b/c', 'a/b/x'))).findings.map((f) => f.code)).toEqual([
    'journal-damaged',
  ]);
});
