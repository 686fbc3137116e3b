import {
  COLLECTION_STYLE,
  EVENT_ID,
  getScalarValue,
  parseEvents,
  SCALAR_STYLE,
  YAMLException,
  type Event,
  type ScalarEvent,
} from 'js-yaml';
import type { Finding } from '../../model/finding.ts';
import { isForbiddenName } from '../quantities/plain.ts';
import { placeAt, type SourceText } from '../source-text.ts';
import { syntaxWords } from './syntax-words.ts';
import type { MapEntry, Node, TextNode } from './tree.ts';

const DEEPEST = 64;
const LONGEST_TEXT = 10_000;
const MOST_FAULTS = 100;
const ALIAS_ADVICE = 'write the value out, in quotes if it begins with & or *';

export interface Parsed {
  /** Absent where the text has no sense as a whole. */
  readonly tree?: Node;
  readonly findings: readonly Finding[];
}

interface Fault {
  readonly offset: number;
  readonly code: string;
  readonly message: string;
  readonly advice: string;
}

function styleOf(event: ScalarEvent): TextNode['style'] {
  if (event.style === SCALAR_STYLE.PLAIN) return 'plain';
  if (event.style === SCALAR_STYLE.SINGLE_QUOTED) return 'single-quoted';
  return event.style === SCALAR_STYLE.DOUBLE_QUOTED ? 'double-quoted' : 'block';
}

function textNode(source: string, event: ScalarEvent, after: number): TextNode {
  const style = styleOf(event);
  if (event.valueStart < 0) return { kind: 'text', text: '', style: 'plain', start: after, end: after };
  const quote = style === 'single-quoted' || style === 'double-quoted' ? 1 : 0;
  return {
    kind: 'text',
    text: getScalarValue(source, event),
    style,
    start: event.valueStart - quote,
    end: event.valueEnd + quote,
  };
}

/** Builds the tree of one document out of the parser's flat events, and collects what is not allowed in it. */
class TreeBuilder {
  readonly faults: Fault[] = [];
  private next = 0;
  private reached = 0;

  private readonly source: string;
  private readonly file: SourceText;
  private readonly events: readonly Event[];

  constructor(file: SourceText, events: readonly Event[]) {
    this.file = file;
    this.source = file.text;
    this.events = events;
  }

  document(): Node | undefined {
    const first = this.events[this.next];
    this.next += 1;
    if (first?.type !== EVENT_ID.DOCUMENT) return undefined;
    if (first.directives.length > 0)
      this.fault(0, 'yaml-feature', 'lines that begin with % are not used here', 'take the line out');
    const node = this.node();
    this.next += 1;
    const more = this.events[this.next];
    if (more !== undefined && node !== undefined)
      this.fault(
        this.offsetOfSecondDocument(),
        'several-documents',
        'the file holds more than one document',
        'take out the --- line',
      );
    return node;
  }

  private offsetOfSecondDocument(): number {
    const index = this.source.slice(this.reached).search(/^---/m);
    return index < 0 ? this.reached : this.reached + index;
  }

  private node(): Node | undefined {
    const event = this.events[this.next];
    if (event === undefined || event.type === EVENT_ID.POP || event.type === EVENT_ID.DOCUMENT) return undefined;
    this.next += 1;
    if (event.type === EVENT_ID.ALIAS) {
      this.fault(event.anchorStart - 1, 'yaml-feature', 'aliases (*name) are not used here', ALIAS_ADVICE);
      return { kind: 'text', text: '', style: 'plain', start: event.anchorStart, end: event.anchorEnd };
    }
    if (event.anchorStart >= 0)
      this.fault(event.anchorStart - 1, 'yaml-feature', 'anchors (&name) are not used here', ALIAS_ADVICE);
    if (event.tagStart >= 0)
      this.fault(
        event.tagStart,
        'yaml-feature',
        'tags (!name) are not used here',
        'write the plain value, in quotes if it begins with !',
      );
    if (event.type === EVENT_ID.SCALAR) return this.text(event);
    const start = event.start;
    const flow = event.style === COLLECTION_STYLE.FLOW;
    this.reached = Math.max(this.reached, start);
    if (event.type === EVENT_ID.SEQUENCE) {
      const items = this.items();
      return { kind: 'list', items, flow, start, end: this.closed(flow, ']') };
    }
    const entries = this.entries();
    return { kind: 'map', entries, flow, start, end: this.closed(flow, '}') };
  }

