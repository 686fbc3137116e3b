import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../../src/reports/calendar/calendar-of.ts';
import { newLedger } from '../../../src/reports/calendar/ledger.ts';
import { bookOf, plan, planOf, span, stepOf, when, ZONE } from './made-shop.ts';
import { parsed, secondReading } from './parsed.ts';

const book = bookOf();
const textOf = (p = plan, warnMinutes = 30) =>
  calendarOf({
    plan: p,
    book,
    ledger: newLedger('shop', ZONE),
    now: plan.madeAt,
    choice: {},
    form: 'feed',
    warnMinutes,
  }).text;
const utc = (written: string) => new Date(when(written) * 60_000).toISOString();

/** A step put into the window from `opens` to `shuts`. */
function windowPlan(opens: string, shuts?: string) {
  const window = {
    opens: when(opens),
    of: 'stool/whole-stool/a',
    ...(shuts === undefined ? {} : { shuts: when(shuts) }),
  };
  return planOf([stepOf('stool/whole-stool/b', [span('2027-03-16T10:00', '2027-03-16T10:30')], { window })]);
}

function alarmTimes(p = plan, warnMinutes = 30) {
  const event = parsed(textOf(p, warnMinutes)).events.find((e) => e.alarms.length > 0)!;
  return event.alarms.map((a) => new Date(Date.parse(event.start) + a.offsetSeconds * 1000).toISOString());
}

describe('what the calendar of a plan holds', () => {
  const { events } = parsed(textOf());
  const find = (summary: string) => events.find((e) => e.summary.startsWith(summary))!;

  test('hands-on work keeps its times and takes up the day; a pause makes two events', () => {
    expect(find('Do sand (1 of 2) – Oak table, top')).toMatchObject({
      start: '2027-03-12T15:00:00.000Z',
      end: '2027-03-12T17:30:00.000Z',
      transparency: 'OPAQUE',
      status: 'CONFIRMED',
    });
    expect(find('Do sand (2 of 2) – Oak table, top').start).toBe(utc('2027-03-12T13:00'));
  });

  test('drying lasts until the next step may follow, and leaves the day free', () => {
    expect(find('Drying until Sat Mar 13 09:00 – Oak table, top')).toMatchObject({
      start: utc('2027-03-12T14:45'),
      end: utc('2027-03-13T09:00'),
      transparency: 'TRANSPARENT',
    });
  });

  test('a hand-over is a whole day of the shop', () => {
    expect(find('Ready to hand over: Oak table')).toMatchObject({ start: '2027-03-18', end: '2027-03-19' });
    expect(textOf()).toContain('DTSTART;VALUE=DATE:20270318\r\nDTEND;VALUE=DATE:20270319\r\n');
  });

  test('appointments take up the day; stays away and days off leave it free, and belong to who is off', () => {
    const { shop } = book;
    const [first] = shop.hands;
    const hired = span('2027-03-15T09:00', '2027-03-15T09:30');
    const dated = {
      ...book,
      shop: {
        ...shop,
        appointments: [{ ...hired, what: 'Delivery', hands: [first!.id], brings: [], takes: [] }],
        hands: shop.hands.map((h) => (h === first ? { ...h, off: [span('2027-03-16', '2027-03-17')] } : h)),
      },
      pieces: book.pieces.map((p, i) =>
        i === 0 ? { ...p, away: [{ ...span('2027-03-20', '2027-03-22'), at: 'upholsterer' }] } : p,
      ),
    };
    const entriesOf = (hands?: readonly string[]) =>
      parsed(
        calendarOf({
          plan,
          book: dated,
          ledger: newLedger('shop', ZONE),
          now: plan.madeAt,
          choice: { kinds: ['appointment', 'away', 'off'], ...(hands && { hands }) },
          form: 'file',
          warnMinutes: 30,
        }).text,
      ).events.map((e) => [e.summary, e.start, e.end, e.transparency]);
    const entries = [
      ['Delivery', utc('2027-03-15T09:00'), utc('2027-03-15T09:30'), 'OPAQUE'],
      [`Off – ${first!.name}`, utc('2027-03-16'), utc('2027-03-17'), 'TRANSPARENT'],
      [`Away at upholsterer – ${book.pieces[0]!.name}`, utc('2027-03-20'), utc('2027-03-22'), 'TRANSPARENT'],
    ];
    expect(entriesOf()).toEqual(entries);
    expect(entriesOf(['nobody'])).toEqual(entries.slice(2));
  });

  test('a second reader agrees on every event, time, title and alarm', () => {
    const second = new Map(secondReading(textOf()).map((e) => [e.uid, e]));
    expect(second.size).toBe(events.length);
    for (const event of events) {
      const other = second.get(event.uid)!;
      const isDay = event.start.length === 10;
      expect(other.summary).toBe(event.summary);
      expect(other.alarms).toBe(event.alarms.length);
      expect(other.day).toBe(isDay ? 'date' : 'date-time');
      expect([other.start, other.end].map((t) => t.slice(0, isDay ? 10 : 24))).toEqual([event.start, event.end]);
    }
  });

  test('every alarm has its action and words, stands last in its event, and lies within it', () => {
    for (const event of events) {
      for (const alarm of event.alarms) {
        expect(alarm.action).toBe('DISPLAY');
        expect(String(alarm.description)).not.toBe('');
        expect(alarm.offsetSeconds).toBeGreaterThanOrEqual(0);
        expect(alarm.offsetSeconds).toBeLessThanOrEqual((Date.parse(event.end) - Date.parse(event.start)) / 1000);
      }
    }
    const afterAlarm = [...textOf().matchAll(/END:VALARM\r\n(\S+?)[:;]?.*\r\n/g)].map((m) => m[0].split('\r\n')[1]);
    expect(afterAlarm.length).toBeGreaterThan(0);
    expect(afterAlarm.filter((line) => line !== 'BEGIN:VALARM' && line !== 'END:VEVENT')).toEqual([]);
  });
});

