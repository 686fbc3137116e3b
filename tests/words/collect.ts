import ts from 'typescript';
import { lineOf, nameCalled, patternOf, visit, type Source } from './sources.ts';

/** An English text that the program says, with where it stands. */
export interface Said {
  readonly english: string;
  readonly at: string;
  readonly node: ts.Node;
  /** It is the plural of what is counted. */
  readonly counts: boolean;
}

/**
 * What is given to these as a plain text is said by them: how a value in a file is told about. By name, the places of such
 * arguments; or the names of such properties.
 */
const tellers: Readonly<Record<string, readonly (number | string)[]>> = {
  must: [1],
  may: [1],
  record: [0],
  open: [0],
  choice: [0],
  quantity: [0],
  spread: [0],
  range: [0],
  listOf: [1],
  oneOrMany: [1],
  namedBy: [2],
  byKind: [1],
  written: ['wanted'],
  oneOfForms: ['message', 'advice'],
  measureReader: ['what', 'example', 'mostWritten'],
};

/** Tables of texts that are said where the table is read. */
const tables = /^src\/commands\/(faces|program|manual)\.ts$/;
const isTyped = (text: string) =>
  /^(--|[<[]|[A-Z_, ]+$|\.|\n|\\|'|\$)/.test(text) || /^[\w./-]+\.(yaml|csv|jsonl?)\b/.test(text);

function inTable(node: ts.Node): boolean {
  const { parent } = node;
  if (ts.isArrayLiteralExpression(parent)) return true;
  if (ts.isVariableDeclaration(parent)) return true;
  return ts.isPropertyAssignment(parent) && ['about', 'group'].includes(parent.name.getText());
}

function toldBy(call: ts.CallExpression): ts.Node[] {
  const places = tellers[nameCalled(call)] ?? [];
  return places.flatMap((place): ts.Node[] => {
    if (typeof place === 'number') return call.arguments[place] === undefined ? [] : [call.arguments[place]];
    return call.arguments.flatMap((argument) =>
      ts.isObjectLiteralExpression(argument)
        ? argument.properties.flatMap((p) =>
            ts.isPropertyAssignment(p) && p.name.getText() === place ? [p.initializer] : [],
          )
        : [],
    );
  });
}

const hasLetters = (text: string) => /\p{L}{2,}/u.test(text.replaceAll(/\{\d+\}/g, ''));

/** All that one source says. */
export function saidIn({ file, tree }: Source): Said[] {
  const found: Said[] = [];
  const add = (node: ts.Node | undefined, counts = false) => {
    const english = node && patternOf(node);
    if (node !== undefined && english !== undefined)
      found.push({ english, at: `${file}:${lineOf(node)}`, node, counts });
  };
  visit(tree, (node) => {
    if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'worded') add(node.template);
    if (!ts.isCallExpression(node)) {
      if (!tables.test(file) || !ts.isStringLiteralLike(node) || !inTable(node)) return;
      if (!isTyped(node.text)) add(node);
      return;
    }
    if (nameCalled(node) === 'phrase') add(node.arguments[0]);
    if (nameCalled(node) === 'counted') add(node.arguments[2], true);
    if (file.startsWith('src/files/')) toldBy(node).forEach((told) => add(told));
  });
  return found.filter(({ english }) => hasLetters(english));
}
