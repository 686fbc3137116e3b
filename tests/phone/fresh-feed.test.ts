import { mkdir, mkdtemp, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { feedOf, type Feed } from '../../src/phone/feed.ts';
import { freshFeed } from '../../src/phone/fresh-feed.ts';
import { stampOfShop } from '../../src/phone/stamp.ts';
import { tokenFile, tokenIn } from '../../src/phone/token.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'drybench-phone-'));
});
afterEach(() => rm(folder, { recursive: true }));

describe('the feed follows the files of the shop', () => {
  const first = feedOf('first', 0);

  test('is made anew once a change, and once for all who ask meanwhile', async () => {
    let stamp = 'a';
    let built = 0;
    const build = () => Promise.resolve(feedOf(`built ${(built += 1)}`, 0));
    const feed = freshFeed({ stamp: () => Promise.resolve(stamp), build, onBroken: () => undefined }, first, 'a');
    expect(await feed()).toBe(first);
    stamp = 'b';
    const both = await Promise.all([feed(), feed()]);
    expect(both.map((f) => f.bytes.toString())).toEqual(['built 1', 'built 1']);
    expect((await feed()).bytes.toString()).toBe('built 1');
  });

  test('keeps the last good one while the files are wrong, says so once, and goes on when they are mended', async () => {
    let stamp = 'a';
    const said: unknown[] = [];
    const build = (): Promise<Feed> =>
      stamp === 'broken' ? Promise.reject(new Error('shop.yaml:3:1')) : Promise.resolve(feedOf('mended', 0));
    const feed = freshFeed({ stamp: () => Promise.resolve(stamp), build, onBroken: (e) => said.push(e) }, first, 'a');
    stamp = 'broken';
    expect([await feed(), await feed()]).toEqual([first, first]);
    expect(said).toEqual([new Error('shop.yaml:3:1')]);
    stamp = 'c';
    expect((await feed()).bytes.toString()).toBe('mended');
  });
});

describe('the stamp of a shop', () => {
  test('changes with a file written, touched, added, removed or put in its place, and not by itself', async () => {
    await mkdir(join(folder, 'pieces'));
    await writeFile(join(folder, 'shop.yaml'), 'name: a');
    await writeFile(join(folder, 'pieces/a.yaml'), 'name: a');
    const seen = [await stampOfShop(folder)];
    const look = async () => seen.push(await stampOfShop(folder));
    await writeFile(join(folder, 'calendar.json'), '{}');
    await look();
    expect(new Set(seen).size).toBe(1);
    await writeFile(join(folder, 'shop.yaml'), 'name: ab');
    await look();
    const { atime, mtime } = await stat(join(folder, 'shop.yaml'));
    await utimes(join(folder, 'shop.yaml'), atime, new Date(mtime.getTime() + 1_000));
    await look();
    await writeFile(join(folder, 'pieces/b.yaml'), 'name: b');
    await look();
    await rm(join(folder, 'pieces/b.yaml'));
    await look();
    await writeFile(join(folder, 'new'), 'name: c');
    await utimes(join(folder, 'new'), atime, new Date(mtime.getTime() + 1_000));
    await rename(join(folder, 'new'), join(folder, 'pieces/a.yaml'));
    await look();
    expect(new Set(seen).size).toBe(6);
  });
});

describe('the secret of the feed', () => {
  test('has 128 bits, stays, is readable by its owner alone, and is changed on demand', async () => {
    const file = tokenFile('/srv/shop', { XDG_STATE_HOME: folder });
    const token = await tokenIn(file, false);
    expect(Buffer.from(token, 'base64url')).toHaveLength(16);
    expect(await tokenIn(file, false)).toBe(token);
    if (process.platform !== 'win32') expect((await stat(file)).mode & 0o777).toBe(0o600);
    expect(await tokenIn(file, true)).not.toBe(token);
    await writeFile(file, '../../etc/passwd');
    expect(await tokenIn(file, false)).toMatch(/^[\w-]{22}$/);
  });

  test('stands outside of the shop, and each shop has its own', () => {
    const env = { XDG_STATE_HOME: folder };
    expect(tokenFile('/srv/shop', env).startsWith(folder)).toBe(true);
    expect(tokenFile('/srv/shop', env)).not.toBe(tokenFile('/srv/other', env));
    expect(tokenFile('/srv/shop', { XDG_STATE_HOME: 'relative' })).not.toContain('relative');
  });
});
