import fc from '../support/property.ts';
import type { Lag, Mode, Problem, Use } from '../../src/engine/problem.ts';
import { stepMap } from './small-problems.ts';

/**
 * Tiny problems of one coat over another: inside its window with nothing between, or later with a preparation, and
 * some by a last time in any case; the first keeps its place until it can be moved or the next takes it over; a job of another
 * piece wants the same hand, or raises dust where the coats are wet.
 */
export function recoatProblems(): fc.Arbitrary<Problem> {
  const from = 10;
  const minutes = 9;
  const to = from + minutes;
  const map = (least: number, most: number) =>
    fc
      .tuple(
        fc.integer({ min: least, max: most }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: minutes, maxLength: minutes }),
      )
      .map(([delay, steps]) => {
        let image = from + delay - 1;
        return stepMap(
          from,
          steps.map((step) => (image += step)),
        );
      });
  const starts = fc
    .subarray([0, 1, 2, 3, 4, 5, 6, 7, 8], { minLength: 4 })
    .map((list) => list.map((t) => ({ start: from + t, end: from + t + 1 })));
  return fc
    .record({
      recoat: map(0, 2),
      shut: map(1, 4),
      full: map(2, 5),
      handle: map(0, 3),
      atAll: fc.option(map(3, 8), { nil: undefined }),
      dustFree: map(0, 2),
      starts,
      others: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 0, maxLength: 1 }),
      spray: fc.boolean(),
      takesOver: fc.boolean(),
      hands: fc.integer({ min: 1, max: 2 }),
      weights: fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })),
      due: fc.integer({ min: from, max: to }),
    })
    .map(({ recoat, shut, full, handle, dustFree, atAll, ...rest }): Problem => {
      const presences = [{ exclusion: 0, side: 0 as const, until: dustFree }];
      const coat = (next: number | undefined): Mode[] =>
        (rest.spray ? [1, 2] : [1]).map((place) => {
          const hold: Use['hold'] =
            next === undefined ? { kind: 'map', map: handle } : { kind: 'mapOrNext', map: handle, next };
          return {
            name: 'coat',
            duration: 1,
            starts: rest.starts,
            uses: [
              { resource: 0, units: 1 },
              { resource: place, units: 1, hold },
            ],
            presences,
          };
        });
      const work = (duration: number): Mode => ({
        name: 'work',
        duration,
        uses: [
          { resource: 0, units: 1 },
          { resource: 1, units: 1 },
        ],
        presences: [{ exclusion: 0, side: 1 }],
        cost: 1,
      });
      const between = { from: 0, fromPoint: 'end', to: 2, toPoint: 'start' } as const;
      const lags: Lag[] = [
        { from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 0 },
        { from: 1, fromPoint: 'end', to: 2, toPoint: 'start', least: 0 },
        { ...between, least: recoat, most: shut, when: [{ activity: 1, modes: [0] }] },
        { ...between, least: full, when: [{ activity: 1, modes: [1] }] },
        { ...between, to: 1, least: full, when: [{ activity: 1, modes: [1] }] },
        ...(atAll === undefined ? [] : [{ ...between, most: atAll }]),
      ];
      return {
        from,
        to,
        resources: ['hand', 'bench', 'spray'].map((name, r) => ({ name, capacity: r === 0 ? rest.hands : 1 })),
        exclusions: 1,
        activities: [
          { name: 'coat 1', modes: coat(rest.takesOver ? 2 : 1) },
          { name: 'prepare', modes: [{ name: 'none', duration: 0, uses: [] }, work(1)] },
          { name: 'coat 2', modes: coat(undefined) },
          ...rest.others.map((duration) => ({ name: 'job', modes: [work(duration)] })),
        ],
        lags,
        objective: [
          { kind: 'end', name: 'ready', activity: 2, weight: rest.weights[0] },
          { kind: 'late', name: 'late', activity: 2, weight: rest.weights[1], due: rest.due },
          ...rest.others.map((_, k) => ({ kind: 'end' as const, name: 'job', activity: 3 + k, weight: 2 })),
        ],
      };
    });
}
