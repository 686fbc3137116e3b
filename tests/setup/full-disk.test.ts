// A shop is begun as a whole, or not at all: where the disk fails at any call, all is as it was before.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { beginShop } from '../../src/commands/begin-shop.ts';
import { CannotGoOn } from '../../src/commands/call.ts';
import { realDisk } from '../../src/files/disk.ts';
import { FileTrouble } from '../../src/files/file-trouble.ts';
import { Crash, failingDisk, type Failure } from '../files/failing-disk.ts';
import { emptyFolder } from '../files/shop-folder.ts';

const text = 'name: Quay\n'.repeat(100);

/** What stands in a folder: names, and what the files hold. */
function allIn(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return Object.fromEntries(
    entries.map((e) => [
      join(e.parentPath, e.name),
      e.isFile() ? readFileSync(join(e.parentPath, e.name), 'utf8') : '',
    ]),
  );
}

/** Begins a shop with every call failing in turn, until none fails. @returns how many there were. */
function withEachCallFailing(failure: Failure, prepare: Prepare, look: Look): number {
  for (let n = 1; ; n += 1) {
    const parent = emptyFolder();
    const shop = prepare(parent);
    const before = allIn(parent);
    const { disk, failed } = failingDisk(n, failure);
    let error: unknown;
    try {
      beginShop(disk, shop, text);
    } catch (caught) {
      error = caught;
      expect([FileTrouble, CannotGoOn, Crash].some((kind) => caught instanceof kind)).toBe(true);
    }
    if (!failed()) {
      expect(readFileSync(join(shop, 'shop.yaml'), 'utf8')).toBe(text);
      return n;
    }
    look({ before, after: allIn(parent), error, shop });
  }
}
type Prepare = (parent: string) => string;
type Look = (seen: {
  before: Record<string, string>;
  after: Record<string, string>;
  error: unknown;
  shop: string;
}) => void;

const expectAsBefore: Look = ({ before, after, error }) => {
  // Where an error was of no account, the shop is begun all the same.
  if (error !== undefined) expect(after).toEqual(before);
};

const places = [
  ['that is not there yet', (parent: string) => join(parent, 'new')],
  ['that is not there yet, nor the one around it', (parent: string) => join(parent, 'shops', 'new')],
  ['that is empty', (parent: string) => parent],
  [
    'that holds something else',
    (parent: string) => {
      mkdirSync(join(parent, 'schemas'));
      writeFileSync(join(parent, 'schemas', 'mine.json'), '{}');
      writeFileSync(join(parent, 'notes.txt'), 'mine');
      return parent;
    },
  ],
] as const satisfies readonly (readonly [string, Prepare])[];

test.each(places)('a full disk at any call leaves a folder %s as it was', (_, prepare) => {
  const calls = withEachCallFailing('ENOSPC', prepare, expectAsBefore);
  expect(calls).toBeGreaterThan(50);
});

test.each<Failure>(['EIO', 'short-write'])('%s at any call leaves all as it was', (failure) => {
  withEachCallFailing(failure, places[0][1], expectAsBefore);
});

test('a process that dies at any call leaves no half of a file, and who begins anew has a shop', () => {
  withEachCallFailing('crash', places[0][1], ({ shop }) => {
    try {
      beginShop(realDisk, shop, text);
    } catch (error) {
      // It died when all was written.
      expect(error).toMatchObject({ kind: 'changed-on-disk' });
    }
    expect(readFileSync(join(shop, 'shop.yaml'), 'utf8')).toBe(text);
  });
});
