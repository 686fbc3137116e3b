import type { Random } from '../random.ts';
import { int } from '../../typed.ts';
import { costOf } from './model.ts';
import type { Goal } from './model.ts';
import type { Prepared } from './prepare.ts';
import { relaxAround } from './relax.ts';
import { demandCost, readStarts, search } from './search.ts';
import type { Finding } from './search.ts';
import { createSolver } from './solver.ts';

/** Tries to better a schedule by freeing a part of it and searching that part with learning. */
export interface Improver {
  readonly prepared: Prepared;
  readonly random: Random;
  /** Activities that use something. */
  readonly users: Int32Array;
  /** By kind of part: how many activities to free, which adapts to what can be searched through. */
  readonly sizes: number[];
}

export interface Attempt {
  readonly starts: Int32Array | undefined;
  readonly choices: number;
  readonly work: number;
}

const KINDS = 3;
const SMALLEST = 5;
/** Conflicts a part is searched for. */
const CONFLICTS = 300;

export function createImprover(prepared: Prepared, random: Random): Improver {
  const { model } = prepared;
  const users = Int32Array.from([...model.needs.keys()].filter((i) => (model.needs[i] ?? []).length > 0));
  return { prepared, random, users, sizes: new Array<number>(KINDS).fill(Math.min(20, users.length)) };
}

/** Frees one part of `starts` and looks for a schedule that costs at most `target`. */
export function attempt(improver: Improver, starts: Int32Array, target: number, stop: () => boolean): Attempt {
  const { prepared, random, sizes } = improver;
  const { model } = prepared;
  const kind = random.below(KINDS);
  const size = sizes[kind] ?? SMALLEST;
  const free = freePart(improver, starts, kind, Math.round(size));
  const build = relaxAround(prepared, starts, free, limitOf(model.goals, target));
  const setUp = model.activities + prepared.links.length;
  if (build === undefined) return { starts: undefined, choices: 0, work: setUp };
  const solver = createSolver(build);
  if (random.below(2) === 0)
    for (let i = 0; i < starts.length; i++) if (free[i] === 0) solver.guide[i] = int(starts, i);
  let found: Int32Array | undefined;
  let finding: Finding;
  do {
    const limit = found === undefined ? target : costOf(model, found) - 1;
    demandCost(solver, limit);
    finding = search(solver, limit, { conflicts: CONFLICTS, choices: Number.MAX_SAFE_INTEGER, stop });
    if (finding === 'found') found = readStarts(solver);
  } while (finding === 'found');
  if (finding === 'refuted') sizes[kind] = Math.min(improver.users.length, size * 1.05);
  if (finding === 'stopped') sizes[kind] = Math.max(SMALLEST, size * 0.95);
  return { starts: found, choices: solver.choices, work: solver.work + setUp + build.links.length };
}

/** The limit a cost of at most `target` puts on one start, if the objective is one start. */
function limitOf(goals: readonly Goal[], target: number): { activity: number; latest: number } | undefined {
  const [goal] = goals;
  if (goal === undefined || goals.length > 1 || goal.after !== Number.NEGATIVE_INFINITY) return undefined;
  return { activity: goal.activity, latest: Math.floor(target / goal.weight) };
}

function freePart(improver: Improver, starts: Int32Array, kind: number, size: number): Uint8Array {
  const { users, random, prepared } = improver;
  const { duration } = prepared.model;
  const free = new Uint8Array(prepared.model.activities);
  const middle = (i: number) => 2 * int(starts, i) + int(duration, i);
  const spread = kind === 0 ? 0 : kind === 1 ? 0.5 : 4;
  const centre = middle(int(users, random.below(users.length)));
  const range = Math.max(1, ...Array.from(users, (i) => Math.abs(middle(i) - centre)));
  const near = [...users]
    .map((i) => ({ i, distance: Math.abs(middle(i) - centre) / range + spread * random.unit() ** 2 }))
    .sort((a, b) => a.distance - b.distance || a.i - b.i);
  for (const { i } of near.slice(0, size)) free[i] = 1;
  return free;
}
