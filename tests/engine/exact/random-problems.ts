import fc from '../../support/property.ts';
import type { Lag, Problem, Term } from '../../../src/engine/problem.ts';

/** Small problems of the exact form: tight enough that a fair share of them has no schedule. */
export function smallProblem(objective: 'makespan' | 'weighted'): fc.Arbitrary<Problem> {
  return problemOf(objective, { min: 2, max: 5 }, { min: 4, max: 7 });
}

/** Too large to enumerate, small enough to check a schedule of in no time. */
export function middlingProblem(objective: 'makespan' | 'weighted'): fc.Arbitrary<Problem> {
  return problemOf(objective, { min: 8, max: 14 }, { min: 20, max: 50 });
}

interface Range {
  readonly min: number;
  readonly max: number;
}

function problemOf(objective: 'makespan' | 'weighted', activities: Range, horizon: Range): fc.Arbitrary<Problem> {
  return fc.integer(activities).chain((n) =>
    fc
      .record({
        from: fc.integer({ min: -2, max: 3 }),
        periods: fc.integer(horizon),
        capacities: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 2 }),
        durations: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: n, maxLength: n }),
        units: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 2 })), {
          minLength: n,
          maxLength: n,
        }),
        lags: fc.array(lagAmong(n), { maxLength: n + 1 }),
        terms: fc.array(termOf(n), { minLength: 1, maxLength: 3 }),
      })
      .map(({ from, periods, capacities, durations, units, lags, terms }): Problem => {
        const last: Lag[] = durations.map((_, i) => ({
          from: i,
          fromPoint: 'end',
          to: n,
          toPoint: 'start',
          least: 0,
        }));
        return {
          from,
          to: from + periods,
          resources: capacities.map((capacity, k) => ({ name: `R${k}`, capacity })),
          exclusions: 0,
          activities: [...durations, 0].map((duration, i) => ({
            name: `a${i}`,
            modes: [
              {
                name: 'only',
                duration,
                uses: capacities.flatMap((capacity, resource) => {
                  const wanted = Math.min(units[i]?.[resource] ?? 0, capacity);
                  return wanted > 0 ? [{ resource, units: wanted }] : [];
                }),
              },
            ],
          })),
          lags: [...lags, ...last],
          objective:
            objective === 'makespan'
              ? [{ kind: 'end', name: 'makespan', activity: n, weight: 1 }]
              : termsFrom(terms, from),
        };
      }),
  );
}

function lagAmong(n: number): fc.Arbitrary<Lag> {
  const activity = fc.integer({ min: 0, max: n - 1 });
  const point = fc.constantFrom('start' as const, 'end' as const);
  return fc
    .record({ from: activity, to: activity, fromPoint: point, toPoint: point, least: fc.integer({ min: -3, max: 4 }) })
    .chain((lag) =>
      fc.oneof(
        fc.constant(lag),
        fc.integer({ min: 0, max: 3 }).map((width) => ({ ...lag, most: lag.least + width })),
      ),
    );
}

function termOf(n: number) {
  return fc.record({
    activity: fc.integer({ min: 0, max: n - 1 }),
    weight: fc.integer({ min: 0, max: 4 }),
    due: fc.option(fc.integer({ min: 0, max: 8 }), { nil: undefined }),
  });
}

function termsFrom(
  terms: readonly { readonly activity: number; readonly weight: number; readonly due: number | undefined }[],
  from: number,
): Term[] {
  return terms.map(({ activity, weight, due }) =>
    due === undefined
      ? { kind: 'end', name: 'end', activity, weight }
      : { kind: 'late', name: 'late', activity, weight, due: from + due },
  );
}
