import type { SourceText } from './source-text.ts';
import { parseYaml } from './yaml/parse.ts';
import { flowYaml, inQuotes, textAsYaml, yamlLines } from './yaml/write.ts';
import {
  entryOf,
  nodeAt,
  plainOf,
  type MapEntry,
  type MapNode,
  type Node,
  type Path,
  type Plain,
  type PlainMap,
} from './yaml/tree.ts';
import { worded } from '../words/worded.ts';

/** One change to a YAML file that a person wrote. */
export type Edit =
  /** Gives a key a value, whether it has one or not. */
  | { readonly kind: 'set'; readonly path: Path; readonly value: Plain }
  /** Puts an item at the end of a list. */
  | { readonly kind: 'append'; readonly path: Path; readonly value: Plain };

export type Edited =
  | { readonly ok: true; readonly text: string }
  /** The file cannot be changed without touching what is not meant. */
  | { readonly ok: false; readonly why: string };

interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

function lineEnding(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** Behind the line that holds `offset`, its line ending taken in. */
function lineEnd(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset);
  return newline < 0 ? text.length : newline + 1;
}

function indentAt(text: string, offset: number): string {
  return ' '.repeat(offset - lineStart(text, offset));
}

/** Behind the last line of a node; a block text reaches to the end of its body, trailing blank lines left out. */
function afterNode(text: string, end: number): number {
  let last = end;
  while (last > 0 && /\s/.test(text[last - 1] ?? '')) last -= 1;
  return lineEnd(text, last);
}

/** Lines to stand after `offset`, where the line before may lack its ending. */
function insertedLines(text: string, offset: number, lines: readonly string[]): Splice {
  const ending = lineEnding(text);
  const before = offset > 0 && text[offset - 1] !== '\n' ? ending : '';
  // A file without a newline at its end keeps that.
  const after = before === '' ? ending : '';
  return { start: offset, end: offset, text: before + lines.join(ending) + after };
}

function newEntryLines(key: string, value: Plain, indent: string): string[] {
  return yamlLines({ [key]: value }).map((line) => indent + line);
}

function addEntry(text: string, map: MapNode, key: string, value: Plain): Splice | string {
  if (map.flow) {
    const written = `${textAsYaml(key, true)}: ${flowYaml(value)}`;
    const last = map.entries.at(-1);
    if (last === undefined) return { start: map.start + 1, end: map.end - 1, text: ` ${written} ` };
    const end = Math.max(last.value.end, last.key.end);
    return { start: end, end, text: `, ${written}` };
  }
  const [first] = map.entries;
  const last = map.entries.at(-1);
  if (first === undefined || last === undefined) return worded`there is nothing beside which the key could stand`;
  const offset = afterNode(text, Math.max(last.value.end, last.key.end));
  return insertedLines(text, offset, newEntryLines(key, value, indentAt(text, first.key.start)));
}

/** A text in the quotes that the one before it had. It is quoted as between brackets: where it stands is not looked up. */
function quotedLike(node: Node, text: string): string {
  if (node.kind !== 'text' || node.style === 'double-quoted') return inQuotes(text);
  const single = node.style === 'single-quoted' && /^[^\p{C}]*$/u.test(text);
  return single ? `'${text.replaceAll("'", "''")}'` : textAsYaml(text, true);
}

function replaceValue(text: string, entry: MapEntry, value: Plain): Splice | string {
  const old = entry.value;
  const written = typeof value === 'string' ? quotedLike(old, value) : flowYaml(value);
  const isInline = old.kind === 'text' ? old.style !== 'block' && old.text !== '' : old.flow;
  if (isInline) return { start: old.start, end: old.end, text: written };
  if (old.kind === 'text' && old.text === '' && old.start === old.end) {
    const colon = text.indexOf(':', entry.key.end);
    return { start: colon + 1, end: colon + 1, text: ` ${written}` };
  }
  return worded`the value runs over several lines`;
}

function setValue(text: string, tree: Node, path: Path, value: Plain): Splice | string {
  const key = path.at(-1);
  const parent = nodeAt(tree, path.slice(0, -1));
  if (typeof key !== 'string') return worded`only a key can be given a value`;
  if (parent?.kind === 'map') {
    const entry = entryOf(parent, key);
    return entry === undefined ? addEntry(text, parent, key, value) : replaceValue(text, entry, value);
  }
  if (path.length < 2) return worded`the file holds no keys`;
  // The map around it is not there yet, or is empty.
  return setValue(text, tree, path.slice(0, -1), { [key]: value });
}

function appendItem(text: string, tree: Node, path: Path, value: Plain): Splice | string {
  const list = nodeAt(tree, path);
  if (list === undefined) return setValue(text, tree, path, [value]);
  if (list.kind !== 'list') return worded`there is no list at that place`;
  const last = list.items.at(-1);
  if (list.flow)
    return last === undefined
      ? { start: list.start + 1, end: list.end - 1, text: flowYaml(value) }
      : { start: last.end, end: last.end, text: `, ${flowYaml(value)}` };
  if (last === undefined) return worded`there is nothing beside which the item could stand`;
  const dash = text.lastIndexOf('-', list.start);
  const indent = indentAt(text, dash < lineStart(text, list.start) ? list.start : dash);
  const lines = yamlLines([value]).map((line) => indent + line);
  return insertedLines(text, afterNode(text, last.end), lines);
}

function changed(plain: Plain, edit: Edit): Plain {
  const apply = (value: Plain | undefined, path: Path): Plain => {
    const [key, ...rest] = path;
    if (key === undefined) {
      if (edit.kind === 'set') return edit.value;
      return Array.isArray(value) ? [...(value as readonly Plain[]), edit.value] : [edit.value];
    }
    if (Array.isArray(value)) return value.map((item: Plain, index) => (index === key ? apply(item, rest) : item));
    const map = typeof value === 'object' ? (value as PlainMap) : {};
    return { ...map, [key]: apply(map[key], rest) };
  };
  return apply(plain, edit.path);
}

function same(a: Plain, b: Plain): boolean {
  if (typeof a === 'string' || typeof b === 'string') return a === b;
  const keys = Object.keys(a);
  const at = (value: Plain, key: string) => (value as PlainMap)[key];
  return (
    Array.isArray(a) === Array.isArray(b) &&
    keys.length === Object.keys(b).length &&
    keys.every((key) => {
      const [x, y] = [at(a, key), at(b, key)];
      return x !== undefined && y !== undefined && same(x, y);
    })
  );
}

/**
 * Makes one change in the text of a file by splicing it in: comments, order, indents, line endings and every other line
 * stay as they are. The result is read again, and given only if it says exactly what was meant.
 */
export function editYaml(source: SourceText, edit: Edit): Edited {
  const before = parseYaml(source);
  if (before.tree === undefined || before.findings.length > 0)
    return { ok: false, why: worded`the file is not right as it is` };
  const { text } = source;
  const splice =
    edit.kind === 'set'
      ? setValue(text, before.tree, edit.path, edit.value)
      : appendItem(text, before.tree, edit.path, edit.value);
  if (typeof splice === 'string') return { ok: false, why: splice };
  const result = text.slice(0, splice.start) + splice.text + text.slice(splice.end);
  const after = parseYaml({ file: source.file, text: result });
  const meant = changed(plainOf(before.tree), edit);
  if (after.tree === undefined || after.findings.length > 0 || !same(plainOf(after.tree), meant))
    return { ok: false, why: worded`the change does not fit into the file as it is written` };
  return { ok: true, text: result };
}
