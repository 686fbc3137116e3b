import { paragraphs } from '../reports/layout.ts';
import type { Look } from '../reports/look.ts';
import { harmlessJson } from '../terminal/harmless.ts';
import { lookOf } from '../terminal/look.ts';
import { mayBePaged, paged } from '../terminal/pager.ts';
import { isFlagged, type Call } from './call.ts';

/** How the answer is to look where it goes. */
export function answerLook(call: Call): Promise<Look> {
  return lookOf(call.io.stdout, call.io.env, isFlagged(call, 'plain'));
}

export function wantsJson(call: Call): boolean {
  return isFlagged(call, 'json');
}

/** One document on standard output, and nothing else. */
export function printJson(call: Call, document: unknown): void {
  call.io.stdout.write(`${harmlessJson(JSON.stringify(document, undefined, 2))}\n`);
}

/** Prints what was done, which must be harmless, in lines that fit the screen. */
export async function tell(call: Call, text: string): Promise<void> {
  call.io.stdout.write(paragraphs(text, await answerLook(call)));
}

/** Prints a whole screen; one that is longer than the terminal goes to the pager, where the user has named one. */
export function print(call: Call, screen: string): void {
  if (!paged(call.io, screen, isFlagged(call, 'pager'))) call.io.stdout.write(screen);
}

/** Prints what is known at once, and the rest of the screen as soon as that is. */
export async function printAsKnown(call: Call, known: string, rest: () => Promise<string>): Promise<void> {
  if (mayBePaged(call.io, isFlagged(call, 'pager'))) print(call, known + (await rest()));
  else {
    call.io.stdout.write(known);
    call.io.stdout.write(await rest());
  }
}
