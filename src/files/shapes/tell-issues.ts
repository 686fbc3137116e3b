import type * as z from 'zod/mini';
import { adviseWord, nearest } from '../suggest.ts';
import { childOf, entryOf, type Node } from '../yaml/tree.ts';
import { toldIn, type Notes } from './notes.ts';
import { quoted } from './quoted.ts';
import { childSchema, innerWords, optionFor, unwrapped, type Spot } from './structure.ts';
import { editorWords } from './words.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

type Issue = z.core.$ZodIssue;

const MOST_UNKNOWN = 50;
const kindWords = { text: phrase('a single value'), list: phrase('a list'), map: phrase('keys with values') };

/** Keys of a map that misspelt ones most likely stand for: they need not be told to be missing as well. */
type Meant = Map<Node, Set<string>>;

interface Found extends Spot {
  /** Of a key that is not there: the key; the spot is then the map that lacks it. */
  readonly missing?: string;
  /** The key that the value stands behind. */
  readonly key?: Node;
}

/** The node that an issue is about and its schema, from the top down. */
function found(top: Spot, path: readonly PropertyKey[]): Found {
  let spot: Found = top;
  for (const step of path) {
    const key = typeof step === 'symbol' ? String(step) : step;
    const node = childOf(spot.node, key);
    const schema = childSchema(spot, key);
    if (node === undefined) return { ...spot, missing: String(key) };
    if (schema === undefined) return spot;
    const entry = entryOf(spot.node, String(key));
    spot = entry === undefined ? { node, schema } : { node, schema, key: entry.key };
  }
  return spot;
}

/** Does a single value stand there, and nothing else? */
const isOne = (schema: Spot['schema']) => ['string', 'enum'].includes(unwrapped(schema).type);

function tellWrongKind({ node, schema }: Spot, wanted: string, notes: Notes): void {
  const empty = node.kind === 'text' && node.text === '';
  notes.error(node, {
    code: empty ? 'empty-value' : 'wrong-kind',
    message: empty
      ? worded`the value is missing`
      : worded`${wanted} must stand here, not ${translated(kindWords[node.kind])}`,
    advice:
      isOne(schema) && !empty ? worded`write only ${wanted}, without brackets or dashes` : worded`write ${wanted}`,
  });
}

/** What to write instead of a key that is not known: what it most likely stands for; else it may only have to go. */
function adviseKey(key: string, guess: string | undefined, known: readonly string[]): string {
  if (guess === undefined && known.length > 0) return worded`take it out, or ${adviseWord(key, known)}`;
  return known.length > 0 ? adviseWord(key, known) : worded`take it out`;
}

function tellUnknownKeys({ node, schema }: Spot, keys: readonly string[], meant: Meant, notes: Notes): void {
  const def = unwrapped(schema);
  const option = def.type === 'union' ? def.options[optionFor(node, def.options) ?? -1] : undefined;
  if (option !== undefined) {
    tellUnknownKeys({ node, schema: option }, keys, meant, notes);
    return;
  }
  const known = def.type === 'object' ? Object.keys(def.shape) : [];
  const unused = known.filter((key) => entryOf(node, key) === undefined);
  const guesses = new Set<string>();
  for (const key of keys.slice(0, MOST_UNKNOWN)) {
    const guess = nearest(key, unused);
    if (guess !== undefined) guesses.add(guess);
    notes.error(entryOf(node, key)?.key ?? node, {
      code: 'unknown-key',
      message: worded`${quoted(key)} does not belong here`,
      advice: adviseKey(key, guess, unused.length > 0 ? unused : known),
    });
  }
  meant.set(node, guesses);
}

function tellMissing({ node, schema }: Spot, key: string, notes: Notes): void {
  const field = childSchema({ node, schema }, key);
  const about = field && editorWords.get(field)?.description;
  const what = innerWords(schema).what ?? worded`this`;
  const message = worded`${what} needs ${key}: too`;
  const advice = about === undefined ? worded`write ${key}: …` : worded`write ${key}: … (${about})`;
  notes.error(node, { code: 'missing-key', message, advice });
}

/** No form of several fits: what is wrong is told of the one that is meant. */
function tellForms(spot: Spot, errors: readonly (readonly Issue[])[], notes: Notes): void {
  const { node, schema } = spot;
  const def = unwrapped(schema);
  const { wanted, noForm } = innerWords(schema);
  const options = def.type === 'union' ? def.options : [];
  const index = optionFor(node, options);
  const option = index === undefined ? undefined : options[index];
  const empty = node.kind === 'text' && node.text === '';
  if (index !== undefined && option !== undefined && !(empty && wanted !== undefined))
    tellIssues({ node, schema: option }, errors[index] ?? [], notes);
  else if (noForm !== undefined) notes.error(node, noForm);
  else tellWrongKind(spot, wanted ?? (options[0] && innerWords(options[0]).wanted) ?? worded`something else`, notes);
}

function tellIssue(top: Spot, issue: Issue, meant: Meant, notes: Notes): void {
  const spot = found(top, issue.path);
  const { node, schema, missing } = spot;
  if (missing !== undefined) {
    if (meant.get(node)?.has(missing) !== true) tellMissing(spot, missing, notes);
    return;
  }
  const told = toldIn(issue);
  if (told !== undefined) {
    const at = told.onKey ? (spot.key ?? node) : node;
    if (told.severity === 'warning') notes.warn(at, told.remark);
    else notes.error(at, told.remark);
    return;
  }
  if (issue.code === 'invalid_union') {
    tellForms(spot, issue.errors, notes);
    return;
  }
  const { wanted = worded`something else`, code } = innerWords(schema);
  if (issue.code !== 'invalid_value' || node.kind !== 'text' || node.text === '') tellWrongKind(spot, wanted, notes);
  else
    notes.error(node, {
      code: code ?? 'wrong-kind',
      message: worded`${quoted(node.text)} is not ${wanted}`,
      advice: adviseWord(node.text, issue.values.map(String)),
    });
}

/** Says in plain words, at the place in the file, what a schema has found wrong with it. */
export function tellIssues(top: Spot, issues: readonly Issue[], notes: Notes): void {
  const meant: Meant = new Map();
  for (const issue of issues)
    if (issue.code === 'unrecognized_keys') tellUnknownKeys(found(top, issue.path), issue.keys, meant, notes);
  for (const issue of issues) if (issue.code !== 'unrecognized_keys') tellIssue(top, issue, meant, notes);
}
