import type { Choice } from '../reports/calendar/calendar-of.ts';
import { eventKinds, type EventKind } from '../reports/calendar/event.ts';
import { CannotGoOn, numberFlag, textFlag, type Call } from './call.ts';
import { choose } from './choose.ts';
import { choosePiece } from './name-things.ts';
import type { OpenShop } from './open-shop.ts';
import { worded } from '../words/worded.ts';

/** An hour, to finish what is in hand and set up. */
const usualWarnMinutes = 60;

function kindsOf(written: string): readonly EventKind[] {
  return written.split(',').map((word) => {
    const kind = eventKinds.find((k) => k === word.trim() || `${k}s` === word.trim());
    if (kind !== undefined) return kind;
    throw new CannotGoOn(
      worded`--only "${word}" is no kind of entry`,
      worded`write one or more of ${eventKinds.join(',')}`,
    );
  });
}

async function handOf(call: Call, { book }: OpenShop, word: string): Promise<string> {
  const hands = book.shop.hands.map((hand) => ({ id: hand.id, keys: [hand.id], label: hand.name }));
  return (await choose(call, 'hand', word, hands)).id;
}

/** What the calendar is to hold, and when its alarms ring, by the options `--only`, `--piece`, `--hand` and `--warn`. */
export async function calendarWishes(
  call: Call,
  shop: OpenShop,
): Promise<{ readonly choice: Choice; readonly warnMinutes: number }> {
  const [only, piece, hand] = ['only', 'piece', 'hand'].map((name) => textFlag(call, name));
  const choice: Choice = {
    ...(only === undefined ? {} : { kinds: kindsOf(only) }),
    ...(piece === undefined ? {} : { pieces: [(await choosePiece(call, shop.book.pieces, piece)).id] }),
    ...(hand === undefined ? {} : { hands: [await handOf(call, shop, hand)] }),
  };
  return { choice, warnMinutes: numberFlag(call, 'warn', usualWarnMinutes, 0, 1440) };
}
