import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Source {
  /** From the root of the project. */
  readonly file: string;
  readonly tree: ts.SourceFile;
}

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return filesIn(path);
    return path.endsWith('.ts') ? [path] : [];
  });
}

/** All of src but the words themselves. */
export function sources(): Source[] {
  return filesIn(join(root, 'src'))
    .map((path) => relative(root, path).replaceAll('\\', '/'))
    .filter((file) => !file.startsWith('src/words/'))
    .map((file) => {
      const text = readFileSync(join(root, file), 'utf8');
      return { file, tree: ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true) };
    });
}

/** The text of a literal, blanks as `{0}`; undefined for any other node. */
export function patternOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return undefined;
  return node.head.text + node.templateSpans.map((span, i) => `{${i}}${span.literal.text}`).join('');
}

export function visit(node: ts.Node, see: (node: ts.Node) => void): void {
  see(node);
  ts.forEachChild(node, (child) => visit(child, see));
}

export const nameCalled = (node: ts.CallExpression): string => node.expression.getText();

export function lineOf(node: ts.Node): number {
  const tree = node.getSourceFile();
  return tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;
}
