import { adviseWord } from '../suggest.ts';
import { amountsOf } from './amount.ts';
import { mapped, read, refuse, type Read, type Reader } from './read.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

// A day is 24 hours of drying, whatever the wall clock does.
const minutesPer: Readonly<Record<string, number>> = {
  min: 1,
  mins: 1,
  minute: 1,
  minutes: 1,
  h: 60,
  hr: 60,
  hrs: 60,
  hour: 60,
  hours: 60,
  d: 1440,
  day: 1440,
  days: 1440,
  wk: 10_080,
  week: 10_080,
  weeks: 10_080,
};

const LONGEST_MINUTES = 2 * 366 * 1440;
const WRITE = phrase('write a time like 45 min, 2 h, 1 h 30 min or 14 d');

/** `45 min`, `1 h 30 min`, `14 d` as minutes; zero up to two years. */
export function readMinutes(text: string): Read<number> {
  const amounts = amountsOf(text);
  if (amounts === undefined) return refuse(worded`is not a length of time`, translated(WRITE));
  let minutes = 0;
  let last = Infinity;
  for (const { value, unit } of amounts) {
    if (unit === '') return refuse(worded`has no unit`, translated(WRITE));
    const factor = Object.hasOwn(minutesPer, unit) ? minutesPer[unit] : undefined;
    if (factor === undefined)
      return refuse(
        worded`is not a length of time: "${unit}" is no unit for it`,
        adviseWord(unit, ['min', 'h', 'd', 'hours', 'minutes', 'days']),
      );
    if (value < 0) return refuse(worded`is below zero`, translated(WRITE));
    if (factor >= last)
      return refuse(worded`names its units out of order`, worded`write days first, then hours, then minutes`);
    minutes += value * factor;
    last = factor;
  }
  if (minutes > LONGEST_MINUTES) return refuse(worded`is longer than two years`, translated(WRITE));
  return read(minutes);
}

/** The same as hours. */
export const readHours: Reader<number> = mapped(readMinutes, (minutes) => minutes / 60);
