import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { harmless, harmlessData, harmlessJson, harmlessLines } from '../../src/terminal/harmless.ts';

// CWE-150; Unicode Standard, chapter 23: control codes, bidirectional controls, zero-width characters, line separators.
test.each([
  ['an escape sequence', '\u001b[31mred', '\\u{1b}[31mred'],
  ['a title that rings', '\u001b]0;x\u0007', '\\u{1b}]0;x\\u{7}'],
  ['delete', 'a\u007f', 'a\\u{7f}'],
  ['the C1 form of an escape', '\u009b31m', '\\u{9b}31m'],
  ['carriage return and backspace', 'safe\r\b', 'safe\\u{d}\\u{8}'],
  ['a line break', 'a\nb', 'a\\u{a}b'],
  ['text turned round', 'a\u202eb', 'a\\u{202e}b'],
  ['isolates', '\u2066x\u2069', '\\u{2066}x\\u{2069}'],
  ['direction marks', '\u200e\u200f\u061c', '\\u{200e}\\u{200f}\\u{61c}'],
  ['zero width', 'a\u200bb\ufeff', 'a\\u{200b}b\\u{feff}'],
  ['line and paragraph separators', '\u2028\u2029', '\\u{2028}\\u{2029}'],
  ['a tag character', 'a\u{e0041}', 'a\\u{e0041}'],
  ['half a surrogate pair', 'a\ud800', 'a\\u{d800}'],
])('%s is made visible', (_, text, shown) => {
  expect(harmless(text)).toBe(shown);
});

test('letters, accents, wide characters and emoji stay as they are', () => {
  const text = 'Née Chaiselongue, 漢字 e\u0301 \u{1f6cb} ½ °C …';
  expect(harmless(text)).toBe(text);
});

// Oracle: the classes of the Unicode Character Database, as the language's own patterns know them.
test('of each code unit the answer is that of its class', () => {
  const units = Array.from({ length: 0x10000 }, (_, unit) => String.fromCharCode(unit));
  const wrong = units.filter((c) => (harmless(`a${c}b`) === `a${c}b`) === /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u.test(c));
  expect(wrong).toEqual([]);
});

test('lines stay lines where lines are meant', () => {
  expect(harmlessLines('a\n\u001b[2Jb')).toBe('a\n\\u{1b}[2Jb');
});

test('every string in a book is tamed, keys of records and maps too, and nothing else is changed', () => {
  const data = {
    name: 'x\u0007',
    list: ['\u200b', 3, undefined],
    at: new Map([['k\u001b', { 'y\u001b': null }]]),
    yes: true,
  };
  expect(harmlessData(data)).toEqual({
    name: 'x\\u{7}',
    list: ['\\u{200b}', 3, undefined],
    at: new Map([['k\\u{1b}', { 'y\\u{1b}': null }]]),
    yes: true,
  });
});

test('what holds nothing harmful is not copied, beside what does', () => {
  const data = { plain: { list: ['a', { b: 'é' }] }, harmful: { list: ['\u0007'] } };
  const after = harmlessData(data);
  expect(after.plain).toBe(data.plain);
  expect(after.harmful.list).toEqual(['\\u{7}']);
  expect(data.harmful.list).toEqual(['\u0007']);
});

test('a key that would set a prototype stays a plain key', () => {
  const data = JSON.parse('{"__proto__": {"a": 1}}') as object;
  const tamed = harmlessData(data);
  expect(Object.getPrototypeOf(tamed)).toBe(Object.prototype);
  expect(Object.keys(tamed)).toEqual(['__proto__']);
});

// Oracle: the language's own JSON reader.
test('JSON made harmless says the same and holds nothing harmful', () => {
  fc.assert(
    fc.property(
      fc.jsonValue({ maxDepth: 1 }),
      fc.string({ unit: fc.nat(0xffff).map((unit) => String.fromCharCode(unit)) }),
      (value, text) => {
        const document = { value, text };
        const json = harmlessJson(JSON.stringify(document, undefined, 2));
        expect(JSON.parse(json)).toEqual(JSON.parse(JSON.stringify(document)));
        expect(json.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
      },
    ),
  );
});
