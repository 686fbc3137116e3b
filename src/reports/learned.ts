import type { Book } from '../model/book.ts';
import type { Learned } from '../model/learned.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';

/** What a shop has learned: of materials and of hands, by id. */
export interface Lessons {
  readonly materials: ReadonlyMap<string, Learned>;
  readonly hands: ReadonlyMap<string, Learned>;
}

function restsOn({ count }: Learned, one: string, many: string): string {
  return `from ${count} ${count === 1 ? one : many}`;
}

/** `12 % slower than`, `as fast as`: more hours or minutes are slower. */
function compared({ factor }: Learned, slower: string, quicker: string): string {
  const percent = Math.round(Math.abs(factor - 1) * 100);
  if (percent === 0) return 'just as';
  return `${percent} % ${factor > 1 ? slower : quicker} than`;
}

/** A line for each factor, and on how many observations it rests; empty where nothing was learned. */
export function lessonLines({ materials, hands }: Lessons, book: Book, look: Look): string[] {
  const names = new Map(book.shop.hands.map((h) => [h.id, h.name]));
  const said = [
    ...[...materials].map(([id, learned]) => {
      const name = book.materials.get(id)?.name ?? id;
      return `${name} dries ${compared(learned, 'slower here', 'quicker here')} the container says, ${restsOn(learned, 'look at it', 'looks at it')}`;
    }),
    ...[...hands].map(([id, learned]) => {
      const name = names.get(id) ?? id;
      return `${name} works ${compared(learned, 'slower', 'quicker')} the recipes say, ${restsOn(learned, 'timed step', 'timed steps')}`;
    }),
  ];
  if (said.length === 0) return [];
  return [
    ...paragraph('Learned from the bench', look, 0, look.paint.strong),
    ...said.flatMap((text) => paragraph(`${text}.`, look, 2, look.paint.quiet, 4)),
  ];
}

/** The same as a document: factors on hours and minutes, and the number of observations. */
export function lessonsDocument({ materials, hands }: Lessons) {
  const listed = (learned: ReadonlyMap<string, Learned>) =>
    [...learned].map(([id, { factor, count }]) => ({ id, factor, observations: count }));
  return { materials: listed(materials), hands: listed(hands) };
}
