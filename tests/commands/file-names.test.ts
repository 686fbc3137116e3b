// Names of pieces become names of files: whatever a piece is called, its file lies among the pieces, under a name that
// every system takes (reserved names of devices: Windows documentation, "Naming Files, Paths, and Namespaces").
import { readdirSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { idFromName } from '../../src/commands/id-from-name.ts';
import { emptyFolder } from '../files/shop-folder.ts';
import fc from '../support/property.ts';
import { drybench } from './run-cli.ts';

const hostile = [
  '../../x',
  '/etc/passwd',
  'C:\\CON',
  'con',
  'CON.txt',
  'NUL',
  'aux',
  'prn',
  'com1',
  'LPT9',
  'x.',
  'x ',
  'a:stream',
  '.hidden',
  '-rf',
  '__proto__',
  'constructor',
  '\u202egnp',
  'e\u0301tage\u0301re',
  'ÉTAGÈRE',
  '漢字',
  '\0',
  '\ud800',
  '\n',
  'x'.repeat(10_000),
  '👩‍👩‍👧‍👦',
];
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

test('any name gives an id of plain letters, short, that no system keeps for itself', () => {
  const name = fc.oneof(fc.constantFrom(...hostile), fc.string({ unit: 'binary', maxLength: 60 }));
  fc.assert(
    fc.property(fc.array(name, { minLength: 1, maxLength: 3 }), (parts) => {
      const id = idFromName(parts.join(''), 'piece');
      expect(id).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
      expect(id.length).toBeLessThanOrEqual(40);
      expect(id).not.toMatch(reserved);
      expect(['__proto__', 'constructor', 'prototype']).not.toContain(id);
      const folder = resolve('/shop/pieces');
      expect(dirname(resolve(folder, `${id}.yaml`))).toBe(folder);
    }),
    { numRuns: 1000 },
  );
});

const chair = ['--kind', 'chair', '--size', '45 x 45 x 90', '--finish', 'painted-brushed', '--old-finish', 'clear'];
const intake = (folder: string, ...words: string[]) =>
  drybench(['intake', '--ask-nothing', ...chair, ...words, '--shop', join(folder, 'shop')]);

async function inNewShop(use: (folder: string) => Promise<void>): Promise<void> {
  const folder = emptyFolder();
  const made = await drybench(['setup', join(folder, 'shop'), '--zone', 'Europe/Dublin', '--ask-nothing']);
  expect(made).toMatchObject({ code: 0 });
  await use(folder);
}
const allIn = (folder: string) => readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();

test('a piece of any name lands among the pieces, or is refused and nothing is written', () =>
  inNewShop(async (folder) => {
    let taken = 0;
    for (const name of hostile) {
      const before = allIn(folder);
      const { code, err } = await intake(folder, `--name=${name}`);
      expect([name, code]).toEqual([name, code === 0 ? 0 : 2]);
      expect(err).not.toMatch(/^ {4}at /m);
      const added = allIn(folder).filter((file) => !before.includes(file) && file !== join('shop', 'pieces'));
      expect(added).toHaveLength(code === 0 ? 1 : 0);
      for (const file of added) {
        expect(file).toMatch(/^shop[\\/]pieces[\\/][a-z0-9-]{1,40}\.yaml$/);
        expect(basename(file, '.yaml')).not.toMatch(reserved);
        taken += 1;
      }
    }
    expect(taken).toBeGreaterThan(10);
    expect(await drybench(['check', '--shop', join(folder, 'shop')])).toMatchObject({ code: 0 });
  }));

test.each(['con', 'NUL', 'lpt1', '../x', 'a/b', '.x', 'x.', '__proto__'])('--id %j is refused', (id) =>
  inNewShop(async (folder) => {
    const before = allIn(folder);
    const { code, err } = await intake(folder, '--name', 'Chair', `--id=${id}`);
    expect([code, err]).toEqual([2, expect.stringContaining('--id')]);
    expect(allIn(folder)).toEqual(before);
    expect(await intake(folder, '--name', 'Chair', '--id=good-chair')).toMatchObject({ code: 0 });
  }),
);
