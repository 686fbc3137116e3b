import { randomFrom } from '../../src/engine/random.ts';
import type { Activity, Lag, Mode, Presence, Problem, Term, Use } from '../../src/engine/problem.ts';
import { intersect, type Spans, unite } from '../../src/time/span.ts';
import { ALWAYS, NEVER, type TimeMap } from '../../src/time/time-map.ts';

const hour = 60;
const day = 24 * hour;
const week = 7 * day;
/** A Monday, 00:00, well into the calendar. */
const monday = 29_998_080;

/**
 * When pieces come in.
 * - `at once`: all on the first Monday morning, which asks the most of a plan.
 * - `as the shop gets through them`: some a hand to begin with, each other on the morning of the day by which the hands
 *   could have done nine tenths of the work on those before it. What a piece ties up then counts from the day that it comes.
 */
export type Intake = 'at once' | 'as the shop gets through them';

/** Pieces a hand that are there to begin with, where they come as the shop gets through them. */
const toBeginWith = 3;
const load = 0.9;

/** A made-up shop's problem: `pieces` pieces of 15 to 30 steps each, of the kinds that a shop has. */
export function shopLike(pieces: number, seed: number, intake: Intake = 'at once'): Problem {
  const random = randomFrom(seed);
  const hands = pieces <= 12 ? 1 : Math.ceil(pieces / 25);
  const from = monday + 8 * hour;
  const to = monday + week * Math.ceil(4 + (pieces * 7) / (hands * 70));
  const weeks = Math.ceil((to - monday) / week) + 1;
  const open = weekly(
    weeks,
    [0, 1, 2, 3, 4],
    [
      [8, 12],
      [12.5, 17],
    ],
  );
  const second = weekly(weeks, [1, 2, 3, 5], [[8, 13]]);
  const coatable = weekly(weeks, [0, 1, 2, 3, 4, 5, 6], [[9.5, 16.5]]);
  const drying = dryingBy(from, weeks);
  const marks = {
    dustFree: [drying(0.7), drying(1.5)],
    recoat: [drying(2), drying(5)],
    shut: [drying(14), drying(40)],
    full: [drying(24), drying(60)],
    handle: [drying(8), drying(16)],
  } as const;
  const resources = [
    { name: 'first hand', capacity: hands },
    { name: 'second hand', capacity: Math.ceil(hands / 2) },
    { name: 'bench', capacity: 3 * hands },
    { name: 'spray area', capacity: hands },
    { name: 'rack', capacity: 8 * hands },
    { name: 'sprayer', capacity: hands },
  ];
  const calendars = [open, second];
  const activities: Activity[] = [];
  const lags: Lag[] = [];
  const objective: Term[] = [];
  const starts = new Map<string, Spans>();

  const uninterrupted = (spans: Spans, duration: number, key: string): Spans => {
    const known = starts.get(`${key} ${duration}`);
    if (known !== undefined) return known;
    const made = spans
      .filter((s) => s.end - s.start >= duration)
      .map((s) => ({ start: s.start, end: s.end - duration + 1 }));
    starts.set(`${key} ${duration}`, made);
    return made;
  };
  const workModes = (duration: number, stations: readonly number[], pausing: boolean, extra: Partial<Mode>): Mode[] =>
    [0, 1].flatMap((hand) =>
      stations.map((station) => {
        const hours = calendars[hand]!;
        const length = hand === 0 ? duration : Math.ceil(duration * 1.2);
        return {
          name: `hand ${hand} station ${station}`,
          duration: length,
          ...(pausing ? { calendar: hours, starts: hours } : { starts: uninterrupted(hours, length, `hand ${hand}`) }),
          uses: [
            { resource: hand, units: 1 },
            { resource: station, units: 1 },
          ],
          ...extra,
        };
      }),
    );
  const add = (name: string, modes: readonly Mode[]): number => activities.push({ name, modes }) - 1;
  const after = (i: number, j: number, least: TimeMap | number = 0): void => {
    lags.push({ from: i, fromPoint: 'end', to: j, toPoint: 'start', least });
  };
  const minutes = (low: number, high: number): number => low + 5 * random.below((high - low) / 5 + 1);

  const rooms = Math.ceil(pieces / 12);
  const coatModes = (duration: number, kind: 0 | 1, room: number, next: number): Mode[] =>
    [0, 1].flatMap((hand) =>
      [3, 4].map((station): Mode => {
        const hours = intersect(calendars[hand]!, coatable);
        const hold: Use['hold'] = { kind: 'mapOrNext', map: marks.handle[kind], next };
        return {
          name: `hand ${hand} station ${station}`,
          duration,
          starts: uninterrupted(hours, duration, `coat ${hand}`),
          uses: [
            { resource: hand, units: 1 },
            { resource: station, units: 1, hold },
            ...(station === 3 ? [{ resource: 5, units: 1 }] : []),
          ],
          presences: [{ exclusion: station === 3 ? rooms : room, side: 0, until: marks.dustFree[kind] }],
          cost: station === 3 ? 0 : 30,
        };
      }),
    );

  const section = (piece: number, s: number): { first: number; last: number } => {
    const name = `piece ${piece} section ${s}`;
    const kind = random.below(2) as 0 | 1;
    const room = piece % rooms;
    const dusty: Presence[] = [{ exclusion: room, side: 1 }];
    const first = add(`${name} repair`, workModes(minutes(20, 90), [2], true, {}));
    const sand = add(`${name} sand`, workModes(minutes(20, 60), [2], true, { presences: dusty }));
    after(first, sand);
    let last = sand;
    const coats = 1 + random.below(3);
    for (let c = 0; c < coats; c++) {
      const duration = minutes(10, 30);
      const coat = activities.length;
      if (c > 0) {
        const prepare = add(`${name} prepare ${c}`, [
          { name: 'none', duration: 0, uses: [] },
          ...workModes(10, [2], false, { presences: dusty, cost: 20 }),
        ]);
        const next = prepare + 1;
        after(last, prepare);
        after(prepare, next);
        const between = { from: last, fromPoint: 'end', to: next, toPoint: 'start' } as const;
        lags.push({
          ...between,
          least: marks.recoat[kind],
          most: marks.shut[kind],
          when: [{ activity: prepare, modes: [0] }],
        });
        lags.push({ ...between, least: marks.full[kind], when: [{ activity: prepare, modes: [1, 2] }] });
        lags.push({
          from: last,
          fromPoint: 'end',
          to: prepare,
          toPoint: 'start',
          least: marks.full[kind],
          when: [{ activity: prepare, modes: [1, 2] }],
        });
        add(`${name} coat ${c}`, coatModes(duration, kind, room, next + 1));
        last = next;
      } else {
        add(`${name} coat ${c}`, coatModes(duration, kind, room, coat + 1));
        after(last, coat);
        last = coat;
      }
    }
    const dry = add(`${name} dry`, [{ name: 'wait', duration: 0, uses: [] }]);
    after(last, dry, marks.handle[kind]);
    return { first, last: dry };
  };

  /** Minutes that the hands have been in by the end of each day, all together. */
  const handMinutes = Array.from(
    { length: 7 * weeks },
    (_, d) =>
      minutesBefore(open, monday + (d + 1) * day) * hands +
      minutesBefore(second, monday + (d + 1) * day) * Math.ceil(hands / 2),
  );
  const arrivalAfter = (piece: number, work: number): number => {
    if (intake === 'at once' || piece < toBeginWith * hands) return from;
    const d = handMinutes.findIndex((done) => done * load >= work);
    return Math.max(from, monday + Math.max(0, d) * day + 8 * hour);
  };
  const workOf = (first: number): number =>
    activities.slice(first).reduce((sum, activity) => sum + (activity.modes[0]?.duration ?? 0), 0);

  let workBefore = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const firstOfPiece = activities.length;
    const arrives = arrivalAfter(piece, workBefore);
    const here = [{ start: arrives, end: to + 1 }];
    const arrived = (mode: Mode): Mode => ({ ...mode, starts: intersect(mode.starts ?? here, here) });
    const dismantle = workModes(minutes(10, 40), [2], true, {});
    const begin = add(`piece ${piece} dismantle`, arrives === from ? dismantle : dismantle.map(arrived));
    const refit = random.below(4) + 1;
    const sections = Array.from({ length: refit }, (_, s) => section(piece, s));
    const end = add(`piece ${piece} refit`, workModes(minutes(20, 60), [2], true, {}));
    for (const { first, last } of sections) {
      after(begin, first);
      after(last, end);
    }
    const ready = add(`piece ${piece} ready`, [{ name: 'ready', duration: 0, starts: open, uses: [] }]);
    after(end, ready, 12 * hour);
    const weight = 1 + random.below(5);
    const tieUp = { name: `tie-up ${piece}`, activity: ready, weight };
    objective.push(intake === 'at once' ? { kind: 'end', ...tieUp } : { kind: 'late', ...tieUp, due: arrives });
    workBefore += workOf(firstOfPiece);
    if (random.below(2) === 0) {
      const due = arrives + week + random.below(to - from - week);
      objective.push({ kind: 'late', name: `late ${piece}`, activity: ready, weight: 20 * weight, due });
    }
  }
  return { from, to, resources, exclusions: rooms + 1, activities, lags, objective };
}

