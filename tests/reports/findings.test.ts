import { expect, test } from 'vitest';
import type { Finding, Place } from '../../src/model/finding.ts';
import { countFindings, findingsScreen } from '../../src/reports/findings.ts';
import { harmless } from '../../src/terminal/harmless.ts';
import { widthOf } from '../../src/terminal/width.ts';
import fc from '../support/property.ts';
import { look } from './sample.ts';

const around = (place: Omit<Place, 'file'>): Finding => ({
  code: 'bad',
  severity: 'error',
  message: 'this is wrong',
  advice: 'write it right',
  place: { file: 'shop.yaml', ...place },
});
const at = (text: string, column: number): Finding => around({ line: 5, column, text });
const screen = (findings: readonly Finding[]) => findingsScreen(findings, look(60), harmless);

test('the place, the line with the ones around it, a caret under it, and what to write', () => {
  const finding = around({ line: 9, column: 7, text: 'cure: -4h', before: 'name: Enamel', after: '\tsand: 2 h' });
  expect(screen([finding])).toBe(`shop.yaml:9:7: error: this is wrong
     8  name: Enamel
  >  9  cure: -4h
              ^
    10    sand: 2 h
  write it right
`);
});

test('the first line has none before it, the last none after it; an empty one stands as its number', () => {
  const first = around({ line: 1, column: 1, text: 'a', after: '' });
  expect(screen([first]).split('\n').slice(1, 4)).toEqual(['  > 1  a', '       ^', '    2']);
  const last = around({ line: 3, column: 1, text: 'a', before: 'b' });
  expect(screen([last]).split('\n').slice(1, 5)).toEqual(['    2  b', '  > 3  a', '       ^', '  write it right']);
});

test('the lines around are as harmless as the line itself', () => {
  const finding = around({ line: 2, column: 1, text: 'a', before: '\u001b[2J\u202e', after: '\u0007' });
  const [, before, , , after] = screen([finding]).split('\n');
  expect([before, after]).toEqual(['    1  \\u{1b}[2J\\u{202e}', '    3  \\u{7}']);
});

test.each([
  ['wide letters', '名前: -4h', 5, '             ^'],
  ['a tab', '\tcure: -4h', 8, '               ^'],
  ['an accent of its own', 'cure\u0301e: -4h', 9, '              ^'],
  ['what is shown escaped', 'a\u0007: -4h', 5, '               ^'],
])('the caret stands right behind %s', (_, text, column, caret) => {
  const lines = screen([at(text, column)]).split('\n');
  expect(lines[2]).toBe(caret);
  const [shown = ''] = lines.slice(1);
  expect(Array.from(shown).join('')).toContain('-4h');
});

test('the caret stands right behind a sign that ASCII writes longer', () => {
  const lines = findingsScreen([at('air: 20 °C, 700 %', 13)], look(60, true), harmless).split('\n');
  expect(lines[1]?.slice(lines[2]?.indexOf('^'))).toBe('700 %');
});

test('of a long line the part about the place is shown', () => {
  const lines = screen([at(`${'x'.repeat(5000)}HERE${'y'.repeat(5000)}`, 5001)]).split('\n');
  expect(lines[1]?.length).toBeLessThanOrEqual(60);
  expect(lines[1]?.slice(lines[2]?.indexOf('^')).startsWith('HERE')).toBe(true);
  expect(lines[1]).toMatch(/^ {2}> 5 {2}…x+HEREy+…$/);
});

/** What stands in `text` from so many columns on. */
function fromColumn(text: string, columns: number): string {
  const letters = Array.from(text);
  const index = letters.findIndex((_, i) => widthOf(letters.slice(0, i).join('')) === columns);
  return letters.slice(index).join('');
}

test('at every width one line is marked, the caret stands under the place, and nothing is wider than the screen', () => {
  const letter = fc.constantFrom('a', 'b', ' ', ':', '名', '前', '°', '\t', '\u0007', '\u202e');
  const line = fc.string({ unit: letter, maxLength: 200 });
  const lines = fc.record({ before: fc.option(line, { nil: undefined }), lead: line, tail: line, after: line });
  const place = fc.record({ number: fc.integer({ min: 2, max: 220_000 }), columns: fc.constantFrom(30, 40, 80, 120) });
  fc.assert(
    fc.property(lines, place, fc.boolean(), ({ before, lead, tail, after }, { number, columns }, ascii) => {
      const text = `${lead}H${tail}`;
      const column = Array.from(lead).length + 1;
      const finding = around({ line: number, column, text, ...(before !== undefined && { before }), after });
      const shown = findingsScreen([finding], look(columns, ascii), harmless).split('\n');
      for (const row of shown) expect(widthOf(row)).toBeLessThanOrEqual(columns);
      const marked = shown.filter((row) => row.startsWith('  > '));
      expect(marked).toHaveLength(1);
      const [row = ''] = marked;
      expect(row.slice(4).trimStart().startsWith(`${number}  `)).toBe(true);
      const caret = shown[shown.indexOf(row) + 1] ?? '';
      expect(caret.trim()).toBe('^');
      expect(fromColumn(row, caret.indexOf('^')).startsWith('H')).toBe(true);
    }),
  );
});

test('errors first, twenty in full, and the number of the rest', () => {
  const warning: Finding = { code: 'w', severity: 'warning', message: 'worth knowing' };
  const many = [warning, ...Array.from({ length: 25 }, () => at('x', 1))];
  const text = screen(many);
  expect(text.match(/error: this is wrong/g)).toHaveLength(20);
  expect(text).toContain('and 6 more: mend these first, then drybench check tells of them\n');
  expect(text).not.toContain('worth knowing');
  expect(countFindings(many)).toBe('25 errors, 1 warning');
});
