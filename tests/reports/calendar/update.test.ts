import fc from '../../support/property.ts';
import { describe, expect, test } from 'vitest';
import type { Plan, PlannedStep } from '../../../src/model/plan.ts';
import { calendarOf, type Choice } from '../../../src/reports/calendar/calendar-of.ts';
import { newLedger, updateLedger, type Ledger } from '../../../src/reports/calendar/ledger.ts';
import { ledgerText, readLedger } from '../../../src/reports/calendar/read-ledger.ts';
import { bookOf, hours, plan, planOf, span, stepOf, threePieces, twelveSteps, when, ZONE } from './made-shop.ts';
import { parsed, type ParsedEvent } from './parsed.ts';

const HOUR = 60;
const DAY = 24 * HOUR;
const book = bookOf();

function told(p: Plan, ledger: Ledger, now: number, form: 'feed' | 'file' = 'file', choice: Choice = {}) {
  return calendarOf({ plan: p, book, ledger, now, choice, form, warnMinutes: 30 });
}

const blocks = (text: string) =>
  new Map([...text.matchAll(/BEGIN:VEVENT\r\nUID:(\S+)\r\n[^]*?END:VEVENT\r\n/g)].map((m) => [m[1]!, m[0]]));

function delayed(step: PlannedStep, minutes: number): PlannedStep {
  return {
    ...step,
    spans: step.spans.map((s) => ({ start: s.start + minutes, end: s.end + minutes })),
    ...(step.window === undefined ? {} : { window: { ...step.window, opens: step.window.opens + minutes } }),
  };
}

/**
 * A calendar that follows RFC 5546 section 3.2.1 and RFC 5545 section 3.8.7.4: of two versions of one UID the higher
 * SEQUENCE stands, of equal ones the later DTSTAMP; a cancelled event is taken out.
 */
class Store {
  readonly events = new Map<string, { event: ParsedEvent; stamp: string }>();
  private readonly cancelled = new Map<string, number>();

  import(text: string): void {
    const stamps = [...text.matchAll(/^DTSTAMP:(\S+)/gm)].map((m) => m[1]!);
    parsed(text).events.forEach((event, i) => {
      const held = this.events.get(event.uid);
      const stamp = stamps[i]!;
      const sequence = held?.event.sequence ?? this.cancelled.get(event.uid) ?? -1;
      if (event.sequence < sequence) return;
      if (held !== undefined && event.sequence === sequence && stamp <= held.stamp) return;
      if (event.status === 'CANCELLED') {
        this.events.delete(event.uid);
        this.cancelled.set(event.uid, event.sequence);
      } else this.events.set(event.uid, { event, stamp });
    });
  }

  shown(): string[] {
    return [...this.events.values()].map(({ event: e }) => `${e.uid} ${e.start} ${e.end} ${e.summary}`).sort();
  }
}

const shownBy = (text: string) =>
  parsed(text)
    .events.map((e) => `${e.uid} ${e.start} ${e.end} ${e.summary}`)
    .sort();

describe('a new plan', () => {
  const first = told(plan, newLedger('shop', ZONE), plan.madeAt);

  test('changes only what really changed, each by one SEQUENCE, under the same UID', () => {
    const later = twelveSteps.map((s) => (s.id === 'oak-table/top/coat-2' ? delayed(s, HOUR) : s));
    const second = told(planOf(later, threePieces), first.ledger, plan.madeAt + DAY);
    const before = blocks(first.text);
    const after = blocks(second.text);
    expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
    const changed = [...after].filter(([uid, block]) => before.get(uid) !== block).map(([uid]) => uid);
    const was = new Map(parsed(first.text).events.map((e) => [e.uid, e]));
    const is = new Map(parsed(second.text).events.map((e) => [e.uid, e]));
    expect(changed.map((uid) => is.get(uid)!.summary).sort()).toEqual([
      'By 12:15: Do coat-2 – Oak table, top',
      'Do coat-2 – Oak table, top',
      'Drying until Sat Mar 13 10:00 – Oak table, top: Water-borne enamel',
      'Drying until Sun Mar 14 21:00 – Oak table, top: Water-borne enamel',
    ]);
    for (const uid of changed) expect(is.get(uid)!.sequence).toBe(was.get(uid)!.sequence + 1);
  });

  test('leaves the ledger and the bytes alone where nothing changed', () => {
    const again = told(plan, first.ledger, plan.madeAt + 3 * DAY);
    expect(again.ledger).toBe(first.ledger);
    expect(again.text).toBe(first.text);
  });

  test('calls a lost step off in the file for thirty days, and leaves it out of the feed', () => {
    const fewer = planOf(
      twelveSteps.filter((s) => s.id !== 'oak-table/top/coat-2'),
      threePieces,
    );
    const now = plan.madeAt + DAY;
    const file = told(fewer, first.ledger, now);
    const lost = parsed(file.text).events.filter((e) => e.status === 'CANCELLED');
    expect(lost).toHaveLength(3);
    const was = new Map(parsed(first.text).events.map((e) => [e.uid, e]));
    for (const event of lost) {
      expect(event.sequence).toBe(was.get(event.uid)!.sequence + 1);
      expect([event.start, event.end, event.alarms]).toEqual([was.get(event.uid)!.start, was.get(event.uid)!.end, []]);
    }
    const feed = parsed(told(fewer, first.ledger, now, 'feed').text).events;
    expect(feed.filter((e) => lost.some((l) => l.uid === e.uid))).toEqual([]);
    expect(shownBy(told(fewer, file.ledger, now + 30 * DAY).text)).toHaveLength(shownBy(file.text).length);
    expect(shownBy(told(fewer, file.ledger, now + 31 * DAY).text)).toHaveLength(shownBy(file.text).length - 3);
  });

  test('a step that was done is history: it is not called off when its piece leaves the shop', () => {
    const done = planOf([
      stepOf('stool/whole-stool/clean', [span('2027-03-11T10:00', '2027-03-11T10:30')], { done: true }),
    ]);
    const seen = told(done, newLedger('shop', ZONE), plan.madeAt);
    expect(parsed(told(planOf([]), seen.ledger, plan.madeAt + 10).text).events).toEqual([]);
  });

  test('a step that goes from one hand to another is called off for the first alone', () => {
    const moved = planOf(
      twelveSteps.map((s) => (s.id === 'oak-table/legs/oil' ? { ...s, hands: ['owner'] } : s)),
      threePieces,
    );
    const helper: Choice = { hands: ['helper'], kinds: ['work'] };
    const before = told(plan, newLedger('shop', ZONE), plan.madeAt, 'file', helper);
    const after = told(moved, before.ledger, plan.madeAt + 5, 'file', helper);
    expect(parsed(before.text).events.map((e) => e.summary)).toEqual([
      'Do sand – Oak table, legs',
      'Do oil – Oak table, legs',
    ]);
    expect(parsed(after.text).events.map((e) => [e.summary, e.status])).toEqual([
      ['Do sand – Oak table, legs', 'CONFIRMED'],
      ['Do oil – Oak table, legs', 'CANCELLED'],
    ]);
    const all = parsed(told(moved, after.ledger, plan.madeAt + 5).text).events;
    expect(all.filter((e) => e.status === 'CANCELLED')).toEqual([]);
  });

  test('a lost ledger neither changes a UID nor lowers a SEQUENCE', () => {
    const anew = told(plan, newLedger('shop', ZONE), plan.madeAt + 2 * DAY);
    const was = new Map(parsed(first.text).events.map((e) => [e.uid, e.sequence]));
    const is = parsed(anew.text).events;
    expect(is.map((e) => e.uid).sort()).toEqual([...was.keys()].sort());
    for (const event of is) expect(event.sequence).toBeGreaterThan(was.get(event.uid)!);
  });
});