function minutesBefore(spans: Spans, t: number): number {
  return spans.reduce((sum, span) => sum + Math.max(0, Math.min(span.end, t) - span.start), 0);
}

function weekly(weeks: number, days: readonly number[], hours: readonly (readonly [number, number])[]): Spans {
  return unite(
    Array.from({ length: weeks }, (_, w) => w).flatMap((w) =>
      days.flatMap((d) =>
        hours.map(([open, shut]) => ({
          start: monday + w * week + d * day + open * hour,
          end: monday + w * week + d * day + shut * hour,
        })),
      ),
    ),
  );
}

/** Drying that goes twice as fast by day as by night, in hours at the day's speed. */
function dryingBy(from: number, weeks: number): (hours: number) => TimeMap {
  const count = (weeks + 2) * 7 * 24;
  const base = from - (from % hour);
  const done = new Float64Array(count + 1);
  for (let h = 0; h < count; h++) {
    const clock = ((base + h * hour) % day) / hour;
    done[h + 1] = done[h]! + (clock >= 8 && clock < 20 ? 60 : 30);
  }
  const dose = (t: number): number => {
    const h = Math.min(count - 1, Math.max(0, Math.floor((t - base) / hour)));
    return done[h]! + ((t - base - h * hour) / hour) * (done[h + 1]! - done[h]!);
  };
  const when = (amount: number): number => {
    let low = 0;
    let high = count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (done[middle + 1]! < amount) low = middle + 1;
      else high = middle;
    }
    if (low >= count) return NEVER;
    return Math.ceil(base + (low + (amount - done[low]!) / (done[low + 1]! - done[low]!)) * hour);
  };
  return (hours) => {
    const needed = hours * hour;
    const imageOf = (t: number): number => when(dose(t) + needed);
    return {
      at: imageOf,
      latest: (limit) => {
        if (limit >= NEVER) return NEVER;
        let t = Math.floor(when(dose(limit) - needed)) + 2;
        while (imageOf(t) > limit) t -= 1;
        return Math.max(t, ALWAYS);
      },
      earliest: (floor) => {
        if (floor >= NEVER) return NEVER;
        let t = Math.floor(when(dose(floor) - needed)) - 2;
        while (imageOf(t) < floor) t += 1;
        return t;
      },
    };
  };
}
