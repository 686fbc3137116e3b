import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { saidIn } from './collect.ts';
import { lineOf, nameCalled, patternOf, sources, visit } from './sources.ts';

const all = sources();

/** What is no text for people, though it has words: by file, with the reason. */
const notForPeople: readonly (readonly [RegExp, string])[] = [
  [/^src\/engine\//, 'names in a problem of numbers'],
  [/^src\/schedule\//, 'names of resources and goals, by which they are found again'],
  [/^src\/verify\//, 'what a defect of the planner is told by, to who mends it'],
  [/^src\/drying\/why-unfit\.ts$/, 'for the library only'],
  [/^src\/index\.ts$/, 'errors of the library, for who programs with it'],
  [/^src\/phone\/(answer|serve|stamp|token)\.ts$/, 'words of HTTP, which programs read'],
  [/^src\/reports\/calendar\/(write|uid|ledger|text)\.ts$/, 'words of iCalendar'],
  [/^src\/reports\/wall\/(paper|svg)\.ts$/, 'HTML, CSS and SVG'],
  [/^src\/commands\/shell\/scripts\.ts$/, 'scripts of shells'],
  [/^src\/commands\/usage\.ts$/, 'what the library for the command line writes, to be found in its errors'],
  [/^src\/files\/diff-text\.ts$/, 'words of unified diffs'],
  [/^src\/files\/say-written\.ts$/, 'units as they are written into files'],
];

/** Single texts that are no text for people. */
const exceptions: ReadonlySet<string> = new Set([
  // Compared with what stands in a file.
  'common practice, no source',
  "the shop's own figures",
  // Names of goals in a plan.
  'tied up',
  'extra work',
  // Examples of forms, the same in every language.
  '{0} [low - high]',
  '50 kJ/mol',
  '38 EUR for 1 L',
  'legs/stain @ tape',
  // Names of variables of the surroundings.
  'LC_ALL, LC_CTYPE, LANG',
  // Names of files.
  'recipes/NAME.yaml, recipes/parts/NAME.yaml',
  'plan.json, plans/',
]);

const words = (text: string) => text.replaceAll(/\{\d+\}/g, ' ').match(/\p{L}{2,}/gu) ?? [];

/** Two words or more, one of them beside a blank. */
const looksSaid = (text: string) => words(text).length >= 2 && /\s/.test(text.trim());

const isFormat = (text: string) =>
  /^(--[a-z-]+ <|[<[]|\.[A-Z]{1,2} |\.[A-Z]{2}|\.[a-z]{2}\n|https?:|webcal:|# yaml-language-server)/.test(text) ||
  /^[yMdH':T-]+$/.test(text);

function isDefect(node: ts.Node): boolean {
  for (let at: ts.Node = node; !ts.isSourceFile(at); at = at.parent) {
    if (ts.isNewExpression(at) && /^(Error|RangeError|TypeError)$/.test(at.expression.getText())) return true;
    if (
      ts.isCallExpression(at) &&
      nameCalled(at) === 'must' &&
      at.getSourceFile().text.includes('though the files were checked')
    )
      return true;
  }
  return false;
}

function isCompared(node: ts.Node): boolean {
  const { parent } = node;
  return (
    ts.isLiteralTypeNode(parent) ||
    ts.isCaseClause(parent) ||
    ts.isElementAccessExpression(parent) ||
    ts.isImportDeclaration(parent) ||
    (ts.isPropertyAssignment(parent) && parent.name === node)
  );
}

function insideFunction(node: ts.Node): boolean {
  for (let at: ts.Node = node; !ts.isSourceFile(at); at = at.parent) if (ts.isFunctionLike(at)) return true;
  return false;
}

describe('texts in the sources', () => {
  it('are all said, so that another language can say them', () => {
    const met = new Set<string>();
    const unsaid = all
      .filter(({ file }) => !notForPeople.some(([pattern]) => pattern.test(file)))
      .flatMap((source) => {
        const said = new Set(saidIn(source).map(({ node }) => node));
        const found: string[] = [];
        visit(source.tree, (node) => {
          const text = patternOf(node);
          if (text === undefined || !looksSaid(text) || said.has(node)) return;
          if (ts.isCallExpression(node.parent) && nameCalled(node.parent) === 'counted') return;
          if (exceptions.has(text)) met.add(text);
          if (exceptions.has(text) || isFormat(text) || isCompared(node) || isDefect(node)) return;
          found.push(`${source.file}:${lineOf(node)}: ${text}`);
        });
        return found;
      });
    expect(unsaid).toEqual([]);
    expect([...exceptions].filter((text) => !met.has(text))).toEqual([]);
  });

  it('are said when they are shown, not when a module is loaded', () => {
    const early = all.flatMap(({ file, tree }) => {
      const found: string[] = [];
      visit(tree, (node) => {
        const tagged = ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'worded';
        const called = ts.isCallExpression(node) && /^(translated|counted|joinedBy\w+)$/.test(nameCalled(node));
        if ((tagged || called) && !insideFunction(node)) found.push(`${file}:${lineOf(node)}`);
      });
      return found;
    });
    expect(early).toEqual([]);
  });
});
