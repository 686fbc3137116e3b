/** What one text is in another language, by the plural category of the number that it counts where it counts one. */
export type Wording = string | Readonly<Partial<Record<Intl.LDMLPluralRule, string>> & { readonly other: string }>;

/** A language other than English, in which all texts are written in the sources. */
export interface Language {
  /** BCP 47, e.g. `es`. */
  readonly code: string;
  /** What stands for an English text, whose blanks are `{0}`, `{1}` …; undefined where nothing does. */
  readonly wordingOf: (english: string) => Wording | undefined;
}

let spoken: Language | undefined;

/** From now on all is said in that language; in English where none is named. */
export function speak(language?: Language): void {
  spoken = language;
}

/** BCP 47 code of what is spoken. */
export function spokenCode(): string {
  return spoken?.code ?? 'en';
}

const patterns = new WeakMap<TemplateStringsArray, string>();

function patternOf(texts: TemplateStringsArray): string {
  let pattern = patterns.get(texts);
  if (pattern === undefined) {
    pattern = texts.reduce((before, text, i) => `${before}{${i - 1}}${text}`);
    patterns.set(texts, pattern);
  }
  return pattern;
}

function filled(pattern: string, values: readonly string[]): string {
  return pattern.replaceAll(/\{(\d+)\}/g, (blank, i) => values[Number(i)] ?? blank);
}

const plurals = new Map<string, Intl.PluralRules>();

function pluralOf(count: number, code: string): Intl.LDMLPluralRule {
  let rules = plurals.get(code);
  if (rules === undefined) plurals.set(code, (rules = new Intl.PluralRules(code)));
  return rules.select(count);
}

function chosen(wording: Wording, count = 0): string {
  return typeof wording === 'string' ? wording : (wording[pluralOf(count, spokenCode())] ?? wording.other);
}

/** A text for people, its blanks filled: `` worded`Nothing to do on ${day}` ``. Numbers get the decimal mark of the language. */
export function worded(texts: TemplateStringsArray, ...values: readonly (string | number)[]): string {
  if (spoken === undefined) return String.raw({ raw: texts }, ...values);
  const pattern = patternOf(texts);
  const words = values.map((value) => (typeof value === 'number' ? marked(String(value)) : value));
  return filled(chosen(spoken.wordingOf(pattern) ?? pattern), words);
}

/** A text for people that `translated` says later, when it is known in which language. */
export function phrase<const T extends string>(text: T): T {
  return text;
}

const sentenceEnd = /(?<=[.!?]) +/;

/** A text that is said later: a phrase, or what words it. */
export type Later = string | (() => string);

/** A phrase, or a text that came with Drybench, as a whole or sentence by sentence; any other text stays as it is. */
export function translated(text: Later): string {
  if (typeof text !== 'string') return text();
  if (spoken === undefined) return text;
  const whole = spoken.wordingOf(text);
  if (whole !== undefined) return chosen(whole);
  const { wordingOf } = spoken;
  return text
    .split(sentenceEnd)
    .map((sentence) => chosen(wordingOf(sentence) ?? sentence))
    .join(' ');
}

/** A number of things: `counted(3, '{0} step', '{0} steps')`. Another language has its own forms under the second. */
export function counted(count: number, one: string, many: string): string {
  const english = count === 1 ? one : many;
  if (spoken === undefined) return filled(english, [String(count)]);
  const wording = spoken.wordingOf(many);
  return filled(wording === undefined ? english : chosen(wording, count), [marked(String(count))]);
}

function joined(items: readonly string[], type: 'conjunction' | 'disjunction', english: string): string {
  if (spoken === undefined) return items.join(english);
  return new Intl.ListFormat(spoken.code, { type }).format(items);
}

/** `body and legs` */
export function joinedByAnd(items: readonly string[]): string {
  return joined(items, 'conjunction', ' and ');
}

/** `bench or floor` */
export function joinedByOr(items: readonly string[]): string {
  return joined(items, 'disjunction', ' or ');
}

const decimalMarks = new Map<string, string>();

function decimalMark(code: string): string {
  let mark = decimalMarks.get(code);
  if (mark === undefined) {
    mark = new Intl.NumberFormat(code).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.';
    decimalMarks.set(code, mark);
  }
  return mark;
}

/** A number in plain digits, as `toFixed` writes it, with the decimal mark of the language. */
export function marked(digits: string): string {
  return spoken === undefined ? digits : digits.replace('.', decimalMark(spoken.code));
}
