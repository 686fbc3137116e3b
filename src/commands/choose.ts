import { adviseChoice, adviseWord } from '../files/suggest.ts';
import { canAsk } from '../terminal/can-ask.ts';
import { harmless } from '../terminal/harmless.ts';
import { CannotGoOn, type Call } from './call.ts';
import { worded } from '../words/worded.ts';

/** Something that a person can name at the command line. */
export interface Choice {
  readonly id: string;
  /** What it may be called, shortest first: `enamel-1`, `body/enamel-1`. */
  readonly keys: readonly string[];
  /** What it may be called where nothing is called so by its keys: the desk of `writing-desk`. */
  readonly alsoCalled?: readonly string[];
  /** What it is, for a person who has to choose. */
  readonly label: string;
}

/** Does `key` begin as `word` does, part by part between the slashes? */
function begins(key: string, word: string): boolean {
  const parts = key.toLowerCase().split('/');
  const words = word.toLowerCase().split('/');
  return parts.length === words.length && words.every((w, i) => parts[i]?.startsWith(w));
}

/** All that `word` may mean: what is called just so, else what begins so, else what is also called by what begins so. */
export function meant<T extends Choice>(word: string, choices: readonly T[]): readonly T[] {
  const tries = [
    choices.filter((c) => c.keys.includes(word)),
    choices.filter((c) => c.keys.some((key) => begins(key, word))),
    choices.filter((c) => c.alsoCalled?.some((key) => begins(key, word))),
  ];
  return tries.find((found) => found.length > 0) ?? [];
}

type Kind = 'piece' | 'step' | 'hand';

const noSuch: Readonly<Record<Kind, (word: string) => string>> = {
  piece: (word) => worded`there is no piece "${word}"`,
  step: (word) => worded`there is no step "${word}"`,
  hand: (word) => worded`there is no hand "${word}"`,
};

const several: Readonly<Record<Kind, (word: string, count: number) => string>> = {
  piece: (word, count) => worded`"${word}" may mean ${count} pieces`,
  step: (word, count) => worded`"${word}" may mean ${count} steps`,
  hand: (word, count) => worded`"${word}" may mean ${count} hands`,
};

/**
 * The one that `word` means; a person at a terminal is asked if there are several.
 * @throws CannotGoOn if there is none, or if there are several and nobody to ask.
 */
export async function choose<T extends Choice>(
  call: Call,
  what: Kind,
  word: string,
  choices: readonly T[],
): Promise<T> {
  const found = meant(word, choices);
  const [only] = found;
  if (only === undefined)
    throw new CannotGoOn(
      noSuch[what](word),
      adviseWord(
        word,
        choices.flatMap((c) => c.keys.slice(0, 1)),
      ),
    );
  return found.length === 1 ? only : chooseAmong(call, several[what](word, found.length), found);
}

/** One of several: the person is asked if there is one. */
export async function chooseAmong<T extends Choice>(call: Call, question: string, choices: readonly T[]): Promise<T> {
  // What may be typed: a piece's id, a step with its section.
  const names = choices.map((c) => (c.keys.includes(c.id) ? c.id : (c.keys.at(-1) ?? c.id)));
  const among = new CannotGoOn(question, adviseChoice(names));
  if (!canAsk(call.io)) throw among;
  const { askWhich } = await import('../terminal/ask.ts');
  const index = await askWhich(
    call.io,
    `${harmless(question)}:`,
    choices.map((c) => harmless(c.label)),
  );
  const chosen = index === undefined ? undefined : choices[index];
  if (chosen === undefined) throw among;
  return chosen;
}
