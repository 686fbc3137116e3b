import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { table } from './table.ts';

interface Command {
  readonly name: string;
  readonly words: readonly string[];
}

const emptyProcess: Command = { name: 'node -e 0', words: ['-e', '0'] };

/** Loaded before a command's own code: says on descriptor 3, when the process ends, its peak resident kilobytes. */
const tellMemory = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs'; process.on('exit', () => writeSync(3, String(process.resourceUsage().maxRSS)));`,
)}`;

/** `speed --runs N`: what whole processes take, from the start of node to its end, beside a node that does nothing. */
export function speed(words: readonly string[]): void {
  const { values } = parseArgs({ args: [...words], options: { runs: { type: 'string', default: '7' } } });
  const runs = Number(values.runs);
  if (!Number.isInteger(runs) || runs < 1) throw new Error('usage: speed [--runs N]');
  const folder = mkdtempSync(join(tmpdir(), 'drybench-speed-'));
  try {
    const commands = commandsIn(folder);
    const memory = commands.map(peakMegabytes);
    const times = commands.map((): number[] => []);
    // In turns, so that a busy spell of the machine falls on all of them alike.
    for (let run = 0; run < runs; run++) commands.forEach((command, i) => times[i]?.push(milliseconds(command)));
    process.stdout.write(reportOf(commands, times, memory));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The demo shop twice: one copy that never gets a plan, and one whose plan is kept. */
function commandsIn(folder: string): readonly Command[] {
  const [fresh, planned] = ['fresh', 'planned'].map((name) => {
    const copy = join(folder, name);
    cpSync('shared/demo', copy, { recursive: true });
    return copy;
  }) as [string, string];
  const at = ['--at', '2027-01-11T07:30'];
  milliseconds(drybench('week', ['week', '--shop', planned, ...at]));
  return [
    emptyProcess,
    drybench('--help', ['--help']),
    drybench('air --reading', ['air', '--reading', '13 °C 82 %']),
    drybench('ready --all, plan kept', ['ready', '--all', '--shop', planned, ...at]),
    drybench('today, plan kept', ['today', '--shop', planned, ...at]),
    drybench('why, plan kept', ['why', 'desk', 'clear-1', '--shop', planned, ...at]),
    drybench('steps for a shell', ['offer', '--', `drybench done --shop ${planned} desk `]),
    drybench('week --look, no plan yet', ['week', '--look', '--shop', fresh, ...at]),
  ];
}

function drybench(name: string, words: readonly string[]): Command {
  return { name, words: ['bin/drybench.cjs', ...words] };
}

function milliseconds({ name, words }: Command): number {
  const began = performance.now();
  const { status, stderr, error } = spawnSync(process.execPath, words, { stdio: ['ignore', 'ignore', 'pipe'] });
  const took = performance.now() - began;
  if (error !== undefined) throw error;
  if (status !== 0) throw new Error(`${name} ended with ${String(status)}: ${stderr.toString()}`);
  return took;
}

/** A run of its own, so that the measuring costs the timed runs nothing; it also warms the disk's cache. */
function peakMegabytes({ name, words }: Command): number {
  const { status, output } = spawnSync(process.execPath, ['--import', tellMemory, ...words], {
    stdio: ['ignore', 'ignore', 'inherit', 'pipe'],
  });
  const kilobytes = Number(output[3]?.toString());
  if (status !== 0 || !(kilobytes > 0)) throw new Error(`${name} ended with ${String(status)} and told no memory`);
  return kilobytes / 1024;
}

function reportOf(
  commands: readonly Command[],
  times: readonly (readonly number[])[],
  memory: readonly number[],
): string {
  const empty = median(times[commands.indexOf(emptyProcess)] ?? []);
  const rows = commands.map(({ name }, i) => {
    const took = times[i] ?? [];
    const middle = median(took);
    return [
      name,
      String(took.length),
      ...[middle, Math.min(...took), Math.max(...took)].map((ms) => ms.toFixed(0)),
      (middle / empty).toFixed(2),
      (memory[i] ?? NaN).toFixed(0),
    ];
  });
  return table([['process', 'runs', 'median ms', 'least ms', 'most ms', 'ratio', 'peak MiB'], ...rows]);
}

function median(list: readonly number[]): number {
  const sorted = list.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return ((sorted[middle] ?? NaN) + (sorted[sorted.length - 1 - middle] ?? NaN)) / 2;
}
