import fc from '../support/property.ts';
import { DateTime, IANAZone } from 'luxon';
import { expect, test } from 'vitest';
import {
  isoOf,
  localDay,
  localDays,
  localTime,
  minuteAt,
  offsetsThrough,
  readTime,
  recallOffsets,
} from '../../src/time/zone.ts';

// The oracle is luxon, which asks the platform for every instant; ours keeps one answer a day.
const zones = [
  'UTC',
  'America/New_York',
  'America/St_Johns',
  'America/Sao_Paulo',
  'Europe/Dublin',
  'Africa/Casablanca',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Auckland',
  'Pacific/Apia',
];
const anyZone = fc.constantFrom(...zones);
/** 1975 to 2100. */
const anyMinute = fc.integer({ min: 2_629_800, max: 68_374_800 });

test('local time, offset and day agree with luxon in zones with whole, half and quarter hours', () => {
  fc.assert(
    fc.property(anyMinute, anyZone, (minute, zone) => {
      const when = DateTime.fromMillis(minute * 60_000, { zone });
      expect(localTime(minute, zone)).toEqual({
        date: when.toFormat('yyyy-MM-dd'),
        year: when.year,
        month: when.month,
        day: when.day,
        weekday: when.weekday,
        clock: when.hour * 60 + when.minute,
        offsetMinutes: when.offset,
      });
      expect(isoOf(minute, zone)).toBe(when.toFormat("yyyy-MM-dd'T'HH:mm:00ZZ"));
      const day = localDay(minute, zone);
      expect(day.start * 60_000).toBe(when.startOf('day').toMillis());
      expect(day.end * 60_000).toBe(when.startOf('day').plus({ days: 1 }).startOf('day').toMillis());
    }),
    { numRuns: 1500, seed: 3 },
  );
});

test('a wall-clock time is found again where clocks show it, and as the first where they show it twice', () => {
  fc.assert(
    fc.property(anyMinute, anyZone, (minute, zone) => {
      const shown = localTime(minute, zone);
      const found = minuteAt(shown.date, shown.clock, zone);
      expect(found).toBeLessThanOrEqual(minute);
      const again = localTime(found, zone);
      expect([again.date, again.clock]).toEqual([shown.date, shown.clock]);
    }),
    { numRuns: 1500, seed: 4 },
  );
});

test('a day has 23, 24 or 25 hours', () => {
  const days = localDays(
    minuteAt('2027-03-13', 600, 'America/New_York'),
    minuteAt('2027-03-16', 0, 'America/New_York'),
    'America/New_York',
  );
  expect(days.map((d) => [d.date, (d.end - d.start) / 60])).toEqual([
    ['2027-03-13', 24],
    ['2027-03-14', 23],
    ['2027-03-15', 24],
  ]);
  const autumn = localDay(minuteAt('2027-11-07', 600, 'America/New_York'), 'America/New_York');
  expect((autumn.end - autumn.start) / 60).toBe(25);
});

test.each([
  ['America/New_York', '2027-03-14T02:30', '01:30-05:00', '03:30-04:00'],
  ['Australia/Lord_Howe', '2027-10-03T02:15', '01:45+10:30', '02:45+11:00'],
])('in %s the time %s, which clocks skip, is refused with both readings', (zone, text, before, after) => {
  const read = readTime(text, zone);
  if (read.ok) throw new Error('a skipped time was read');
  expect(read.why).toContain(before);
  expect(read.why).toContain(after);
});

test('a time that clocks show twice is the first, and says so', () => {
  const read = readTime('2027-11-07T01:30', 'America/New_York');
  expect(read).toMatchObject({ ok: true, dateOnly: false });
  if (!read.ok) return;
  expect(isoOf(read.minute, 'America/New_York')).toBe('2027-11-07T01:30:00-04:00');
  expect(read.notice).toContain('-04:00');
});

test.each(['2027-13-01', '2027-02-30', '0001-01-01', '9999-01-01', 'tomorrow', '2027-1-1', '', '2027-01-11T25:00'])(
  '%j is no time',
  (text) => {
    expect(readTime(text, 'Europe/Dublin').ok).toBe(false);
  },
);

/** Around the days on which clocks change, and anywhere else. */
const anyMoment = fc.record({
  zone: fc.constantFrom(...zones),
  year: fc.oneof(fc.integer({ min: 1971, max: 2198 }), fc.integer({ min: 2024, max: 2030 }), fc.constant(2011)),
  month: fc.integer({ min: 1, max: 12 }),
  day: fc.integer({ min: 1, max: 31 }),
  clock: fc.option(fc.integer({ min: 0, max: 1439 }), { nil: undefined, freq: 5 }),
});

test('a time is read as luxon reads it', () => {
  const seen = { plain: 0, skipped: 0, twice: 0, none: 0 };
  fc.assert(
    fc.property(anyMoment, ({ zone, year, month, day, clock }) => {
      const two = (n: number) => String(n).padStart(2, '0');
      const date = `${year}-${two(month)}-${two(day)}`;
      const text = clock === undefined ? date : `${date}T${two(Math.floor(clock / 60))}:${two(clock % 60)}`;
      const stamp = DateTime.fromISO(text, { zone });
      const read = readTime(text, zone);
      if (!stamp.isValid) {
        seen.none += 1;
        expect(read.ok).toBe(false);
        return;
      }
      const shown = stamp.toFormat(clock === undefined ? 'yyyy-MM-dd' : "yyyy-MM-dd'T'HH:mm");
      if (shown !== text) {
        seen.skipped += 1;
        expect(read).toMatchObject(clock === undefined ? { ok: true } : { ok: false, skipped: true });
        return;
      }
      const all = stamp.getPossibleOffsets().map((s) => s.toMillis() / 60_000);
      seen[all.length > 1 ? 'twice' : 'plain'] += 1;
      expect(read).toMatchObject({ ok: true, minute: Math.floor(Math.min(...all)), dateOnly: clock === undefined });
      expect(read.ok && read.notice !== undefined).toBe(clock !== undefined && all.length > 1);
    }),
    { numRuns: 4000 },
  );
  expect(seen.plain).toBeGreaterThan(2000);
  expect(seen.none).toBeGreaterThan(10);
});

test('clocks recalled are taken for those of the zone', () => {
  const offset = (minute: number) => IANAZone.create('Europe/Brussels').offset(minute * 60_000);
  const known = offsetsThrough('Europe/Brussels', { from: 2026, to: 2028 });
  // Two zones that no other test asks of: one that has the same clocks, and one that has others.
  for (const other of ['Europe/Luxembourg', 'Asia/Tokyo']) {
    recallOffsets(other, known);
    for (let minute = minuteAt('2026-01-01', 0, 'UTC'); minute < minuteAt('2028-12-31', 0, 'UTC'); minute += 61)
      expect(localTime(minute, other).offsetMinutes).toBe(offset(minute));
  }
});
