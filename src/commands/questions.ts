import { refuse, type Read, type Reader } from '../files/quantities/read.ts';
import { adviseWord } from '../files/suggest.ts';
import { paragraphs } from '../reports/layout.ts';
import type { Look } from '../reports/look.ts';
import { canAsk } from '../terminal/can-ask.ts';
import { openDialogue, Ended, type Dialogue } from '../terminal/dialogue.ts';
import { harmless, harmlessLines } from '../terminal/harmless.ts';
import { lookOf } from '../terminal/look.ts';
import { CannotGoOn, isFlagged, textFlag, type Call } from './call.ts';
import { valueOf } from './flag-values.ts';
import { phrase, translated, worded } from '../words/worded.ts';
import { isWord, isWordOrLetter } from './answer-words.ts';

/** Something to be known: by an option, by asking, or as it usually is. */
export interface Question<T> {
  /** Its option, without the hyphens; absent: it can only be asked. */
  readonly flag?: string;
  /** In plain words. */
  readonly ask: string;
  /** More lines: choices, how something was reckoned. */
  readonly more?: readonly string[];
  /** What Enter means, as it would be typed; absent: it has to be said. */
  readonly usual?: string;
  /** What to type, where nothing is usual. */
  readonly example?: string;
  readonly read: Reader<T>;
}

/** Asks one question after the other. */
export interface Asker {
  /** Is there a person to talk to? */
  readonly asks: boolean;
  say(text: string): void;
  /** Does the option stand on the command line? */
  isSaid(flag: string): boolean;
  know<T>(question: Question<T>): Promise<T>;
}

/** As wide as the screen; the answer is typed behind its last line. */
function prompt<T>(question: Question<T>, look: Look): string {
  return `${paragraphs(promptText(question), look)} `;
}

function promptText<T>({ ask, more = [], usual, example }: Question<T>): string {
  const usually = usual === undefined || usual === '' ? '' : ` [${usual}]`;
  if (more.length > 0) return harmlessLines([ask, ...more.map((line) => `  ${line}`), ` ${usually || '>'}`].join('\n'));
  const like = usual === undefined && example !== undefined ? worded`, like ${example}` : '';
  return harmless(`${ask}${like}${usually}:`);
}

async function askUntilRight<T>(dialogue: Dialogue, question: Question<T>, look: Look): Promise<T> {
  for (;;) {
    const typed = (await dialogue.ask(prompt(question, look))).trim();
    const text = typed === '' ? question.usual : typed;
    const answer: Read<T> =
      text === undefined
        ? refuse(worded`has to be said`, worded`write it like ${question.example ?? '…'}`)
        : question.read(text);
    if (answer.ok) return answer.value;
    dialogue.say(harmless(`  ${text === undefined ? worded`this` : `"${text}"`} ${answer.why}: ${answer.write}`));
  }
}

/** What an option says, by its name without the hyphens before it. */
export function optionText(call: Call, flag: string): string | undefined {
  return textFlag(
    call,
    flag.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase()),
  );
}

function withoutAsking<T>({ flag, ask, more = [], usual, example, read }: Question<T>): T {
  const option = flag === undefined ? ask : `--${flag}`;
  if (usual !== undefined) return valueOf(option, usual, read(usual));
  const orNumber = more.length > 0 ? worded`, or its number` : '';
  const choices = more.map((line) => line.trim().replace(/^(\d+) +/, '$1: '));
  throw new CannotGoOn(
    worded`not said: ${ask}`,
    worded`write ${option} ${JSON.stringify(example ?? '…')}${orNumber}`,
    2,
    [],
    choices,
  );
}

/** Gives an asker to `act`; nobody is asked what an option says already, nor where there is no terminal. */
export async function asking<T>(call: Call, nothingDone: string, act: (asker: Asker) => Promise<T>): Promise<T> {
  const dialogue = canAsk(call.io) && !isFlagged(call, 'askNothing') ? openDialogue(call.io) : undefined;
  const look = await lookOf(call.io.stderr, call.io.env, isFlagged(call, 'plain'));
  const asker: Asker = {
    asks: dialogue !== undefined,
    say: (text) => dialogue?.say(text),
    isSaid: (flag) => optionText(call, flag) !== undefined,
    know: async (question) => {
      const { flag } = question;
      const written = flag === undefined ? undefined : optionText(call, flag);
      if (flag !== undefined && written !== undefined)
        return valueOf(`--${flag}`, written, question.read(written.trim()));
      return dialogue === undefined ? withoutAsking(question) : askUntilRight(dialogue, question, look);
    },
  };
  try {
    return await act(asker);
  } catch (error) {
    if (error instanceof Ended) dialogue?.say('');
    if (error instanceof Ended) throw new CannotGoOn(worded`stopped: ${nothingDone}`, undefined, 130);
    throw error;
  } finally {
    dialogue?.close();
  }
}

/** One of several by its word, where no numbers stand before them. */
export function oneWordOf<T extends string>(words: readonly T[]): Reader<T> {
  return (text) => {
    const word = words.find((each) => isWord(text, each));
    if (word !== undefined) return { ok: true, value: word };
    return refuse(worded`is none of these`, adviseWord(text, words.map(translated)));
  };
}

/** One of several, by its number or its word. */
export function oneOf<T extends string>(words: readonly T[]): Reader<T> {
  return (text) => {
    const word = /^\d{1,3}$/.test(text) ? words[Number(text) - 1] : undefined;
    if (word !== undefined) return { ok: true, value: word };
    const read = oneWordOf(words)(text);
    if (read.ok) return read;
    return { ...read, write: worded`write a number from 1 to ${words.length}; or ${read.write}` };
  };
}

/** Several of several, by their numbers or words; `none` is none of them. */
export function someOf<T extends string>(words: readonly T[]): Reader<readonly T[]> {
  const one = oneOf(words);
  return (text) => {
    if (text.trim() === '' || isWord(text, phrase('none'))) return { ok: true, value: [] };
    const each = text.split(/[,\s]+/).filter((word) => word !== '');
    const reads = each.map((word) => one(word));
    const wrong = reads.find((r) => !r.ok);
    if (wrong !== undefined) return wrong;
    return { ok: true, value: [...new Set(reads.flatMap((r) => (r.ok ? [r.value] : [])))] };
  };
}

/** `  1  pine`, line by line. */
export function numbered(words: readonly string[]): string[] {
  return words.map((word, i) => `${String(i + 1).padStart(2)}  ${word}`);
}

export const yesOrNo: Reader<boolean> = (text) => {
  if (isWordOrLetter(text, phrase('yes'))) return { ok: true, value: true };
  if (isWordOrLetter(text, phrase('no'))) return { ok: true, value: false };
  return refuse(worded`is neither yes nor no`, worded`write yes or no`);
};

/** A line of words for people. */
export const someWords: Reader<string> = (text) => {
  const plain = text.trim();
  if (plain === '') return refuse(worded`is empty`, worded`write some words`);
  return plain.length > 120
    ? refuse(worded`is longer than 120 characters`, worded`shorten it`)
    : { ok: true, value: plain };
};

/** The same reader, or nothing where nothing is written. */
export function ifAny<T>(read: Reader<T>): Reader<T | undefined> {
  return (text) => (text.trim() === '' || text.trim() === '-' ? { ok: true, value: undefined } : read(text));
}
