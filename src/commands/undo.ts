import type { Entry } from '../model/journal.ts';
import { CannotGoOn, type Call, type ExitCode } from './call.ts';
import { enter } from './enter.ts';
import { openShop } from './open-shop.ts';
import { worded } from '../words/worded.ts';

/** The last entry that still stands. */
export function lastStanding(entries: readonly Entry[]): Entry | undefined {
  const gone = new Set(entries.flatMap(({ deed }) => (deed.kind === 'undo' ? [deed.entry] : [])));
  return entries.findLast((e) => e.deed.kind !== 'undo' && !gone.has(e.number));
}

function sayDeed({ number, deed }: Entry): string {
  const about = 'task' in deed ? deed.task : 'piece' in deed ? deed.piece : '';
  return worded`entry ${number} taken back (${deed.kind} ${about})`;
}

/** Takes back the last entry of the journal; the entry stays there, with the note that it was taken back. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const last = lastStanding(shop.book.journal);
  if (last === undefined) throw new CannotGoOn(worded`the journal holds nothing to take back`, undefined, 1);
  // Under the lock the journal may hold more than was read: only what the person was told of is taken back.
  const deedsOf = (entries: readonly Entry[]) => {
    if (lastStanding(entries)?.number !== last.number)
      throw new CannotGoOn(worded`the journal was written to meanwhile`, worded`look at it again, then undo`, 75);
    return [{ kind: 'undo', entry: last.number } as const];
  };
  return enter(call, shop, 'undo', deedsOf, sayDeed(last));
}
