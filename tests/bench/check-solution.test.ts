import { expect, test } from 'vitest';
import { solveExact } from '../../src/engine/exact/solve-exact.ts';
import { faultsOf, readDemands } from './check-solution.ts';
import type { Claim } from './check-solution.ts';
import { readInstance } from './read-instance.ts';

// Two activities of 3 and 2 periods share one unit; 2 starts at most 4 after 1. Made up for this test.
const SCH = `2	1	0	0
0	1	2	1	2	[0]	[0]
1	1	1	3	[3]
2	1	2	3	1	[2]	[-4]
3	1	0
0	1	0	0
1	1	3	1
2	1	2	1
3	1	0	0
1
`;

// The same two activities, one after the other, and a third that needs both units of R1. Made up for this test.
const SM = `************************************************************************
projects                      :  1
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   4
   2        1          1           3
   3        1          1           5
   4        1          1           5
   5        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
------------------------------------------------------------------------
  1      1     0       0
  2      1     3       1
  3      1     2       1
  4      1     4       2
  5      1     0       0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1
    2
************************************************************************
`;

const none = { lower: undefined, upper: undefined, status: 'open' };

function solved(name: string, text: string): Claim {
  const outcome = solveExact(readInstance(name, text), { seed: 1, steps: 1e6 });
  if (outcome.status !== 'optimal') throw new Error(outcome.status);
  return { status: 'optimal', makespan: outcome.value, bound: outcome.bound, starts: outcome.schedule.starts };
}

test('a .sch file is read as it is written: start-to-start arcs, done when the last one starts', () => {
  // 1 then 2: 0..3, 3..5.
  const claim = solved('a.sch', SCH);
  expect(claim.makespan).toBe(5);
  expect(faultsOf(claim, readDemands('a.sch', SCH), none)).toEqual([]);
});

test('a .sm file is read as it is written: one after the other', () => {
  const claim = solved('a.sm', SM);
  expect(claim.makespan).toBe(9);
  expect(faultsOf(claim, readDemands('a.sm', SM), none)).toEqual([]);
});

const right: Claim = { status: 'optimal', makespan: 5, bound: 5, starts: [0, 0, 3, 5] };

test.each([
  ['overlap on one unit', { ...right, starts: [0, 0, 2, 5] }, /resource 0 at 2: 2 of 1/],
  ['a maximum lag broken', { ...right, makespan: 8, starts: [0, 0, 6, 8] }, /1 starts less than -4 after 2/],
  ['a minimum lag broken', { ...right, starts: [0, 0, 3, 4], makespan: 4, bound: 4 }, /3 starts less than 2 after 2/],
  ['a first activity that starts late', { ...right, starts: [1, 1, 4, 6], makespan: 6 }, /does not start at 0/],
  ['a makespan of its own', { ...right, makespan: 4, bound: 4 }, /makespan 4, but the last activity starts at 5/],
  ['"optimal" with a gap', { ...right, bound: 4 }, /bound and makespan differ/],
  ['too few starts', { ...right, starts: [0, 0, 3] }, /3 starts for 4 activities/],
  ['a start between two periods', { ...right, starts: [0, 0, 3.5, 5.5], makespan: 5.5, bound: 5.5 }, /no whole number/],
])('the checker sees %s', (_, claim: Claim, fault) => {
  expect(faultsOf(claim, readDemands('a.sch', SCH), none).join('; ')).toMatch(fault);
});

test.each([
  ['a value below what is proven', right, { lower: 6, upper: 6, status: 'optimal' }, /below the published lower bound/],
  ['a bound above what is known', right, { lower: 4, upper: 4, status: 'optimal' }, /above the published value/],
  ['a schedule where none exists', right, { ...none, status: 'infeasible' }, /published as infeasible/],
  [
    '"infeasible" where a schedule is known',
    { status: 'infeasible', bound: 0 },
    { lower: 5, upper: 5, status: 'optimal' },
    /a schedule is published/,
  ],
])('the checker holds %s against the published values', (_, claim: Claim, published, fault) => {
  expect(faultsOf(claim, readDemands('a.sch', SCH), published).join('; ')).toMatch(fault);
});
