import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faces } from '../../src/commands/faces.ts';
import { widthOf } from '../../src/terminal/width.ts';
import { drybench, type Surroundings } from './run-cli.ts';
import { inShop } from './small-shop.ts';

const COLUMNS = 40;
const home = mkdtempSync(join(tmpdir(), 'drybench-narrow-'));
beforeAll(() => cpSync('shared/demo', home, { recursive: true }));
afterAll(() => rmSync(home, { recursive: true }));

async function screen(words: readonly string[], surroundings: Surroundings): Promise<string> {
  const { out, err } = await drybench(words, surroundings);
  return out + err;
}

const tooWide = (text: string) => text.split('\n').filter((line) => widthOf(line) > COLUMNS);

/** The letters and digits of a text in their order, whatever line they stand in. */
const words = (text: string) => text.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word));
const together = (text: string) => text.replaceAll(/\s+/g, '');

describe(`on a terminal of ${COLUMNS} columns`, () => {
  const helps: string[][] = [[], ...faces.map(({ name }) => [name])];
  it.each(helps)('help of %s fits, and says all that it says on a wide one', async (...name: string[]) => {
    const asked = name.length === 0 ? ['--help'] : [...name, '--help'];
    const narrow = await screen(asked, { columns: COLUMNS });
    // How it is used is one line, to be copied; what is typed, and a single word, are not broken.
    expect(tooWide(narrow).filter((line) => !/^(Usage:| {2}\S| +\S+$)/.test(line))).toEqual([]);
    for (const word of words(await screen(asked, { columns: 200 }))) expect(together(narrow)).toContain(word);
  });

  it.each([
    ['check'],
    ['week', '--look'],
    ['today', '--care'],
    ['ready'],
    ['ready', 'oak-table'],
    ['ready', '--all'],
    ['why', 'oak-table', 'top/oil-2'],
    ['buy', '--steps'],
    ['price'],
    ['price', 'oak-table'],
    ['air'],
    ['air', '--language', 'es'],
    ['air', '--reading', '13 °C 82 %'],
    ['week', '--look', '--picture', '--days', '2'],
    ['done', 'nosuch', 'step'],
  ])('%s %s fits', async (...asked: string[]) => {
    const text = await screen([...asked, '--at', '2027-01-11T07:30'], { folder: home, columns: COLUMNS });
    expect(text.length).toBeGreaterThan(20);
    expect(tooWide(text)).toEqual([]);
  });

  it('a table turned into lists loses nothing', async () => {
    const asked = ['price', '--at', '2027-01-11T07:30'];
    const narrow = together(await screen(asked, { folder: home, columns: COLUMNS }));
    const wide = await screen(asked, { folder: home, columns: 80 });
    expect(words(wide).length).toBeGreaterThan(100);
    for (const word of words(wide)) expect(narrow).toContain(word);
  });

  it('what to buy is listed by what it is', async () => {
    const { out } = await drybench(['buy', '--at', '2027-01-11T07:30'], { folder: home, columns: COLUMNS });
    expect(out).toMatch(/\n {2}Epoxy putty\n {4}by +today\n {4}needed +0\.49 L\n/);
  });

  it('what could be and could be taken on fits', () =>
    inShop({}, async (folder) => {
      for (const asked of [
        ['promise', 'brushed', '--by', '2027-01-20'],
        ['compare', '--warmer', 'shed=+3K', '--slot', 'bench=+1', '--helper', '2027-01-16=08:00-12:00'],
      ])
        expect(tooWide(await screen(asked, { folder, columns: COLUMNS }))).toEqual([]);
    }));
});

describe.each([40, 80])('what was done, on a terminal of %i columns', (columns) => {
  const chair = [
    '--kind',
    'chair',
    '--size',
    '40 x 40 x 50 cm',
    '--finish',
    'brushed',
    '--lead',
    'yes',
    '--ask-nothing',
  ];
  const done: (readonly string[])[] = [
    ['setup', 'new', '--zone', 'Europe/Dublin', '--ask-nothing'],
    ['intake', '--name', 'Red chair', ...chair],
    ['check'],
    ['done', 'stool', 'paint-1'],
    ['seen', 'stool', 'paint-1', 'tacky'],
    ['undo'],
    ['slip', 'stool', 'paint-2', '2027-01-14T13:00'],
    ['phone', '--file', 'x.ics'],
    ['phone', '--file', 'x.ics', '--serve'],
    ['wall'],
    ['wek'],
    ['done', 'stool', 'paint-1', '--to', '2028-01-14T13:00'],
    ['done', 'red-chair', 'scuff'],
    ['today', '--at', '2027-03-28T01:30'],
    ['week', '--days', 'a-great-many-days'],
  ];
  it('fits', () =>
    inShop({}, async (folder) => {
      for (const asked of done) {
        const text = await screen(asked, { folder, columns });
        expect(text.length).toBeGreaterThan(20);
        expect([asked, text.split('\n').filter((line) => widthOf(line) > columns)]).toEqual([asked, []]);
      }
    }));

  it('what is one word, to be copied, is not broken', () =>
    inShop({}, async (folder) => {
      const file = `${'x'.repeat(90)}.ics`;
      expect((await screen(['phone', '--file', file], { folder, columns })).replaceAll('\n', ' ')).toContain(
        ` ${file}: `,
      );
    }));
});

// no-color.org: set and not empty, no colour. A dumb terminal, and what is no terminal, know no escape codes.
describe('escape codes', () => {
  const asked: string[][] = [
    ['week', '--look', '--picture'],
    ['today'],
    ['ready', '--all'],
    ['why', 'stool', 'paint-1'],
    ['promise', 'brushed', '--by', '2027-01-20'],
    ['compare', '--warmer', 'shed=+3K'],
    ['air'],
    ['air', '--reading', '13 °C 82 %'],
    ['buy'],
    ['price'],
    ['check'],
    ['done', 'nosuch', 'step'],
    ['--help'],
  ];
  const escape = '\u001b';
  const coloured: string[] = [];

  it.each<[string, Surroundings]>([
    ['in a pipe', {}],
    ['with NO_COLOR', { isTTY: true, columns: 80, env: { NO_COLOR: '1', FORCE_COLOR: '1', TERM: 'dumb' } }],
    ['on a dumb terminal', { isTTY: true, columns: 80, env: { TERM: 'dumb' } }],
  ])('%s there are none', (_, surroundings) =>
    inShop({}, async (folder) => {
      for (const words of asked) expect(await screen(words, { folder, ...surroundings })).not.toContain(escape);
    }),
  );

  it('with FORCE_COLOR a pipe gets colour, and the same words', () =>
    inShop({}, async (folder) => {
      for (const words of asked) {
        const text = await screen(words, { folder, env: { FORCE_COLOR: '1' } });
        if (text.includes(escape)) coloured.push(words.join(' '));
        expect(text.replaceAll(/\u001b\[\d+m/g, '')).toBe(await screen(words, { folder }));
      }
      expect(coloured.length).toBeGreaterThan(8);
    }));
});
