// The questions as a person at a terminal meets them.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { drybench } from '../commands/run-cli.ts';
import { inEmptyShop, shopText } from './shop.ts';
import { typedTable } from './typed.ts';

const shop = shopText('metric', 'EUR');
const asked = (folder: string, lines: readonly string[], ...more: string[]) =>
  drybench(['intake', '--shop', folder, '--at', '2027-01-11T07:30', '--plain', ...more], {
    isTTY: true,
    typed: lines.map((line) => `${line}\n`).join(''),
  });

it('all answers become a piece', () =>
  inEmptyShop(shop, async (folder) => {
    const { code, out, err } = await asked(folder, typedTable);
    expect([code, out]).toEqual([0, expect.stringContaining('Written: pieces/oak-hall-table.yaml')]);
    expect(err).toContain('top: 110 cm x 40 cm = 0.44 m²');
    const { book, findings } = readBook(folder, { shippedDir: shippedDir() });
    expect(findings).toEqual([]);
    expect(book!.pieces).toMatchObject([
      {
        id: 'oak-hall-table',
        name: 'Oak hall table',
        kind: 'table',
        priceMinor: 32_050,
        costMinor: 6000,
        mayCarryLead: true,
        leadTest: { minute: Date.UTC(2027, 0, 5) / 60_000, found: false },
        whole: 'whole-piece',
        sections: [
          { id: 'top', recipe: 'hardwax-oil', items: 1 },
          {
            id: 'base',
            recipe: 'painted-brushed',
            areaM2: 0.8,
            items: 4,
            with: [
              { part: 'reglue-joints' },
              { part: 'fill-gouges' },
              { part: 'fill-grain' },
              { part: 'block-stains' },
            ],
          },
          { id: 'drawer-boxes', recipe: 'drawers', items: 1 },
          { id: 'hardware', recipe: 'metal-hardware', items: 2 },
        ],
      },
    ]);
    const text = readFileSync(join(folder, 'pieces/oak-hall-table.yaml'), 'utf8');
    const explained = text.split('\n').filter((line) => /^\w[\w-]*:/.test(line) && line !== 'sections:');
    expect(explained.length).toBeGreaterThanOrEqual(8);
    for (const line of explained) expect(line).toMatch(/ # \S/);
  }));

it('a wrong answer is asked again, with what to write', () =>
  inEmptyShop(shop, async (folder) => {
    const [name = '', id = '', kind = '', size = '', ...rest] = typedTable;
    const wrong = ['', name, 'No Id', id, 'sofa', kind, '110 x 40', size, ...rest];
    const { code, err } = await asked(folder, wrong);
    expect(code).toBe(0);
    for (const advice of [
      'this has to be said: write it like Pine washstand',
      '"No Id" is not an id: write lower-case letters',
      '"sofa" is none of these: write a number from 1 to 6',
      '"110 x 40" is not three measures: write three measures like 90 x 45 x 80 cm',
    ])
      expect(err).toContain(advice);
  }));

it('numbers are offered only where they stand before the answers', async () => {
  const told = async (...words: string[]) => (await drybench([...words, '--ask-nothing'])).err;
  const setup = ['setup', 'not-made', '--dry-run'];
  expect(await told(...setup, '--units', 'imperial')).toBe(
    'drybench: --units "imperial" is none of these\n  write one of metric, us\n',
  );
  expect(await told(...setup, '--week-starts-on', '2')).toContain('write one of monday, sunday');
  await inEmptyShop(shop, async (folder) => {
    const table = ['intake', '--shop', folder, '--name', 'Table', '--kind', 'table', '--size', '9 x 9 x 9 cm'];
    expect(await told(...table, '--wood', 'plastic')).toMatch(/"plastic" is none of these\n {2}write one of pine, /);
    expect(await told(...table, '--old-finish', 'tar')).toContain('write a number from 1 to 5; or ');
  });
});

it('a file that is there stays, and another name is offered; without a person nothing is written', () =>
  inEmptyShop(shop, async (folder) => {
    expect((await asked(folder, typedTable)).code).toBe(0);
    const file = join(folder, 'pieces/oak-hall-table.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace('Oak hall table', 'My own words'));
    const before = readFileSync(file, 'utf8');
    const again = await asked(folder, typedTable);
    expect(again.err).toContain('pieces/oak-hall-table.yaml is there already, and stays as it is');
    expect([again.code, existsSync(join(folder, 'pieces/oak-hall-table-2.yaml'))]).toEqual([0, true]);
    const options = ['--name', 'Oak hall table', '--kind', 'other', '--area', '1 m2', '--finish', 'hardwax-oil'];
    const unasked = await drybench(['intake', '--shop', folder, '--at', '2027-01-11T07:30', ...options]);
    expect(unasked.code).toBe(2);
    expect(unasked.err).toContain('is there already, and is not written over');
    expect(readFileSync(file, 'utf8')).toBe(before);
    expect(readdirSync(join(folder, 'pieces')).sort()).toEqual(['oak-hall-table-2.yaml', 'oak-hall-table.yaml']);
  }));

it('who says no at the end, or ends the input early, has written nothing', () =>
  inEmptyShop(shop, async (folder) => {
    const refused = await asked(folder, [...typedTable.slice(0, -1), 'no']);
    expect([refused.code, refused.err]).toEqual([1, expect.stringContaining('nothing was written')]);
    const ended = await asked(folder, typedTable.slice(0, 7));
    expect([ended.code, ended.err]).toEqual([130, expect.stringContaining('stopped: nothing was written')]);
    expect(readdirSync(join(folder, 'pieces'))).toEqual([]);
  }));

it('what must be said and is not is named with its option', () =>
  inEmptyShop(shop, async (folder) => {
    const { code, err } = await drybench(['intake', '--shop', folder, '--name', 'Stool', '--kind', 'chair']);
    expect(code).toBe(2);
    expect(err).toContain('--size');
    expect(err).toContain('45 x 45 x 90 cm');
    const finish = await drybench(['intake', '--shop', folder, '--name', 'Stool', '--kind', 'other', '--area', '1 m2']);
    expect(finish.code).toBe(2);
    const shown = [...finish.err.matchAll(/^ +- \d: .*\(([a-z-]+)\)$/gm)].map((match) => match[1]);
    const { libraries } = readBook(folder, { shippedDir: shippedDir() });
    const forSections = libraries.recipes.ids.filter(
      (id) => !id.startsWith('whole-') && !['drawers', 'metal-hardware'].includes(id),
    );
    expect(shown).toEqual(forSections);
    expect(finish.err).toContain('write --finish "clear-water-borne", or its number');
    // What is advised does it, and means the one that it stood beside.
    const options = ['--name', 'Stool', '--kind', 'other', '--area', '1 m2', '--at', '2027-01-11T07:30'];
    const by = async (said: string) => {
      const { code, out } = await drybench(['intake', '--shop', folder, ...options, '--finish', said, '--json']);
      rmSync(join(folder, 'pieces/stool.yaml'), { force: true });
      return [code, code === 0 && (JSON.parse(out) as { sections: unknown }).sections];
    };
    for (const [i, recipe] of forSections.entries()) expect(await by(String(i + 1))).toEqual(await by(recipe));
    expect(await by('9')).toEqual([2, false]);
    expect((await by('hardwax-oil'))[0]).toBe(0);
  }));

it('answers in Spanish do where Spanish is spoken, and say the same as those in English', () =>
  inEmptyShop(shop, async (folder) => {
    const lines = (wood: string, lead: string, dark: string, write: string) => [
      'Silla',
      '',
      '3',
      '45 x 45 x 90',
      '1',
      '',
      wood,
      '3',
      lead,
      '',
      'painted-brushed',
      dark,
      '',
      '',
      '',
      '',
      write,
    ];
    const written = async (answers: readonly string[]) => {
      const { code, err } = await asked(folder, answers, '--language', 'es');
      expect([code, err]).toEqual([0, expect.stringContaining('[desconocido]')]);
      const file = join(folder, 'pieces/silla.yaml');
      const text = readFileSync(file, 'utf8');
      rmSync(file);
      return text;
    };
    const english = await written(lines('oak', 'yes', 'yes', 'yes'));
    expect(english).toContain('may-carry-lead: yes');
    expect(english).toContain('block-stains');
    for (const yes of ['sí', 'si', 'SÍ', 's', 'y']) expect(await written(lines('roble', '2', yes, yes))).toBe(english);
    expect(await written(lines('ROBLE', 'sí', 'sí', ''))).toBe(english);
    const refused = await asked(folder, lines('cerezo', 'no', 'no', 'no'), '--language', 'es');
    expect([refused.code, refused.err]).toEqual([1, expect.stringContaining('no se ha escrito nada')]);
  }));

it('who gives all by options is shown each area with how it was reckoned, once', () =>
  inEmptyShop(shop, async (folder) => {
    const options = [
      '--name',
      'Side table',
      '--kind',
      'table',
      '--size',
      '120 x 80 x 75 cm',
      '--finish',
      'hardwax-oil',
    ];
    const more = ['--ask-nothing', '--wood', 'oak', '--old-finish', 'bare'];
    const { code, out } = await drybench(['intake', '--shop', folder, '--at', '2027-01-11T07:30', ...options, ...more]);
    expect(code).toBe(0);
    // By hand: 1.2 m times 0.8 m.
    expect(out.split('top: 120 cm x 80 cm = 0.96 m²').length - 1).toBe(1);
    // In words all areas are said one way; a file keeps what the files are written in.
    expect(out).not.toContain('m2');
    const text = readFileSync(join(folder, 'pieces/side-table.yaml'), 'utf8');
    expect(text).toContain('top: 120 cm x 80 cm = 0.96 m2');
    expect(text).not.toContain('m²');
    rmSync(join(folder, 'pieces/side-table.yaml'));
    const spanish = await drybench([
      ...['intake', '--shop', folder, '--at', '2027-01-11T07:30', ...options, ...more, '--language', 'es'],
    ]);
    expect(spanish.code).toBe(0);
    expect(spanish.out).toContain('120 cm x 80 cm = 0,96 m²');
    // Legs of 4.5 cm: no decimal point among the commas.
    expect(spanish.out).not.toMatch(/m2|\d\.\d/);
  }));

it('a shop that can do no recipe is told what each of them lacks, not sent where all is right', () =>
  inEmptyShop(shop.replace(/tools:\n(?: {2}.*\n)+/, ''), async (folder) => {
    const options = ['--name', 'Stool', '--kind', 'other', '--area', '1 m2', '--at', '2027-01-11T07:30'];
    const { code, err } = await drybench(['intake', '--shop', folder, ...options]);
    expect(code).toBe(2);
    expect(err).toContain('no recipe can be done with what the shop has');
    expect(err).toMatch(/\(painted-brushed\): .*the shop has no tool sander/);
    expect(err).toMatch(/\(painted-sprayed\): .*; the shop has no tool sprayer/);
    expect(err).toContain('add to shop.yaml what one of them lacks');
    expect(err).not.toContain('drybench check');
    // What is advised does it.
    const brushed = await inEmptyShop(shop.replace(/ {2}sprayer: .*\n/, ''), (other) =>
      drybench(['intake', '--shop', other, ...options, '--finish', 'painted-brushed']),
    );
    expect(brushed.code).toBe(0);
  }));

it.each([
  ['painted-sprayed', 'painted-sprayed cannot be done with what the shop has', '  - '],
  ['whole-piece', 'whole-piece is no finish for the outside of a piece', ''],
  ['bananas', 'this shop has no such finish "bananas"', ''],
])('--finish %s, which is none here, is told what is true of it', (finish, message, lacks) =>
  inEmptyShop(shop.replace(/ {2}spray: .*\n/, ''), async (folder) => {
    const words = ['--name', 'Stool', '--kind', 'chair', '--size', '40 x 40 x 45 cm', '--wood', 'pine', '--lead', 'no'];
    const more = ['--old-finish', 'bare', '--finish', finish];
    const { code, err } = await drybench(['intake', '--shop', folder, ...words, ...more, '--ask-nothing']);
    expect(code).toBe(2);
    expect(err.split('\n')[0]).toBe(`drybench: --finish: ${message}`);
    expect(err).toContain(lacks);
    expect(err).toMatch(/write one of .*hardwax-oil/s);
    expect(err).not.toContain('…');
  }),
);
