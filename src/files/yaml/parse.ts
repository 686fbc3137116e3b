import {
  Composer,
  isMap,
  isScalar,
  isSeq,
  Parser,
  Scalar,
  type CST,
  type Document,
  type ParsedNode,
  type YAMLError,
} from 'yaml';
import type { Finding } from '../../model/finding.ts';
import { placeAt, type SourceText } from '../source-text.ts';
import { isForbiddenName } from '../quantities/plain.ts';
import type { Fault } from './fault.ts';
import { unusedFeatures } from './features.ts';
import { openBracketWords, syntaxWords } from './syntax-words.ts';
import type { ListNode, MapEntry, MapNode, Node, TextNode } from './tree.ts';
import { worded } from '../../words/worded.ts';

const LONGEST_TEXT = 10_000;
const MOST_FAULTS = 100;
// All that YAML 1.2.2 (section 5.1, c-printable) leaves out.
const UNPRINTABLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u0084\u0086-\u009F\uFFFE\uFFFF]/;

export interface Parsed {
  /** Absent where the text has no sense as a whole. */
  readonly tree?: Node;
  readonly findings: readonly Finding[];
}

const styles: Readonly<Record<string, TextNode['style']>> = {
  [Scalar.QUOTE_SINGLE]: 'single-quoted',
  [Scalar.QUOTE_DOUBLE]: 'double-quoted',
  [Scalar.BLOCK_FOLDED]: 'block',
  [Scalar.BLOCK_LITERAL]: 'block',
};

function emptyText(at: number): TextNode {
  return { kind: 'text', text: '', style: 'plain', start: at, end: at };
}

/** Turns what the parser composed into the tree, and collects what is not allowed in it. */
function treeBuilder(source: SourceText, fault: (fault: Fault) => void) {
  const textOf = (node: ParsedNode, after: number): TextNode => {
    const [start, end] = node.range;
    if (!isScalar(node)) return emptyText(after);
    const style = styles[node.type ?? ''] ?? 'plain';
    const text = typeof node.value === 'string' ? node.value : '';
    if (style === 'plain' && text === '') return emptyText(after);
    if (text.length <= LONGEST_TEXT) return { kind: 'text', text, style, start, end };
    const message = worded`the text is longer than ${LONGEST_TEXT} characters`;
    fault({ offset: start, code: 'too-long', message, advice: worded`shorten it` });
    return { kind: 'text', text: text.slice(0, 100), style, start, end };
  };

  const isNewKey = (key: TextNode, seen: Map<string, number>): boolean => {
    if (isForbiddenName(key.text)) {
      const message = worded`"${key.text}" cannot be a name`;
      fault({ offset: key.start, code: 'forbidden-name', message, advice: worded`choose another word` });
      return false;
    }
    const before = seen.get(key.text);
    seen.set(key.text, before ?? key.start);
    if (before === undefined) return true;
    const first = placeAt(source, before);
    const message = worded`"${key.text}" stands twice, first on line ${first.line}, column ${first.column}`;
    fault({ offset: key.start, code: 'duplicate-key', message, advice: worded`take one of the two out` });
    return false;
  };

  const mapOf = (
    node: ParsedNode & { items: readonly { key: ParsedNode | null; value: ParsedNode | null }[] },
  ): MapNode => {
    const flow = 'flow' in node && node.flow;
    const [start, closed] = node.range;
    const entries: MapEntry[] = [];
    const seen = new Map<string, number>();
    let end = start;
    for (const pair of node.items) {
      const key = pair.key === null ? emptyText(end) : nodeOf(pair.key, pair.key.range[0]);
      const value = pair.value === null ? emptyText(key.end) : nodeOf(pair.value, key.end);
      end = Math.max(key.end, value.end);
      if (key.kind !== 'text')
        fault({
          offset: key.start,
          code: 'bad-key',
          message: worded`a key must be a word`,
          advice: worded`write key: value`,
        });
      else if (isNewKey(key, seen)) entries.push({ key, value });
    }
    return { kind: 'map', entries, flow, start, end: flow ? closed : end };
  };

  const listOf = (node: ParsedNode & { items: readonly unknown[] }): ListNode => {
    const flow = 'flow' in node && node.flow;
    const [start, closed] = node.range;
    const items = (node.items as readonly ParsedNode[]).map((item) => nodeOf(item, item.range[0]));
    return { kind: 'list', items, flow, start, end: flow ? closed : (items.at(-1)?.end ?? start) };
  };

  /** `after`: where an empty value is said to stand. */
  const nodeOf = (node: ParsedNode, after: number): Node => {
    if (isMap(node)) return mapOf(node);
    return isSeq(node) ? listOf(node) : textOf(node, after);
  };
  return nodeOf;
}

function compose(tokens: readonly CST.Token[], length: number): Document.Parsed | undefined {
  const composer = new Composer({ schema: 'failsafe', uniqueKeys: false, logLevel: 'silent', strict: true });
  const [document] = [...composer.compose(tokens, true, length)];
  return document;
}

/** Refused in plainer words already, where they stand. */
const alreadyRefused: readonly string[] = ['TAG_RESOLVE_FAILED', 'BAD_ALIAS', 'BAD_DIRECTIVE'];

/** The first fault of syntax: those behind it mostly follow from it. */
function syntaxFault(
  document: Document.Parsed,
  text: string,
  tokens: readonly CST.Token[],
  refused: boolean,
): Fault | undefined {
  const all = [...document.errors, ...document.warnings]
    .filter((e) => !(refused && alreadyRefused.includes(e.code)))
    .sort((a, b) => a.pos[0] - b.pos[0]);
  const [first] = all;
  return (
    first &&
    (indentedTooFar(text, first) ??
      leftOpen(tokens, first) ?? {
        offset: first.pos[0],
        code: 'yaml-syntax',
        ...syntaxWords(first.code, first.message),
      })
  );
}

