import fc from '../support/property.ts';
import type { Activity, Hold, Lag, Mode, Problem, Term, Use } from '../../src/engine/problem.ts';
import { unite, type Spans } from '../../src/time/span.ts';
import { ALWAYS, NEVER, type TimeMap } from '../../src/time/time-map.ts';

/** The step function that answers `images[t]` from `from` on, the first before it, and grows by one a minute after. */
export function stepMap(from: number, images: readonly number[]): TimeMap {
  const first = images[0] ?? from;
  const last = images.at(-1) ?? from;
  const imageAt = (t: number): number =>
    t < from ? first : (images[t - from] ?? last + (t - from - images.length + 1));
  const low = from - 1;
  const high = from + images.length + 200;
  return {
    at: imageAt,
    latest: (limit) => {
      if (imageAt(low) > limit) return ALWAYS;
      let t = high;
      while (imageAt(t) > limit) t -= 1;
      return t;
    },
    earliest: (floor) => {
      if (imageAt(low) >= floor) return low;
      for (let t = low; t <= high; t++) if (imageAt(t) >= floor) return t;
      return NEVER;
    },
  };
}

/** How large the small problems get. */
export interface Size {
  readonly activities: number;
  readonly minutes: number;
  /** Most lags; absent: one more than activities. */
  readonly lags?: number;
}

/** Small problems in which every feature of a problem may meet every other. */
export function smallProblems(size: Size): fc.Arbitrary<Problem> {
  const from = 10;
  const to = from + size.minutes;
  const minute = fc.integer({ min: from, max: to });
  const spans: fc.Arbitrary<Spans> = fc
    .array(fc.tuple(minute, fc.integer({ min: 1, max: 6 })), { minLength: 1, maxLength: 3 })
    .map((list) => unite(list.map(([start, length]) => ({ start, end: start + length }))));
  const map: fc.Arbitrary<TimeMap> = fc
    .tuple(fc.integer({ min: -1, max: 3 }), fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 12, maxLength: 12 }))
    .map(([delay, steps]) => {
      let image = from + delay;
      return stepMap(
        from,
        steps.map((step, k) => (image = Math.max(image + (k === 0 ? 0 : step), from + delay))),
      );
    });
  const lagMap = fc.oneof(fc.integer({ min: -2, max: 4 }), map);
  const sometimes = <T>(arbitrary: fc.Arbitrary<T>, oneIn = 2): fc.Arbitrary<T | undefined> =>
    fc.oneof({ weight: oneIn - 1, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary });
  const point = fc.constantFrom('start' as const, 'end' as const);

  const problemOf = (count: number): fc.Arbitrary<Problem> => {
    const index = fc.nat({ max: count - 1 });
    const holdFor = (i: number): fc.Arbitrary<Hold | undefined> => {
      const next = index.map((k) => (k === i ? (i + 1) % count : k));
      if (count === 1) return sometimes(fc.record({ kind: fc.constant('map' as const), map }));
      return sometimes<Hold>(
        fc.oneof(
          fc.record({ kind: fc.constant('map' as const), map }),
          fc.record({ kind: fc.constant('next' as const), next }),
          fc.record({ kind: fc.constant('mapOrNext' as const), map, next }),
        ),
        2,
      );
    };
    const use = (i: number): fc.Arbitrary<Use> =>
      fc
        .record({ resource: fc.nat({ max: 1 }), units: fc.integer({ min: 1, max: 2 }), hold: holdFor(i) })
        .map(({ hold, ...rest }) => (hold === undefined ? rest : { ...rest, hold }));
    const presence = fc.record({
      exclusion: fc.constant(0),
      side: fc.constantFrom(0 as const, 1 as const),
      until: sometimes(map),
    });
    const mode = (i: number): fc.Arbitrary<Mode> =>
      fc
        .record({
          duration: fc.integer({ min: 0, max: 3 }),
          starts: sometimes(spans, 3),
          calendar: sometimes(spans, 3),
          uses: fc.array(use(i), { maxLength: 2 }),
          presences: sometimes(fc.array(presence, { minLength: 1, maxLength: 1 }), 3),
          cost: sometimes(fc.integer({ min: 0, max: 4 }), 3),
        })
        .map(({ starts, calendar, presences, cost, ...rest }) => ({
          name: 'mode',
          ...rest,
          ...(calendar === undefined ? {} : { calendar }),
          ...(starts === undefined ? (calendar === undefined ? {} : { starts: calendar }) : { starts }),
          ...(presences === undefined
            ? {}
            : { presences: presences.map(({ until, ...p }) => (until === undefined ? p : { ...p, until })) }),
          ...(cost === undefined ? {} : { cost }),
        }));
    const activities: fc.Arbitrary<Activity[]> = fc.tuple(
      ...Array.from({ length: count }, (_, i) =>
        fc.array(mode(i), { minLength: 1, maxLength: 2 }).map((modes): Activity => ({ name: `activity ${i}`, modes })),
      ),
    );
    const lag: fc.Arbitrary<Lag> = fc
      .record({
        from: index,
        fromPoint: point,
        to: index,
        toPoint: point,
        least: sometimes(lagMap, 2),
        most: sometimes(fc.oneof(fc.integer({ min: 0, max: 5 }), map), 3),
        when: sometimes(
          fc.array(fc.record({ activity: index, modes: fc.subarray([0, 1], { minLength: 1 }) }), {
            minLength: 1,
            maxLength: 2,
          }),
        ),
      })
      .map(({ least, most, when, ...rest }) => ({
        ...rest,
        ...(least === undefined ? {} : { least }),
        ...(most === undefined ? {} : { most }),
        ...(when === undefined ? {} : { when }),
      }));
    const term: fc.Arbitrary<Term> = fc.oneof(
      fc.record({
        kind: fc.constant('late' as const),
        name: fc.constant('late'),
        activity: index,
        weight: fc.integer({ min: 0, max: 3 }),
        due: minute,
      }),
      fc.record({
        kind: fc.constant('end' as const),
        name: fc.constant('end'),
        activity: index,
        weight: fc.integer({ min: 0, max: 3 }),
      }),
      fc.record({
        kind: fc.constant('moved' as const),
        name: fc.constant('moved'),
        activity: index,
        weight: fc.integer({ min: 0, max: 3 }),
        at: minute,
        once: fc.integer({ min: 0, max: 20 }),
      }),
    );
    return fc.record({
      from: fc.constant(from),
      to: fc.constant(to),
      resources: fc.tuple(
        ...['hand', 'bench'].map((name) =>
          fc.record({ name: fc.constant(name), capacity: fc.integer({ min: 2, max: 3 }) }),
        ),
      ),
      exclusions: fc.constant(1),
      activities,
      lags: fc.array(lag, { maxLength: size.lags ?? count + 1 }),
      objective: fc.array(term, { minLength: 1, maxLength: 3 }),
    });
  };
  return fc.integer({ min: 1, max: size.activities }).chain(problemOf);
}
