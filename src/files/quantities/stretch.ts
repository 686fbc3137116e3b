import type { Span } from '../../time/span.ts';
import { localDay, readTime } from '../../time/zone.ts';
import { LONGEST_QUANTITY, read, refuse, type Read } from './read.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

const WRITE = phrase(
  'write a date, or from when to when, like 2027-02-01 - 2027-02-05 or 2027-01-20T13:00 - 2027-01-20T17:30',
);
const DASH = / [-–] | to /;

/** `2027-01-18`, `2027-02-01 - 2027-02-05` with both days, `2027-01-20T13:00 - 2027-01-20T17:30`, on the clock of `zone`. */
export function readStretch(text: string, zone: string): Read<Span> {
  if (text.length > LONGEST_QUANTITY) return refuse(worded`is no stretch of days`, translated(WRITE));
  const [fromText = '', toText = fromText, ...more] = text.trim().split(DASH);
  const from = readTime(fromText, zone);
  const to = readTime(toText, zone);
  if (more.length > 0 || !from.ok || !to.ok) return refuse(worded`is no stretch of days`, translated(WRITE));
  const span = { start: from.minute, end: to.dateOnly ? localDay(to.minute, zone).end : to.minute };
  if (toText === fromText && !to.dateOnly) return refuse(worded`does not say when it ends`, translated(WRITE));
  return span.start < span.end
    ? read(span)
    : refuse(worded`ends before it begins`, worded`write the earlier time first`);
}