/** A key on the line below a value, further in than the value's own key: the parser takes both for one. */
function indentedTooFar(text: string, { code, pos }: YAMLError): Fault | undefined {
  if (code !== 'BLOCK_AS_IMPLICIT_KEY') return undefined;
  const lineStart = text.lastIndexOf('\n', pos[0]) + 1;
  const [, above = '', indent = '', below = ''] =
    /^(( *)(?:[^ \n][^\n]*)?\n(?:[ \t]*\n)*)( +)[\w-]+:(?:[ \n]|$)/.exec(text.slice(lineStart)) ?? [];
  if (below.length <= indent.length) return undefined;
  return {
    offset: lineStart + above.length + below.length,
    code: 'yaml-syntax',
    message: worded`this line begins further in than the one above it, which is complete`,
    advice: worded`let it begin right under the line above`,
  };
}

/** Where the parser says only further on that something is open, the place to mend is where it begins. */
function leftOpen(tokens: unknown, { code, message }: YAMLError): Fault | undefined {
  if (code !== 'MISSING_CHAR' && code !== 'BAD_INDENT') return undefined;
  const [start, words] = message.includes('quote')
    ? [startOf(tokens, isOpenQuote), syntaxWords(code, message)]
    : [startOf(tokens, isOpenBracket), openBracketWords()];
  return start === undefined ? undefined : { offset: start, code: 'yaml-syntax', ...words };
}

type TokenTest = (token: Readonly<Record<string, unknown>>) => boolean;

const isOpenQuote: TokenTest = ({ type, source }) =>
  (type === 'double-quoted-scalar' || type === 'single-quoted-scalar') &&
  typeof source === 'string' &&
  (source.length === 1 || !source.endsWith(source.charAt(0)));

const isOpenBracket: TokenTest = ({ type, end }) =>
  type === 'flow-collection' &&
  Array.isArray(end) &&
  !end.some(({ type: kind }: { readonly type?: unknown }) => kind === 'flow-map-end' || kind === 'flow-seq-end');

/** The offset of the first token that passes; what lies deeper than any file of a shop was refused before. */
function startOf(part: unknown, passes: TokenTest): number | undefined {
  if (typeof part !== 'object' || part === null) return undefined;
  const token = part as Readonly<Record<string, unknown>>;
  if (passes(token)) {
    const { start, offset } = token;
    const opening = typeof start === 'object' && start !== null && 'offset' in start ? start.offset : offset;
    return typeof opening === 'number' ? opening : undefined;
  }
  for (const inner of Object.values(token)) {
    const found = startOf(inner, passes);
    if (found !== undefined) return found;
  }
  return undefined;
}

function faultsAndTree(source: SourceText): { readonly faults: readonly Fault[]; readonly tree?: Node } {
  const unprintable = source.text.search(UNPRINTABLE);
  if (unprintable >= 0) {
    const message =
      source.text[unprintable] === '\u0000'
        ? worded`the file holds a NUL character`
        : worded`the file holds a control character`;
    const advice = worded`take it out: it cannot be seen in most editors`;
    return { faults: [{ offset: unprintable, code: 'yaml-syntax', message, advice }] };
  }
  const tokens = [...new Parser().parse(source.text)];
  const first = tokens.findIndex((token) => token.type === 'document');
  const second = tokens.find((token, index) => index > first && token.type === 'document');
  const own = second === undefined ? tokens : tokens.slice(0, tokens.indexOf(second));
  const { faults: refused, tooDeep } = unusedFeatures(own);
  if (tooDeep !== undefined) {
    const message = worded`this is nested too deep, more than 64 levels`;
    const advice = worded`no file of a shop is that deep: look for brackets that were never closed`;
    return { faults: [{ offset: tooDeep.offset, code: 'yaml-syntax', message, advice }] };
  }
  const document = compose(own, second?.offset ?? source.text.length);
  const wrong = document && syntaxFault(document, source.text, own, refused.length > 0);
  if (wrong !== undefined) return { faults: [wrong] };
  const faults = [...refused];
  if (second !== undefined) {
    const message = worded`the file holds more than one document`;
    faults.push({ offset: second.offset, code: 'several-documents', message, advice: worded`take out the --- line` });
  }
  if (document?.contents == null) return { faults };
  const build = treeBuilder(source, (fault) => {
    // The place of a doubled key is looked up, and a hostile file has many.
    if (faults.length < MOST_FAULTS) faults.push(fault);
  });
  return { faults, tree: build(document.contents, document.contents.range[0]) };
}

/** Parses one YAML document. Aliases, anchors, tags, directives, doubled keys and further documents are refused. */
export function parseYaml(source: SourceText): Parsed {
  const { faults, tree } = faultsAndTree(source);
  const findings = faults
    .slice(0, MOST_FAULTS)
    .map(({ offset, ...fault }): Finding => ({ severity: 'error', ...fault, place: placeAt(source, offset) }));
  if (tree !== undefined && (tree.kind !== 'text' || tree.text !== '')) return { tree, findings };
  if (findings.some((f) => f.code === 'yaml-syntax')) return { findings };
  return {
    findings: [
      ...findings,
      {
        code: 'empty-file',
        severity: 'error',
        message: worded`the file is empty`,
        advice: worded`write what belongs in it, or take the file away`,
        place: placeAt(source, 0),
      },
    ],
  };
}
