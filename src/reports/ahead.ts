import type { Minute } from '../time/span.ts';
import { pieceCell, sayStep, type Bench } from './bench.ts';
import { painted, type Cell } from './layout.ts';
import { mostShown, saidOnce } from './look.ts';
import { sayAmount, sayTemp } from './say-quantity.ts';
import { sayMoment } from './say-time.ts';
import type { Ahead } from './what-is-ahead.ts';
import { worded } from '../words/worded.ts';

const MOST_NAMED = 3;

/** What to buy: each by itself if it is little or read by line, else how much there is to buy and what is needed first. */
export function shortRows({ short }: Ahead, { look, manner }: Bench): Cell[][] {
  const { quiet } = look.paint;
  const when = (by: Minute | undefined) => (by === undefined ? '' : worded`, needed ${sayMoment(by, manner)}`);
  const named = short.slice(0, mostShown(MOST_NAMED, look)).map(({ name, toBuy, unit, by }): Cell[] => {
    return [name, painted(quiet, worded`${sayAmount({ value: toBuy, unit }, manner)} too little${when(by)}`), ''];
  });
  const rest = short.length - named.length;
  const more: Cell[][] = rest === 0 ? [] : [['', painted(quiet, worded`and ${rest} more; drybench buy says all`), '']];
  return [...named, ...more].map((cells, i) => [painted(quiet, saidOnce(worded`buy`, i, look)), ...cells]);
}

/** What is to come into the warm before the next day's work. */
export function warmRows({ bringIn, keepWarm }: Ahead, bench: Bench): Cell[][] {
  const { look, manner, names } = bench;
  const startOf = ({ spans, holdsStationUntil }: (typeof bringIn)[number]['step']) =>
    spans[0]?.start ?? holdsStationUntil;
  const mayLeave = ({ broughtIn }: (typeof bringIn)[number]['step']) =>
    broughtIn === undefined || broughtIn.at <= manner.now ? '' : worded`, from ${sayMoment(broughtIn.at, manner)},`;
  const rows = [
    ...bringIn.map(({ step, by }): Cell[] => [
      pieceCell(step, bench),
      worded`bring it into ${names.room(step.room)}${mayLeave(step)} by ${sayMoment(by, manner)}, to be warm for “${sayStep(step)}” ${sayMoment(startOf(step), manner)}`,
      '',
    ]),
    ...keepWarm.map(({ material, room, step, coldestC, leastC }): Cell[] => [
      names.material(material),
      worded`keep it in the warm until “${sayStep(step)}” ${sayMoment(startOf(step), manner)}: ${names.room(room)} goes down to ${sayTemp(coldestC, manner)}, it bears no less than ${sayTemp(leastC, manner)}`,
      '',
    ]),
  ];
  return rows.map((cells, i) => [painted(look.paint.quiet, saidOnce(worded`warm`, i, look)), ...cells]);
}

/** The same as data; times written by `iso`. */
export function aheadDocument({ short, late, early, bringIn, keepWarm }: Ahead, iso: (minute: Minute) => string) {
  return {
    buy: short.map(({ item, name, toBuy, unit, by }) => ({
      id: item,
      name,
      toBuy,
      unit,
      ...(by !== undefined && { by: iso(by) }),
    })),
    lateCoats: late.map(({ coat, remedy, film, shuts }) => ({
      coat: coat.id,
      remedy: remedy.id,
      film,
      shuts: iso(shuts),
    })),
    earlyWindows: early.map(({ coat, film, shuts, reopens }) => ({
      coat: coat.id,
      film,
      shuts: iso(shuts),
      reopens: iso(reopens),
    })),
    bringIn: bringIn.map(({ step, by }) => ({ step: step.id, room: step.room, by: iso(by) })),
    keepWarm: keepWarm.map(({ step, ...need }) => ({ step: step.id, ...need })),
  };
}
