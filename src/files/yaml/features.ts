import type { CST } from 'yaml';
import type { Fault } from './fault.ts';
import { phrase, translated } from '../../words/worded.ts';

/** No file of a shop is nested deeper; brackets that were never closed are. */
const DEEPEST = 64;
const ALIAS_ADVICE = phrase('write the value out, in quotes if it begins with & or *');

const refusals: Readonly<Record<string, readonly [string, string]>> = {
  alias: [phrase('aliases (*name) are not used here'), ALIAS_ADVICE],
  anchor: [phrase('anchors (&name) are not used here'), ALIAS_ADVICE],
  tag: [phrase('tags (!name) are not used here'), phrase('write the plain value, in quotes if it begins with !')],
  directive: [phrase('lines that begin with % are not used here'), phrase('take the line out')],
};

function refusal(token: CST.Token): Fault[] {
  const [message, advice] = refusals[token.type] ?? [];
  return message === undefined || advice === undefined
    ? []
    : [{ offset: token.offset, code: 'yaml-feature', message: translated(message), advice: translated(advice) }];
}

interface Parts {
  readonly before: readonly CST.SourceToken[];
  readonly inner: readonly CST.Token[];
}

function partsOf(token: CST.Token): Parts {
  if (token.type === 'document') return { before: token.start, inner: token.value ? [token.value] : [] };
  if (token.type === 'block-scalar')
    return { before: token.props.filter((p) => p.type !== 'block-scalar-header') as CST.SourceToken[], inner: [] };
  if (!('items' in token)) return { before: [], inner: [] };
  const before: CST.SourceToken[] = [];
  const inner: CST.Token[] = [];
  for (const item of token.items) {
    before.push(...item.start, ...(item.sep ?? []));
    if (item.key) inner.push(item.key);
    if (item.value) inner.push(item.value);
  }
  return { before, inner };
}

/**
 * What of YAML is not used here: aliases, anchors, tags, directives, and nesting past all sense. It is looked for in the
 * tokens, without recursion and before anything is built of them. `tooDeep` is the first token that lies too deep.
 */
export function unusedFeatures(tokens: readonly CST.Token[]): {
  readonly faults: readonly Fault[];
  readonly tooDeep?: CST.Token;
} {
  const faults: Fault[] = [];
  const waiting = tokens.map((token) => ({ token, depth: 0 })).reverse();
  for (;;) {
    const next = waiting.pop();
    if (next === undefined) break;
    const { token, depth } = next;
    if (depth > DEEPEST) return { faults, tooDeep: token };
    faults.push(...refusal(token));
    const { before, inner } = partsOf(token);
    for (const mark of before) faults.push(...refusal(mark));
    const deeper = (child: CST.Token) => depth + ('items' in child ? 1 : 0);
    for (const child of [...inner].reverse()) waiting.push({ token: child, depth: deeper(child) });
  }
  return { faults };
}
