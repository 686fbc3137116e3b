import { spawnSync } from 'node:child_process';
import { parseArgs } from 'node:util';
import { defaultSteps } from '../../src/engine/default-steps.ts';
import type { Outcome } from '../../src/engine/problem.ts';
import { solve } from '../../src/engine/solve.ts';
import { violations } from '../../src/engine/valid.ts';
import { type Intake, shopLike } from '../engine/shop-like.ts';
import { table } from './table.ts';

/** What came of one generated shop. Seconds count from the finished problem on; `first` is to its first valid plan. */
interface Measured {
  readonly intake: Intake;
  readonly pieces: number;
  readonly steps: number;
  readonly status: Outcome['status'];
  readonly first?: number;
  readonly seconds: number;
  readonly megabytes: number;
  readonly value?: number;
  readonly bound?: number;
}

const intakes: readonly Intake[] = ['at once', 'as the shop gets through them'];

/**
 * `shops [SIZE...] [--all] [--seed N] [--for SECONDS]`: plans generated shops of so many pieces, with the budget that a shop
 * gets, or for as long as said: all pieces at once, and as the shop gets through them.
 */
export function shops(words: readonly string[]): void {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      all: { type: 'boolean', default: false },
      seed: { type: 'string', default: '7' },
      for: { type: 'string', default: '0' },
      one: { type: 'boolean', default: false },
      intake: { type: 'string' },
    },
  });
  const named = positionals.map(Number);
  const seed = Number(values.seed);
  const long = Number(values.for);
  if (!(long >= 0) || !Number.isInteger(seed) || named.some((size) => !Number.isInteger(size) || size < 1))
    throw new Error('usage: shops [SIZE...] [--all] [--seed N] [--for SECONDS]');
  if (values.one) {
    const intake = intakes.find((known) => known === values.intake) ?? 'at once';
    for (const pieces of named) process.stdout.write(JSON.stringify(planOne(pieces, seed, intake, long)));
    return;
  }
  const sizes = named.length > 0 ? named : [10, 30, 100, 300, ...(values.all ? [1000] : [])];
  const measured = intakes.flatMap((intake) => {
    const own = sizes.map((pieces) => inOwnProcess(pieces, seed, intake, long));
    process.stdout.write(`pieces come in ${intake}\n${reportOf(own)}\n`);
    return own;
  });
  if (measured.some(({ first }) => first === undefined)) process.exitCode = 1;
}

/** In a process of its own: peak memory is a process's, and what one size has warmed up must not help the next. */
function inOwnProcess(pieces: number, seed: number, intake: Intake, long: number): Measured {
  const asked = ['--seed', String(seed), '--intake', intake, '--for', String(long)];
  const words = [process.argv[1] ?? '', 'shops', '--one', String(pieces), ...asked];
  const { status, stdout } = spawnSync(process.execPath, words, { stdio: ['ignore', 'pipe', 'inherit'] });
  if (status !== 0) throw new Error(`the shop of ${pieces} pieces ended with ${String(status)}`);
  return JSON.parse(stdout.toString()) as Measured;
}

/** @param long seconds to search for; 0: with the budget that a shop gets */
function planOne(pieces: number, seed: number, intake: Intake, long: number): Measured {
  const problem = shopLike(pieces, seed, intake);
  const began = performance.now();
  const elapsed = () => (performance.now() - began) / 1000;
  let first: number | undefined;
  const outcome = solve(problem, {
    seed: 1,
    steps: defaultSteps(problem),
    onBetter: () => (first ??= elapsed()),
    ...(long > 0 && { goOn: true, stop: () => elapsed() >= long }),
  });
  const seconds = elapsed();
  const megabytes = process.resourceUsage().maxRSS / 1024;
  const measured = { intake, pieces, steps: problem.activities.length, status: outcome.status, seconds, megabytes };
  if (!('schedule' in outcome)) return measured;
  const [broken] = violations(problem, outcome.schedule);
  if (broken !== undefined) throw new Error(`the plan of ${pieces} pieces breaks a rule: ${JSON.stringify(broken)}`);
  return { ...measured, first: first ?? seconds, value: outcome.value, bound: outcome.bound };
}

function reportOf(measured: readonly Measured[]): string {
  const heads = ['pieces', 'steps', 'status', 'first plan s', 'answer s', 'peak MiB', 'value', 'bound', 'gap %'];
  const rows = measured.map(({ pieces, steps, status, first, seconds, megabytes, value, bound }) => [
    String(pieces),
    String(steps),
    status,
    first?.toFixed(2) ?? '-',
    seconds.toFixed(2),
    megabytes.toFixed(0),
    value?.toFixed(0) ?? '-',
    bound?.toFixed(0) ?? '-',
    value === undefined || bound === undefined ? '-' : gapPercent(value, bound).toFixed(1),
  ]);
  return table([heads, ...rows]) + growthOf(measured);
}

function gapPercent(value: number, bound: number): number {
  return value === bound ? 0 : (100 * (value - bound)) / value;
}

/** The p of time ~ steps^p: slope of the least-squares line through the logarithms. */
function growthOf(measured: readonly Measured[]): string {
  const points = measured.flatMap(({ steps, first }) =>
    first === undefined ? [] : [{ x: Math.log(steps), y: Math.log(first) }],
  );
  const mean = (of: (point: { x: number; y: number }) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [x, y] = [mean((p) => p.x), mean((p) => p.y)];
  const spread = mean((p) => (p.x - x) ** 2);
  if (!(spread > 0)) return 'growth of the time to the first plan: needs two sizes with a plan\n';
  const exponent = mean((p) => (p.x - x) * (p.y - y)) / spread;
  return `growth of the time to the first plan: steps^${exponent.toFixed(2)} (${points.length} sizes)\n`;
}
