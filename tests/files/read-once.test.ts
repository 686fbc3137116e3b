import { readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk, type Disk } from '../../src/files/disk.ts';
import { readBook } from '../../src/files/read-book.ts';
import { readOnce, workedOutOnce } from '../../src/files/read-once.ts';
import type { Memory } from '../../src/files/remembered.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import fc from '../support/property.ts';
import { Crash, failingDisk, type Failure } from './failing-disk.ts';
import { emptyFolder, fill, paintYaml, pieceYaml, recipeYaml, shopYaml, soundShop } from './shop-folder.ts';

const fresh = (shop: string, disk?: Disk) => {
  const { book, findings, recipeIds } = readBook(shop, { shippedDir: shippedDir(), ...(disk && { disk }) });
  return { ...(book && { book }), findings, recipeIds };
};

/** Reads by way of the memory, and counts how often the files were really read. */
function reader(shop: string, memory: Memory, disk?: Disk) {
  let count = 0;
  return {
    count: () => count,
    read: async (name = 'book') => {
      const read = (own: Disk) => {
        count += 1;
        return Promise.resolve(fresh(shop, own));
      };
      return (await readOnce(memory, name, read, disk)).value;
    },
  };
}

function shopAndMemory(): { readonly shop: string; readonly memory: Memory } {
  const shop = emptyFolder();
  fill(shop, { ...soundShop, 'air/out.csv': 'time,temp (°C),rh (%)\n2027-01-11T00:00,4,80\n2027-01-12T00:00,5,81\n' });
  return { shop, memory: { folder: join(emptyFolder(), 'read'), stamp: 'this build' } };
}

const remembered = ({ folder }: Memory) => readdirSync(folder).map((name) => join(folder, name));

// What may happen to a shop between two looks: each changes a file, a name, a link, or nothing.
const texts: Readonly<Record<string, readonly string[]>> = {
  'shop.yaml': [shopYaml, shopYaml.replace('20 °C', '21 °C'), shopYaml.replace('owner:', 'other:'), 'name: ['],
  'pieces/chair.yaml': [pieceYaml, pieceYaml.replace('1 m2', '2 m2'), pieceYaml.replace('one-coat', 'no-such')],
  'pieces/stool.yaml': [pieceYaml.replace('Chair', 'Stool')],
  'pieces/Odd Name.yaml': [pieceYaml],
  'recipes/one-coat.yaml': [recipeYaml, recipeYaml.replace('20 min', '25 min')],
  'materials/test-paint.yaml': [paintYaml, paintYaml.replace('4 h', '5 h'), paintYaml.replace('14 d', '14')],
  'journal.jsonl': ['', 'x'],
};
const changes = fc.constantFrom(
  ...Object.entries(texts).flatMap(([file, all]) => [
    ...all.map((text) => (shop: string) => {
      rmSync(join(shop, file), { force: true });
      fill(shop, { [file]: text });
    }),
    (shop: string) => {
      rmSync(join(shop, file), { force: true });
    },
    (shop: string) => {
      rmSync(join(shop, file), { force: true });
      symlinkSync('/etc/hostname', join(shop, file));
    },
  ]),
  () => undefined,
);

