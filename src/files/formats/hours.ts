import { weekdays, type ClockSpan, type Hours, type Weekday } from '../../model/shop.ts';
import { writtenTime } from '../../time/iso.ts';
import { readHoursOfDay } from '../quantities/clock.ts';
import { read, refuse, type Read } from '../quantities/read.ts';
import { namedBy } from '../shapes/collections.ts';
import { refined, type Shape } from '../shapes/shape.ts';
import { quantity } from '../shapes/text.ts';
import { adviseWord } from '../suggest.ts';
import { worded } from '../../words/worded.ts';

const DATE_LENGTH = '2027-01-16'.length;

function readDayKey(text: string): Read<string> {
  if ((weekdays as readonly string[]).includes(text)) return read(text);
  if (!/^\d/.test(text)) return refuse(worded`is no day`, adviseWord(text, weekdays));
  return text.length === DATE_LENGTH && writtenTime(`${text}T00:00`) !== undefined
    ? read(text)
    : refuse(worded`is no date`, worded`write a date like 2027-01-16`);
}

const hoursOfDay = quantity('hours of a day', 'bad-hours', readHoursOfDay, '08:00-12:30, 13:15-17:30');

/** Days of the week, and single days; a day of the week that is not named is closed. */
export const hoursByDay: Shape<Hours> = refined(namedBy(readDayKey, hoursOfDay, 'days', 'bad-day'), (days) => {
  const of = new Map<string, readonly ClockSpan[]>(days.map(({ key, value }) => [key, value]));
  const week = Object.fromEntries(weekdays.map((day) => [day, of.get(day) ?? []]));
  return {
    week: week as Record<Weekday, readonly ClockSpan[]>,
    days: Object.fromEntries([...of].filter(([day]) => !(weekdays as readonly string[]).includes(day))),
  };
});
