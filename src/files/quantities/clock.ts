import type { ClockSpan } from '../../model/shop.ts';
import { read, refuse, type Read } from './read.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

const WRITE_CLOCK = phrase('write a time of day like 08:00 or 17:30');
const WRITE_HOURS = phrase('write hours like 08:00-12:30, 13:15-17:30, or closed');
const LONGEST_HOURS = 200;
const MIDNIGHT = 24 * 60;

/** `08:00`, `17:30`, `5:30 pm`, `24:00` as minutes after midnight. */
export function readClock(text: string): Read<number> {
  const parts = text.length > 12 ? null : /^(\d{1,2})(?::(\d{2}))? ?(am|pm)?$/i.exec(text.trim());
  if (parts === null) return refuse(worded`is not a time of day`, translated(WRITE_CLOCK));
  const [, hourText, minuteText, half] = parts;
  if (minuteText === undefined && half === undefined)
    return refuse(worded`is not a time of day`, translated(WRITE_CLOCK));
  const minute = Number(minuteText ?? 0);
  const written = Number(hourText);
  if (half !== undefined && (written < 1 || written > 12))
    return refuse(worded`is no time of day`, translated(WRITE_CLOCK));
  const hour = half === undefined ? written : (written % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  const clock = hour * 60 + minute;
  if (minute > 59 || clock > MIDNIGHT) return refuse(worded`is no time of day`, translated(WRITE_CLOCK));
  return read(clock);
}

/** `08:00-12:30, 13:15-17:30` in order and apart; `closed` is no hours at all. */
export function readHoursOfDay(text: string): Read<readonly ClockSpan[]> {
  if (text.length > LONGEST_HOURS) return refuse(worded`is not hours of a day`, translated(WRITE_HOURS));
  if (text.trim() === 'closed') return read([]);
  const spans: ClockSpan[] = [];
  for (const part of text.split(',')) {
    const ends = part.trim().split(/ ?[-–] ?/);
    const [fromText, toText] = ends;
    if (ends.length !== 2 || fromText === undefined || toText === undefined)
      return refuse(worded`is not hours of a day`, translated(WRITE_HOURS));
    const from = readClock(fromText);
    if (!from.ok) return { ...from, write: translated(WRITE_HOURS) };
    const to = readClock(toText);
    if (!to.ok) return { ...to, write: translated(WRITE_HOURS) };
    if (from.value >= to.value)
      return refuse(
        worded`runs backwards: ${fromText} is not before ${toText}`,
        worded`write the earlier time first; hours past midnight belong to the next day`,
      );
    const last = spans.at(-1);
    if (last !== undefined && from.value < last.to)
      return refuse(
        worded`overlaps itself: ${part.trim()} begins too soon`,
        worded`let each stretch begin when the one before it is over`,
      );
    spans.push({ from: from.value, to: to.value });
  }
  return read(spans);
}
