import { expect, test } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import { countFindings, findingsScreen } from '../../src/reports/findings.ts';
import { harmless } from '../../src/terminal/harmless.ts';
import { look } from './sample.ts';

const at = (text: string, column: number): Finding => ({
  code: 'bad',
  severity: 'error',
  message: 'this is wrong',
  advice: 'write it right',
  place: { file: 'shop.yaml', line: 5, column, text },
});
const screen = (findings: readonly Finding[]) => findingsScreen(findings, look(60), harmless);

test('the place, the line, a caret under it, and what to write', () => {
  expect(screen([at('cure: -4h', 7)])).toBe(`shop.yaml:5:7: error: this is wrong
    cure: -4h
          ^
  write it right
`);
});

test.each([
  ['wide letters', '名前: -4h', 5, '          ^'],
  ['a tab', '\tcure: -4h', 8, '            ^'],
  ['an accent of its own', 'cure\u0301e: -4h', 9, '           ^'],
  ['what is shown escaped', 'a\u0007: -4h', 5, '            ^'],
])('the caret stands right behind %s', (_, text, column, caret) => {
  const lines = screen([at(text, column)]).split('\n');
  expect(lines[2]).toBe(caret);
  const [shown = ''] = lines.slice(1);
  expect(Array.from(shown).join('')).toContain('-4h');
});

test('of a long line the part about the place is shown', () => {
  const lines = screen([at(`${'x'.repeat(5000)}HERE${'y'.repeat(5000)}`, 5001)]).split('\n');
  expect(lines[1]?.length).toBeLessThanOrEqual(60);
  expect(lines[1]?.slice(lines[2]?.indexOf('^')).startsWith('HERE')).toBe(true);
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