describe('imported over and over into a store that follows RFC 5546', () => {
  const change = fc.record({
    kept: fc.subarray(twelveSteps.map((_, i) => i)),
    moved: fc.dictionary(
      fc.constantFrom(...twelveSteps.map((_, i) => String(i))),
      fc.integer({ min: 0, max: 3 * DAY }),
    ),
    minutesLater: fc.integer({ min: 0, max: 10 * DAY }),
  });

  test('no event is stale, doubled or missing after any row of new plans', () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        const store = new Store();
        let { text, ledger } = told(plan, newLedger('shop', ZONE), plan.madeAt);
        let now = plan.madeAt;
        store.import(text);
        for (const { kept, moved, minutesLater } of changes) {
          now += minutesLater;
          const steps = kept.map((i) => delayed(twelveSteps[i]!, moved[String(i)] ?? 0));
          const next = planOf(steps, threePieces);
          const reread = readLedger(ledgerText(ledger));
          if (!reread.ok) throw new Error(reread.why);
          ({ text, ledger } = told(next, reread.ledger, now));
          const uids = parsed(text).events.map((e) => e.uid);
          expect(new Set(uids).size).toBe(uids.length);
          store.import(text);
          expect(store.shown()).toEqual(shownBy(told(next, ledger, now, 'feed').text));
        }
      }),
      { numRuns: 15 },
    );
  });
});

describe('the ledger', () => {
  test.each([
    ['', 'it is not JSON'],
    ['[]', 'the document must be an object'],
    ['{"format":"x"}', 'its "format" is not "drybench.calendar/1"'],
    [
      '{"format":"drybench.calendar/1","shop":"s","lastChanged":1,"events":{"__proto__":{}}}',
      'an event has no proper UID',
    ],
    [
      '{"format":"drybench.calendar/1","shop":"s","lastChanged":1.5,"events":{}}',
      '"lastChanged" must be a whole number',
    ],
  ])('%s is refused: %s', (content, why) => {
    expect(readLedger(content)).toEqual({ ok: false, newer: false, why });
  });

  test('a clock that was set back never makes an event older', () => {
    const events = [
      {
        uid: 'u',
        kind: 'work',
        piece: 'p',
        hands: [],
        start: 0,
        end: 1,
        summary: 's',
        description: '',
        alarms: [],
        done: false,
      },
    ] as const;
    const first = updateLedger(newLedger('shop', ZONE), events, 1000);
    const second = updateLedger(first, [{ ...events[0], end: 2 }], 500);
    expect(second.events['u']).toMatchObject({ sequence: first.events['u']!.sequence + 1, lastChanged: 1000 });
  });
});

describe('daylight saving, the night of 14 March 2027 in New York', () => {
  test('24 hours from Saturday 20:00 end on Sunday 21:00, at 2027-03-15T01:00:00Z', () => {
    const start = when('2027-03-13T20:00');
    const dry = { handle: { early: start, typical: start, late: start + 24 * HOUR } };
    const step = stepOf('stool/whole-stool/coat', [{ start: start - 30, end: start }], { dry });
    const events = parsed(told(planOf([step]), newLedger('shop', ZONE), plan.madeAt).text).events;
    const drying = events.find((e) => e.transparency === 'TRANSPARENT');
    expect(drying?.end).toBe('2027-03-15T01:00:00.000Z');
    expect(drying?.summary).toContain('Drying until Sun Mar 14 21:00');
    expect(hours.week.sunday).toEqual([]);
  });
});
