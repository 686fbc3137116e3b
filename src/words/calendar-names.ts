import { spokenCode } from './worded.ts';

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const dayMs = 86_400_000;
/** 1970-01-05 was a Monday. */
const firstMondayMs = 4 * dayMs;

const formats = new Map<string, Intl.DateTimeFormat>();

function named(ms: number, what: 'weekday' | 'month'): string {
  const key = `${spokenCode()} ${what}`;
  let format = formats.get(key);
  if (format === undefined) {
    format = new Intl.DateTimeFormat(spokenCode(), { [what]: 'short', timeZone: 'UTC' });
    formats.set(key, format);
  }
  return format.format(ms);
}

/** `Mon`; 1 Monday to 7 Sunday. */
export function shortWeekday(weekday: number): string {
  if (spokenCode() === 'en') return weekdays[weekday - 1] ?? '';
  return named(firstMondayMs + (weekday - 1) * dayMs, 'weekday');
}

/** `Jan`; 1 to 12. */
export function shortMonth(month: number): string {
  return spokenCode() === 'en' ? (months[month - 1] ?? '') : named(Date.UTC(1970, month - 1, 15), 'month');
}