/** Has a file spoilt in one bit, or cut, again and again, and each time `holds`. */
async function eachDamage(file: string, holds: () => Promise<void>): Promise<void> {
  const sound = readFileSync(file);
  await fc.assert(
    fc.asyncProperty(fc.nat(8 * sound.length - 1), fc.boolean(), async (bit, cut) => {
      const spoilt = Buffer.from(sound);
      spoilt[bit >> 3] = (spoilt[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      writeFileSync(file, cut ? sound.subarray(0, bit >> 3) : spoilt);
      await holds();
    }),
    { numRuns: 60 },
  );
}

describe('what was read before', () => {
  it('is just what the files say now, whatever happened to them meanwhile', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(changes, { minLength: 1, maxLength: 8 }), async (happens) => {
        const { shop, memory } = shopAndMemory();
        const { read } = reader(shop, memory);
        expect(await read()).toEqual(fresh(shop));
        for (const happen of happens) {
          happen(shop);
          const expected = fresh(shop);
          expect(await read()).toEqual(expected);
          expect(await read()).toEqual(expected);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is taken without reading while all is the same', async () => {
    const { shop, memory } = shopAndMemory();
    const { read, count } = reader(shop, memory);
    const first = await read();
    expect(first.book?.shop.name).toBe('Test shop');
    expect(await read()).toEqual(first);
    expect(count()).toBe(1);
    writeFileSync(join(shop, 'pieces/chair.yaml'), `${pieceYaml}\n`);
    await read();
    expect(count()).toBe(2);
  });

  it('is not taken by another build, in another language or under another name', async () => {
    const { shop, memory } = shopAndMemory();
    await reader(shop, memory).read();
    const other = reader(shop, { ...memory, stamp: 'that build' });
    await other.read();
    expect(other.count()).toBe(1);
    const named = reader(shop, { ...memory, stamp: 'that build' });
    await named.read('other');
    expect(named.count()).toBe(1);
  });

  it('is not taken where any bit of it is damaged, or some of it is missing', async () => {
    const { shop, memory } = shopAndMemory();
    const expected = await reader(shop, memory).read();
    const [file = ''] = remembered(memory);
    await eachDamage(file, async () => {
      const { read, count } = reader(shop, memory);
      expect(await read()).toEqual(expected);
      expect(count()).toBe(1);
    });
  });

  it('is not taken where it belongs to somebody else', async () => {
    const { shop, memory } = shopAndMemory();
    const expected = await reader(shop, memory).read();
    const elses: Disk = { ...realDisk, stat: (handle) => ({ ...realDisk.stat(handle), isOwn: false }) };
    const { read, count } = reader(shop, memory, elses);
    expect(await read()).toEqual(expected);
    expect(count()).toBe(1);
  });

  it('is not remembered where a file was changed while it was read', async () => {
    const { shop, memory } = shopAndMemory();
    const path = join(shop, 'shop.yaml');
    let times = 0;
    const changing = () =>
      readOnce(memory, 'twice', (disk) => {
        times += 1;
        const read = () => fresh(shop, disk).book?.shop.name;
        const before = read();
        writeFileSync(path, shopYaml.replace('Test shop', 'Renamed'));
        return Promise.resolve([before, read()]);
      });
    // Nothing may be worked out once for all from what was read while it changed: it has no sum.
    expect(await changing()).toEqual({ value: ['Test shop', 'Renamed'] });
    expect((await changing()).value).toEqual(['Renamed', 'Renamed']);
    expect(times).toBe(2);
  });

  it('is read anew where nothing can be remembered, and says nothing of it', async () => {
    for (const failure of ['EIO', 'ENOSPC', 'short-write'] satisfies Failure[])
      for (let failAt = 1; ; failAt += 1) {
        const { shop, memory } = shopAndMemory();
        const failing = failingDisk(failAt, failure);
        const expected = fresh(shop);
        const read = () => readOnce(memory, 'book', () => Promise.resolve(fresh(shop)), failing.disk);
        expect((await read()).value).toEqual(expected);
        expect((await read()).value).toEqual(expected);
        if (!failing.failed()) break;
      }
  });

  it('is whole or not there after a crash', async () => {
    for (let failAt = 1; ; failAt += 1) {
      const { shop, memory } = shopAndMemory();
      const failing = failingDisk(failAt, 'crash');
      const read = readOnce(memory, 'book', () => Promise.resolve(fresh(shop)), failing.disk);
      const crashed = await read.then(
        () => false,
        (error: unknown) => error instanceof Crash,
      );
      const { read: again } = reader(shop, memory);
      expect(await again()).toEqual(fresh(shop));
      if (!crashed) break;
    }
  });

  it('is forgotten in time: so many readings are kept and no more', async () => {
    const { shop, memory } = shopAndMemory();
    const { read } = reader(shop, memory);
    for (let k = 0; k < 50; k += 1) await read(`book ${k}`);
    expect(remembered(memory)).toHaveLength(40);
  });
});

/** Works out how long a shop's name is by way of the memory, and counts how often that was really done. */
function worker(shop: string, memory: Memory, disk?: Disk) {
  let count = 0;
  return {
    count: () => count,
    work: async (comesTo: 'something' | 'nothing' = 'something') => {
      const { value, sum } = await readOnce(memory, 'book', (own) => Promise.resolve(fresh(shop, own)));
      const name = value.book?.shop.name;
      const work = () => {
        count += 1;
        return Promise.resolve(comesTo === 'nothing' ? undefined : { name, letters: name?.length });
      };
      return workedOutOnce(memory, 'letters', [sum], work, disk);
    },
  };
}

describe('what was worked out before', () => {
  it('is just what would be worked out now, whatever happened to the files meanwhile', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(changes, { minLength: 1, maxLength: 8 }), async (happens) => {
        const { shop, memory } = shopAndMemory();
        for (const happen of [() => undefined, ...happens]) {
          happen(shop);
          const name = fresh(shop).book?.shop.name;
          const expected = { name, letters: name?.length };
          expect(await worker(shop, memory).work()).toEqual(expected);
          const again = worker(shop, memory);
          expect(await again.work()).toEqual(expected);
          expect(again.count()).toBe(0);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is worked out anew after any change of what was read, by another build, and where it was not remembered', async () => {
    const { shop, memory } = shopAndMemory();
    await worker(shop, memory).work();
    for (const [file, texts] of Object.entries({ 'shop.yaml': shopYaml, 'pieces/chair.yaml': pieceYaml })) {
      writeFileSync(join(shop, file), texts.replace('20 °C', '21 °C').replace('1 m2', '2 m2'));
      const { work, count } = worker(shop, memory);
      await work();
      await work();
      expect(count()).toBe(1);
    }
    const other = worker(shop, { ...memory, stamp: 'that build' });
    await other.work();
    expect(other.count()).toBe(1);
    let count = 0;
    const unknown = () => workedOutOnce(memory, 'letters', [undefined], () => Promise.resolve({ count: (count += 1) }));
    expect([await unknown(), await unknown()]).toEqual([{ count: 1 }, { count: 2 }]);
  });

  it('is worked out each time where it comes to nothing', async () => {
    const { shop, memory } = shopAndMemory();
    const { work, count } = worker(shop, memory);
    expect([await work('nothing'), await work('nothing')]).toEqual([undefined, undefined]);
    expect(count()).toBe(2);
  });

  it('is not taken where any bit of it is damaged, or some of it is missing', async () => {
    const { shop, memory } = shopAndMemory();
    await reader(shop, memory).read();
    const readings = new Set(remembered(memory));
    const expected = await worker(shop, memory).work();
    const [file = ''] = remembered(memory).filter((name) => !readings.has(name));
    await eachDamage(file, async () => {
      const { work, count } = worker(shop, memory);
      expect(await work()).toEqual(expected);
      expect(count()).toBe(1);
    });
  });
});
