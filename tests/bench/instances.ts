import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { solveExact } from '../../src/engine/exact/solve-exact.ts';
import type { Outcome } from '../../src/engine/problem.ts';
import { bestKnown } from './best-known.ts';
import type { Known } from './best-known.ts';
import { faultsOf, readDemands } from './check-solution.ts';
import type { Claim } from './check-solution.ts';
import { readInstance } from './read-instance.ts';
import { summarise } from './summary.ts';

/** What is written for each instance. Starts are those of all activities of the file in its order, dummies too. */
export interface Answer {
  readonly instance: string;
  readonly status: Outcome['status'];
  readonly makespan?: number;
  readonly bound: number;
  readonly starts?: readonly number[];
  readonly seconds: number;
}

/** `instances DIR --seconds S --out OUT`: solves every instance below DIR, one after the other on one core. */
export function instances(words: readonly string[]): void {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      seconds: { type: 'string', default: '10' },
      out: { type: 'string' },
      only: { type: 'string', default: '' },
      seed: { type: 'string', default: '1' },
      cpu: { type: 'boolean', default: false },
    },
  });
  const [folder] = positionals;
  const { out } = values;
  const seconds = Number(values.seconds);
  if (folder === undefined || out === undefined || !(seconds > 0))
    throw new Error('usage: instances DIR --seconds S --out OUT [--only PART-OF-NAME] [--seed N] [--cpu]');
  mkdirSync(out, { recursive: true });
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(sch|sm)$/.test(file) && basename(file).includes(values.only))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  const known = new Map<string, Known>();
  const answers: Answer[] = [];
  for (const file of files) {
    const name = basename(file);
    const best = bestKnown(join(folder, file));
    if (best !== undefined) known.set(name, best);
    const answer = solveFile(join(folder, file), seconds, Number(values.seed), values.cpu ? cpuSeconds : wallSeconds);
    writeFileSync(join(out, `${name}.json`), `${JSON.stringify(answer)}\n`);
    answers.push(answer);
    process.stderr.write(`${oneLine(answer, best)}\n`);
  }
  const faults = answers.flatMap(({ instance }) => faultsOfFile(instance, folder, files, out, known));
  for (const fault of faults) process.stdout.write(`WRONG ${fault}\n`);
  if (faults.length > 0) process.exitCode = 1;
  process.stdout.write(summarise(answers, known));
}

const wallSeconds = () => performance.now() / 1000;

/** For a machine that is busy with other things: counts only what this process got of a core. */
const cpuSeconds = () => process.cpuUsage().user / 1e6;

function solveFile(path: string, seconds: number, seed: number, clock: () => number): Answer {
  const began = clock();
  const problem = readInstance(path, readFileSync(path, 'utf8'));
  const stop = () => clock() - began > seconds;
  const outcome = solveExact(problem, { seed, steps: Number.MAX_SAFE_INTEGER, stop });
  const used = Math.round(1000 * (clock() - began)) / 1000;
  const instance = basename(path);
  switch (outcome.status) {
    case 'optimal':
    case 'feasible':
      return {
        instance,
        status: outcome.status,
        makespan: outcome.value,
        bound: outcome.bound,
        starts: outcome.schedule.starts,
        seconds: used,
      };
    case 'infeasible':
    case 'unknown':
      return { instance, status: outcome.status, bound: 0, seconds: used };
  }
}

/** Reads the answer back from OUT and checks it against the instance file. */
function faultsOfFile(
  instance: string,
  folder: string,
  files: readonly string[],
  out: string,
  known: ReadonlyMap<string, Known>,
): string[] {
  const file = files.find((path) => basename(path) === instance) ?? instance;
  const demands = readDemands(instance, readFileSync(join(folder, file), 'utf8'));
  const claim = JSON.parse(readFileSync(join(out, `${instance}.json`), 'utf8')) as Claim;
  return faultsOf(claim, demands, known.get(instance)).map((fault) => `${instance}: ${fault}`);
}

function oneLine(answer: Answer, best: Known | undefined): string {
  const range = best === undefined ? '' : ` known ${best.status} ${best.lower ?? '?'}..${best.upper ?? '?'}`;
  return `${answer.instance} ${answer.status} ${answer.bound}..${answer.makespan ?? '?'} ${answer.seconds} s${range}`;
}
