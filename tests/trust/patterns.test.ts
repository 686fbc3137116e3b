// No pattern of the program hangs over a text made for that, by the ambiguity of its automaton.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { ambiguity } from './ambiguity.ts';

interface Found {
  readonly file: string;
  readonly text: string;
}

function patternsOf(file: string): { literals: Found[]; made: Found[] } {
  const source = ts.createSourceFile(file, readFileSync(join('src', file), 'utf8'), ts.ScriptTarget.Latest, true);
  const literals: Found[] = [];
  const made: Found[] = [];
  const visit = (node: ts.Node): void => {
    if (node.kind === ts.SyntaxKind.RegularExpressionLiteral) literals.push({ file, text: node.getText() });
    if ((ts.isNewExpression(node) || ts.isCallExpression(node)) && node.expression.getText() === 'RegExp')
      made.push({ file, text: node.getText() });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { literals, made };
}

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));
const all = files.map(patternsOf);
const regExpOf = ({ text }: Found): RegExp => {
  const end = text.lastIndexOf('/');
  return new RegExp(text.slice(1, end), text.slice(end + 1));
};

test.each([
  // The first as in a report of 10.7 s over 28 digits and an x; the rest are textbook examples.
  [/^(\d+h?)+$/, 'exponential'],
  [/(a*)*$/, 'exponential'],
  [/(a|a)*$/, 'exponential'],
  [/(a|ab|b)*c/, 'exponential'],
  [/^(?:\s*\w+\s*)+$/, 'exponential'],
  [/^([a-z]+\.?)+@/, 'exponential'],
  [/x(?=(a+)+b)/, 'exponential'],
  [/\d+\d+x/, 'polynomial'],
  [/^\s*.*\s*$/, 'polynomial'],
  [/a*b?a*$/, 'polynomial'],
  [/^(\d+h )+$/, 'none'],
  [/^\d{1,4}-\d{2}$/, 'none'],
  [/^(?:ab|cd)*$/, 'none'],
  [/"(?:[^"\\]|\\.)*"/, 'none'],
] as const)('%s: %s', (pattern, expected) => {
  expect(ambiguity(pattern)).toBe(expected);
});

test('all patterns are literals, or a literal with other flags, and there are many', () => {
  const isOther = ({ text }: Found) => /^new RegExp\(\w+\.source, '[a-z]*'\)$/.test(text);
  expect(all.flatMap(({ made }) => made).filter((p) => !isOther(p))).toEqual([]);
  expect(all.flatMap(({ literals }) => literals).length).toBeGreaterThan(100);
});

/** May go through a text in more than one way, as its length goes, because the text is short. */
const shortTexts: readonly (Found & { readonly because: string })[] = [
  {
    file: join('commands', 'read-air.ts'),
    text: String.raw`/^\s*(?:([\d.]{1,8})\s*%(?:\s*rh)?[\s,]+)?(.*?)(?:[\s,]+([\d.]{1,8})\s*%(?:\s*rh)?)?\s*$/iu`,
    because: 'it is asked of 64 characters at most',
  },
  {
    file: join('reports', 'buy.ts'),
    text: String.raw`/([.,]\d*?)0+(?= )/`,
    because: 'it is asked of amounts that the program has written itself',
  },
];

test('none but these goes through a text in more than one way', () => {
  const found = all.flatMap(({ literals }) =>
    literals.map((p) => ({ ...p, ambiguity: ambiguity(regExpOf(p)) })).filter((p) => p.ambiguity !== 'none'),
  );
  expect(found.map((p) => p.text)).toEqual(shortTexts.map((p) => p.text));
  expect(found.map((p) => p.file)).toEqual(shortTexts.map((p) => p.file));
  expect(found.filter((p) => p.ambiguity === 'exponential')).toEqual([]);
});
