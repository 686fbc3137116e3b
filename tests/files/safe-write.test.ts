import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { realDisk, type Disk } from '../../src/files/disk.ts';
import { FileTrouble } from '../../src/files/file-trouble.ts';
import { ABSENT, replaceFile, seen } from '../../src/files/safe-write.ts';
import { writeNewText } from '../../src/files/write-new-text.ts';
import { Crash, failingDisk, type Failure } from './failing-disk.ts';
import { emptyFolder } from './shop-folder.ts';

const seenText = (text: string) => seen(Buffer.from(text));

function file(text: string): string {
  const path = join(emptyFolder(), 'x.yaml');
  writeFileSync(path, text);
  return path;
}

function troubleOf(act: () => void): string {
  try {
    act();
  } catch (error) {
    if (error instanceof FileTrouble) return error.kind;
    throw error;
  }
  return 'none';
}

test('a file is replaced, keeps its mode, and leaves nothing beside it', () => {
  const path = file('old');
  chmodSync(path, 0o640);
  replaceFile(realDisk, path, 'new', seenText('old'));
  expect(readFileSync(path, 'utf8')).toBe('new');
  expect(statSync(path).mode & 0o777).toBe(0o640);
  expect(readdirSync(join(path, '..'))).toEqual(['x.yaml']);
});

test('a link stays a link, and what it leads to is replaced', () => {
  const path = file('old');
  const link = join(emptyFolder(), 'link.yaml');
  symlinkSync(path, link);
  replaceFile(realDisk, link, 'new', seenText('old'));
  expect(lstatSync(link).isSymbolicLink()).toBe(true);
  expect(readFileSync(path, 'utf8')).toBe('new');
});

describe('nothing is written', () => {
  test('where someone else changed the file meanwhile', () => {
    const path = file('theirs');
    expect(troubleOf(() => replaceFile(realDisk, path, 'new', seenText('old')))).toBe('changed-on-disk');
    expect(readFileSync(path, 'utf8')).toBe('theirs');
    expect(readdirSync(join(path, '..'))).toEqual(['x.yaml']);
  });

  test('where a new file is there already', () => {
    const path = file('theirs');
    expect(troubleOf(() => replaceFile(realDisk, path, 'new', ABSENT))).toBe('changed-on-disk');
  });

  test('where the file was taken away meanwhile', () => {
    const path = join(emptyFolder(), 'gone.yaml');
    expect(troubleOf(() => replaceFile(realDisk, path, 'new', seenText('old')))).toBe('changed-on-disk');
    expect(existsSync(path)).toBe(false);
  });

  test('where a folder stands', () => {
    const path = join(emptyFolder(), 'x.yaml');
    mkdirSync(path);
    expect(troubleOf(() => replaceFile(realDisk, path, 'new', ABSENT))).toBe('cannot-write');
  });
});

test('what a crash left more than a day ago is swept, and nothing younger or of other names', () => {
  const path = file('old');
  const folder = join(path, '..');
  const names = ['.x.yaml.123.0a1b2c3d.tmp', '.x.yaml.124.0a1b2c3d.tmp', '.mine.tmp'];
  for (const name of names) writeFileSync(join(folder, name), '');
  const old = Date.now() / 1000 - 2 * 24 * 3600;
  utimesSync(join(folder, '.x.yaml.123.0a1b2c3d.tmp'), old, old);
  utimesSync(join(folder, '.mine.tmp'), old, old);
  replaceFile(realDisk, path, 'new', seenText('old'));
  expect(readdirSync(folder).sort()).toEqual(['.mine.tmp', '.x.yaml.124.0a1b2c3d.tmp', 'x.yaml']);
});

test.each<Failure>(['EIO', 'ENOSPC', 'short-write', 'crash'])(
  'with the n-th call failing by %s, for every n, the file is the old one or the new one as a whole',
  (failure) => {
    for (let n = 1; ; n += 1) {
      const path = file('old '.repeat(100));
      const { disk, failed } = failingDisk(n, failure);
      let done = false;
      try {
        replaceFile(disk, path, 'new '.repeat(100), seenText('old '.repeat(100)));
        done = true;
      } catch (error) {
        expect(error instanceof FileTrouble || error instanceof Crash).toBe(true);
      }
      const text = readFileSync(path, 'utf8');
      expect(['old '.repeat(100), 'new '.repeat(100)]).toContain(text);
      if (done) expect(text).toBe('new '.repeat(100));
      const left = readdirSync(join(path, '..')).filter((name) => name.endsWith('.tmp'));
      // After a crash a temporary file may stay for the sweep; after a failure of unlink itself as well.
      if (failure !== 'crash') expect(left.length).toBeLessThanOrEqual(1);
      if (!failed()) {
        expect(done).toBe(true);
        expect(n).toBeGreaterThan(10);
        return;
      }
    }
  },
);

test.each<Failure>(['EIO', 'ENOSPC', 'short-write'])(
  'a new file in a new folder: with the n-th call failing by %s, for every n, both are there or neither is',
  (failure) => {
    for (let n = 1; ; n += 1) {
      const shop = emptyFolder();
      writeFileSync(join(shop, 'shop.yaml'), 'mine');
      const { disk, failed } = failingDisk(n, failure);
      let trouble: unknown;
      try {
        writeNewText(disk, shop, 'pieces/chair.yaml', 'new '.repeat(100));
      } catch (error) {
        trouble = error;
        expect(error).toBeInstanceOf(FileTrouble);
      }
      const left = readdirSync(shop, { recursive: true, encoding: 'utf8' }).sort();
      if (trouble !== undefined) expect(left).toEqual(['shop.yaml']);
      else expect(readFileSync(join(shop, 'pieces/chair.yaml'), 'utf8')).toBe('new '.repeat(100));
      if (!failed()) {
        expect(n).toBeGreaterThan(10);
        return;
      }
    }
  },
);

test.each(['at once', 'as it fails'])('what someone else has written there meanwhile, %s, stays', (when) => {
  const shop = emptyFolder();
  const path = join(shop, 'pieces/chair.yaml');
  // Another command writes the same file while this one flushes its own.
  const disk: Disk = {
    ...realDisk,
    flush: (handle) => {
      realDisk.flush(handle);
      if (!existsSync(path)) writeFileSync(path, 'theirs');
      if (when === 'as it fails') throw Object.assign(new Error('full'), { code: 'ENOSPC' });
    },
  };
  expect(troubleOf(() => writeNewText(disk, shop, 'pieces/chair.yaml', 'mine'))).toBe(
    when === 'at once' ? 'changed-on-disk' : 'cannot-write',
  );
  expect(readFileSync(path, 'utf8')).toBe('theirs');
  expect(readdirSync(join(shop, 'pieces'))).toEqual(['chair.yaml']);
});
