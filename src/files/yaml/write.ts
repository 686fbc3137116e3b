import type { Plain, PlainMap } from './tree.ts';

// Plain only where it cannot be taken for syntax, nor for what is no text at all.
const PLAIN = /^[\p{L}\p{N}][\p{L}\p{N} ,.:;%°²³/@+()*_'-]*$/u;
// `08:00` is a number to base 60 for readers of YAML 1.1.
const MISLEADING = /: |:$| $|^\d+(?::\d+)+$/;
const OTHER_TYPE = /^(?:true|false|null)$/i;
const LONGEST_PLAIN = 1000;

// Characters that JSON leaves as they are and YAML does not take raw.
const UNPRINTABLE = /[\u007F-\u009F\u2028\u2029\uFEFF\uFFFE\uFFFF]/g;

/** A text in double quotes. */
export function inQuotes(text: string): string {
  const escape = (c: string) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`;
  return JSON.stringify(text).replaceAll(UNPRINTABLE, escape);
}

/** A text as one YAML scalar, quoted where it must be; `flow`: between brackets, where a comma ends it. */
export function textAsYaml(text: string, flow = false): string {
  const isPlain =
    text.length <= LONGEST_PLAIN &&
    PLAIN.test(text) &&
    !MISLEADING.test(text) &&
    !OTHER_TYPE.test(text) &&
    !(flow && text.includes(','));
  return isPlain ? text : inQuotes(text);
}

function entriesOf(value: Exclude<Plain, string>): [string, Plain][] {
  return Object.entries(value as PlainMap);
}

/** Data on one line, between brackets. */
export function flowYaml(value: Plain): string {
  if (typeof value === 'string') return textAsYaml(value, true);
  if (Array.isArray(value)) return `[${value.map(flowYaml).join(', ')}]`;
  const entries = entriesOf(value).map(([key, v]) => `${textAsYaml(key, true)}: ${flowYaml(v)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}

function isShort(value: Plain): boolean {
  return typeof value === 'string' || Object.keys(value).length === 0;
}

function short(value: Plain): string {
  return typeof value === 'string' ? textAsYaml(value) : flowYaml(value);
}

function entryLines(key: string, value: Plain): string[] {
  if (isShort(value)) return [`${textAsYaml(key)}: ${short(value)}`];
  return [`${textAsYaml(key)}:`, ...yamlLines(value).map((line) => `  ${line}`)];
}

function itemLines(value: Plain): string[] {
  const [first = '', ...rest] = yamlLines(value);
  return [`- ${first}`, ...rest.map((line) => `  ${line}`)];
}

/** Data as lines of YAML, two spaces an indent. */
export function yamlLines(value: Plain): string[] {
  if (isShort(value)) return [short(value)];
  if (Array.isArray(value)) return (value as readonly Plain[]).flatMap(itemLines);
  return entriesOf(value as Exclude<Plain, string>).flatMap(([key, v]) => entryLines(key, v));
}
