import type { Lag, Problem } from '../../../src/engine/problem.ts';

/** Per job: machine and duration of each operation in turn. */
const JOBS = [
  [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
  [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
  [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
  [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
  [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
  [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
];

/** Six jobs over six machines; the last activity, of no length, waits for all of them. */
export function jobShop(): Problem {
  const operations = JOBS.flatMap((job, j) =>
    Array.from({ length: 6 }, (_, k) => ({ job: j, machine: job[2 * k]!, duration: job[2 * k + 1]! })),
  );
  const finish = operations.length;
  const lags = operations.map((operation, i): Lag => {
    const follows = operations[i + 1]?.job === operation.job;
    return { from: i, fromPoint: 'end', to: follows ? i + 1 : finish, toPoint: 'start', least: 0 };
  });
  return {
    from: 0,
    to: 200,
    resources: Array.from({ length: 6 }, (_, k) => ({ name: `machine ${k}`, capacity: 1 })),
    exclusions: 0,
    activities: [
      ...operations.map(({ machine, duration }, i) => ({
        name: `operation ${i}`,
        modes: [{ name: 'only', duration, uses: [{ resource: machine, units: 1 }] }],
      })),
      { name: 'finish', modes: [{ name: 'only', duration: 0, uses: [] }] },
    ],
    lags,
    objective: [{ kind: 'end', name: 'makespan', activity: finish, weight: 1 }],
  };
}