describe('alarms of a window', () => {
  test('ring as it opens, with TRIGGER:PT0S, and half an hour before it shuts', () => {
    const p = windowPlan('2027-03-16T09:00', '2027-03-16T12:15');
    expect(textOf(p)).toContain('TRIGGER:PT0S\r\n');
    expect(textOf(p)).toContain('TRIGGER:PT2H45M\r\n');
    expect(alarmTimes(p)).toEqual([utc('2027-03-16T09:00'), utc('2027-03-16T11:45')]);
  });

  test('a window shorter than the warning has one alarm', () => {
    expect(alarmTimes(windowPlan('2027-03-16T09:00', '2027-03-16T09:20'))).toEqual([utc('2027-03-16T09:00')]);
  });

  test('one that opens and shuts by night rings at the first and before the last minute of work inside it', () => {
    const p = windowPlan('2027-03-15T22:00', '2027-03-17T03:00');
    expect(alarmTimes(p)).toEqual([utc('2027-03-16T08:00'), utc('2027-03-16T17:00')]);
  });

  test('one that never shuts rings once, at the next minute of work', () => {
    const p = windowPlan('2027-03-13T20:00');
    expect(alarmTimes(p)).toEqual([utc('2027-03-15T08:00')]);
    expect(parsed(textOf(p)).events.map((e) => e.summary)).toContain('From 20:00: Do b – Stool, whole-stool');
  });

  test('a step that is done or begun has no window left to act in', () => {
    const [step] = windowPlan('2027-03-16T09:00', '2027-03-16T12:15').steps;
    for (const state of [{ done: true }, { atWork: true }] as const)
      expect(parsed(textOf(planOf([{ ...step!, ...state }]))).events.flatMap((e) => e.alarms)).toEqual([]);
  });
});

describe('choosing what to export', () => {
  const chosen = (choice: Parameters<typeof calendarOf>[0]['choice']) =>
    parsed(
      calendarOf({
        plan,
        book,
        ledger: newLedger('shop', ZONE),
        now: plan.madeAt,
        choice,
        form: 'feed',
        warnMinutes: 30,
      }).text,
    ).events.map((e) => e.summary);

  test('by piece, by hand, by kind', () => {
    const stool = chosen({ pieces: ['stool'] });
    expect(stool).toHaveLength(3);
    expect(stool.filter((s) => !s.includes('Stool'))).toEqual([]);
    expect(chosen({ hands: ['helper'], kinds: ['work'] })).toEqual([
      'Do sand – Oak table, legs',
      'Do oil – Oak table, legs',
    ]);
    expect(chosen({ kinds: ['window'] }).map((s) => s.slice(0, 5))).toEqual(['By 12', 'By 13', 'From ']);
  });
});
