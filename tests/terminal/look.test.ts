import { expect, test } from 'vitest';
import { showsUnicode, wantsColour, type Environment } from '../../src/terminal/colour.ts';
import { lookOf } from '../../src/terminal/look.ts';
import { widthOf } from '../../src/terminal/width.ts';

const terminal = true;
const pipe = false;

// The order of NO_COLOR is that of no-color.org: set and not empty, whatever its value, it wins over the terminal.
const colourCases: readonly (readonly [boolean, Environment, boolean, boolean])[] = [
  [false, {}, terminal, true],
  [false, {}, pipe, false],
  [true, { FORCE_COLOR: '1' }, terminal, false],
  [false, { NO_COLOR: '1' }, terminal, false],
  [false, { NO_COLOR: '' }, terminal, true],
  [false, { NO_COLOR: '1', FORCE_COLOR: '1' }, terminal, false],
  [false, { FORCE_COLOR: '1' }, pipe, true],
  [false, { FORCE_COLOR: '0' }, terminal, false],
  [false, { TERM: 'dumb' }, terminal, false],
  [false, { TERM: 'dumb', FORCE_COLOR: '1' }, terminal, true],
];

test.each(colourCases)('plain %s, %j, a terminal %s: colour %s', (plain, env, isTerminal, wanted) => {
  expect(wantsColour(plain, env, isTerminal)).toBe(wanted);
});

test('the first locale that is set decides whether more than ASCII is shown', () => {
  expect(showsUnicode({})).toBe(true);
  expect(showsUnicode({ LANG: 'en_IE.UTF-8' })).toBe(true);
  expect(showsUnicode({ LANG: 'C' })).toBe(false);
  expect(showsUnicode({ LC_ALL: 'POSIX', LANG: 'en_IE.UTF-8' })).toBe(false);
});

test('a terminal tells its width; below 30 nothing is laid out; one that does not know it has COLUMNS, else 80', async () => {
  expect((await lookOf({ columns: 120 }, { COLUMNS: '60' }, false)).columns).toBe(120);
  expect((await lookOf({ columns: 4 }, {}, false)).columns).toBe(30);
  expect((await lookOf({ columns: 0 }, {}, false)).columns).toBe(80);
  expect((await lookOf({ columns: 0 }, { COLUMNS: '60' }, false)).columns).toBe(60);
});

test('in a pipe no line is broken; what is drawn there is as wide as COLUMNS, else 80', async () => {
  for (const [told, wide] of [
    ['60', 60],
    ['wide', 80],
    ['', 80],
  ] as const) {
    const look = await lookOf({}, { COLUMNS: told }, false);
    expect([look.columns, look.pictureColumns]).toEqual([Infinity, wide]);
  }
});

test('paint is an escape sequence with colour, and nothing without', async () => {
  const coloured = await lookOf({}, { FORCE_COLOR: '1' }, false);
  expect(coloured.paint.bad('late')).toBe('\u001b[31mlate\u001b[39m');
  const bare = await lookOf({}, {}, false);
  expect(bare.paint.bad('late')).toBe('late');
});

// Unicode Standard Annex 11: wide and fullwidth take two columns; combining marks none.
test.each([
  ['plain', 5],
  ['09:30–10:15 °C …', 16],
  ['漢字', 4],
  ['ｗ', 2],
  ['e\u0301', 1],
  ['\u0301', 0],
  ['\u{1f6cb}\ufe0f', 2],
  ['\u{1f600}', 2],
  ['\u{1f1ee}\u{1f1ea}', 2],
  ['ก็', 1],
  ['', 0],
])('"%s" takes %i columns', (text, columns) => {
  expect(widthOf(text)).toBe(columns);
});
