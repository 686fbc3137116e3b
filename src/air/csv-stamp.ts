import type { Minute } from '../time/span.ts';
import { localTime, minuteAt, readTime } from '../time/zone.ts';
import { worded } from '../words/worded.ts';

export type Stamp =
  | { readonly ok: true; readonly minute: Minute }
  /** `skipped`: the clock jumps over that time. */
  | { readonly ok: false; readonly why: string; readonly skipped: boolean };

/** `before` is the minute of the row above: it tells the two passes of a repeated hour apart. */
export type StampReader = (written: string, before: Minute | undefined) => Stamp;

/**
 * Reads the stamps of a record: what readTime reads, also with `/` for `-`, `7:00` for `07:00` and `+0100`, or seconds
 * or milliseconds since 1970. The zone is asked once a day, since records are long.
 */
export function stampReader(timeZone: string): StampReader {
  let day = { date: '', start: 0, plain: false };
  const startOf = (date: string): typeof day => {
    if (day.date !== date) {
      const start = readTime(date, timeZone);
      const end = start.ok ? minuteAt(date, 24 * 60 - 1, timeZone) + 1 : 0;
      day = { date, start: start.ok ? start.minute : 0, plain: start.ok && end - start.minute === 1440 };
    }
    return day;
  };
  let utcDay: { readonly date: string; readonly start?: Minute } = { date: '' };
  const startInUtc = (date: string): Minute | undefined => {
    if (utcDay.date !== date) {
      const start = readTime(`${date}T00:00Z`, 'UTC');
      // Near the first and the last year the offset decides whether the stamp is one.
      utcDay = start.ok && !/^(1970-01-01|2199-12-31)$/.test(date) ? { date, start: start.minute } : { date };
    }
    return utcDay.start;
  };
  return (written, before) => {
    if (/^\d{9,10}$/.test(written)) return { ok: true, minute: Math.floor(Number(written) / 60) };
    if (/^\d{12,13}$/.test(written)) return { ok: true, minute: Math.floor(Number(written) / 60_000) };
    const tidy = written
      .replace(/^(\d{4})\/(\d{2})\/(\d{2})/, '$1-$2-$3')
      .replace(/[T ]+(\d):/, 'T0$1:')
      .replace(/([+-]\d{2})(\d{2})$/, '$1:$2');
    const own =
      /^(\d{4}-\d{2}-\d{2})[T ]([01]\d|2[0-3]):([0-5]\d)(?::[0-5]\d(?:\.\d{1,3})?)?([+-])(0\d|1[0-3]):([0-5]\d)$/.exec(
        tidy,
      );
    if (own !== null) {
      const start = startInUtc(own[1] ?? '');
      const offset = (own[4] === '-' ? -1 : 1) * (Number(own[5]) * 60 + Number(own[6]));
      if (start !== undefined) return { ok: true, minute: start + Number(own[2]) * 60 + Number(own[3]) - offset };
    }
    const plain = /^(\d{4}-\d{2}-\d{2})[T ]([01]\d|2[0-3]):([0-5]\d)(?::[0-5]\d(?:\.\d+)?)?$/.exec(tidy);
    if (plain !== null) {
      const { start, plain: straight } = startOf(plain[1] ?? '');
      if (straight) return { ok: true, minute: start + Number(plain[2]) * 60 + Number(plain[3]) };
    }
    return askZone(tidy, timeZone, before);
  };
}

function askZone(written: string, timeZone: string, before: Minute | undefined): Stamp {
  const time = readTime(written, timeZone);
  if (!time.ok) return { ok: false, why: time.why, skipped: time.skipped === true };
  if (time.dateOnly) return { ok: false, why: worded`the time of day is missing`, skipped: false };
  if (time.notice === undefined || before === undefined || time.minute > before) return time;
  const { clock } = localTime(time.minute, timeZone);
  const second = [30, 60, 120].map((m) => time.minute + m).find((m) => localTime(m, timeZone).clock === clock);
  return second !== undefined && second > before ? { ok: true, minute: second } : time;
}