  private text(event: ScalarEvent): TextNode {
    const node = textNode(this.source, event, this.reached);
    this.reached = Math.max(this.reached, node.end);
    if (node.text.length <= LONGEST_TEXT) return node;
    this.fault(node.start, 'too-long', `the text is longer than ${LONGEST_TEXT} characters`, 'shorten it');
    return { ...node, text: node.text.slice(0, 100) };
  }

  /** The end of a collection: behind its bracket, or its last part. */
  private closed(flow: boolean, bracket: string): number {
    this.next += 1;
    if (!flow) return this.reached;
    let at = this.reached;
    // Between the last part and the bracket only blanks, a comma and comments can stand.
    while (at < this.source.length && this.source[at] !== bracket) {
      if (this.source[at] === '#') while (at < this.source.length && !'\r\n'.includes(this.source[at] ?? '')) at += 1;
      else at += 1;
    }
    this.reached = Math.min(at + 1, this.source.length);
    return this.reached;
  }

  private items(): Node[] {
    const items: Node[] = [];
    for (;;) {
      const item = this.node();
      if (item === undefined) return items;
      items.push(item);
    }
  }

  private entries(): MapEntry[] {
    const entries: MapEntry[] = [];
    const seen = new Map<string, number>();
    for (;;) {
      const key = this.node();
      if (key === undefined) return entries;
      const value = this.node();
      if (value === undefined) return entries;
      if (key.kind !== 'text') this.fault(key.start, 'bad-key', 'a key must be a word', 'write key: value');
      else if (this.isNewKey(key, seen)) entries.push({ key, value });
    }
  }

  private isNewKey(key: TextNode, seen: Map<string, number>): boolean {
    if (isForbiddenName(key.text)) {
      this.fault(key.start, 'forbidden-name', `"${key.text}" cannot be a name`, 'choose another word');
      return false;
    }
    const before = seen.get(key.text);
    seen.set(key.text, before ?? key.start);
    if (before === undefined) return true;
    if (this.faults.length < MOST_FAULTS) {
      const first = placeAt(this.file, before);
      const message = `"${key.text}" stands twice, first on line ${first.line}, column ${first.column}`;
      this.fault(key.start, 'duplicate-key', message, 'keep one of the two');
    }
    return false;
  }

  private fault(offset: number, code: string, message: string, advice: string): void {
    if (this.faults.length < MOST_FAULTS) this.faults.push({ offset: Math.max(0, offset), code, message, advice });
  }
}

function syntaxFinding(source: SourceText, error: unknown): Finding {
  if (!(error instanceof YAMLException)) throw error;
  const offset = error.mark?.position ?? source.text.length;
  return { code: 'yaml-syntax', severity: 'error', ...syntaxWords(error.reason), place: placeAt(source, offset) };
}

/** Parses one YAML document. Aliases, anchors, tags, directives, doubled keys and further documents are refused. */
export function parseYaml(source: SourceText): Parsed {
  let events: Event[];
  try {
    events = parseEvents(source.text, { maxDepth: DEEPEST });
  } catch (error) {
    return { findings: [syntaxFinding(source, error)] };
  }
  const builder = new TreeBuilder(source, events);
  const tree = builder.document();
  const findings = builder.faults.map((f): Finding => ({
    code: f.code,
    severity: 'error',
    message: f.message,
    advice: f.advice,
    place: placeAt(source, f.offset),
  }));
  if (tree === undefined || (tree.kind === 'text' && tree.text === ''))
    return {
      findings: [
        ...findings,
        { code: 'empty-file', severity: 'error', message: 'the file is empty', place: placeAt(source, 0) },
      ],
    };
  return { tree, findings };
}
