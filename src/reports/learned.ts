import type { Book } from '../model/book.ts';
import type { Learned } from '../model/learned.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { counted, worded } from '../words/worded.ts';

/** What a shop has learned: of materials and of hands, by id. */
export interface Lessons {
  readonly materials: ReadonlyMap<string, Learned>;
  readonly hands: ReadonlyMap<string, Learned>;
}

/** More hours are slower. */
function dryingLearned(name: string, { factor, count }: Learned): string {
  const percent = Math.round(Math.abs(factor - 1) * 100);
  const looks = counted(count, 'from {0} look at it', 'from {0} looks at it');
  if (percent === 0) return worded`${name} dries just as the container says, ${looks}.`;
  return factor > 1
    ? worded`${name} dries ${percent} % slower here than the container says, ${looks}.`
    : worded`${name} dries ${percent} % quicker here than the container says, ${looks}.`;
}

/** More minutes are slower. */
function workLearned(name: string, { factor, count }: Learned): string {
  const percent = Math.round(Math.abs(factor - 1) * 100);
  const steps = counted(count, 'from {0} timed step', 'from {0} timed steps');
  if (percent === 0) return worded`${name} works just as the recipes say, ${steps}.`;
  return factor > 1
    ? worded`${name} works ${percent} % slower than the recipes say, ${steps}.`
    : worded`${name} works ${percent} % quicker than the recipes say, ${steps}.`;
}

/** A line for each factor, and on how many observations it rests; empty where nothing was learned. */
export function lessonLines({ materials, hands }: Lessons, book: Book, look: Look): string[] {
  const names = new Map(book.shop.hands.map((h) => [h.id, h.name]));
  const said = [
    ...[...materials].map(([id, learned]) => dryingLearned(book.materials.get(id)?.name ?? id, learned)),
    ...[...hands].map(([id, learned]) => workLearned(names.get(id) ?? id, learned)),
  ];
  if (said.length === 0) return [];
  return [
    ...paragraph(worded`Learned from the bench`, look, 0, look.paint.strong),
    ...said.flatMap((text) => paragraph(text, look, 2, look.paint.quiet, 4)),
  ];
}

/** The same as a document: factors on hours and minutes, and the number of observations. */
export function lessonsDocument({ materials, hands }: Lessons) {
  const listed = (learned: ReadonlyMap<string, Learned>) =>
    [...learned].map(([id, { factor, count }]) => ({ id, factor, observations: count }));
  return { materials: listed(materials), hands: listed(hands) };
}
