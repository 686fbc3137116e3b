import type { Activity, Lag, Problem } from '../../src/engine/problem.ts';
import { at } from '../../src/at.ts';

/** Reads a published instance; its name tells the format: `.sch` (ProGen/max) or `.sm` (PSPLIB, single mode). */
export function readInstance(name: string, text: string): Problem {
  if (name.endsWith('.sch')) return readSch(text);
  if (name.endsWith('.sm')) return readSm(text);
  throw new Error(`${name}: neither .sch nor .sm`);
}

interface Row {
  readonly duration: number;
  readonly units: readonly number[];
}

/** Arcs of a .sch file run from start to start; the last activity starts when everything is over. */
function readSch(text: string): Problem {
  const lines = text.split('\n').map((line) => (line.match(/-?\d+/g) ?? []).map(Number));
  const [n = 0, kinds = 0] = at(lines, 0);
  const lags: Lag[] = [];
  for (let i = 0; i < n + 2; i++) {
    const [from = -1, , count = 0, ...rest] = at(lines, 1 + i);
    for (let k = 0; k < count; k++)
      lags.push({ from, fromPoint: 'start', to: at(rest, k), toPoint: 'start', least: at(rest, count + k) });
  }
  const rows = lines.slice(n + 3, 2 * n + 5).map(([, , duration = 0, ...units]) => ({ duration, units }));
  for (let i = 0; i <= n; i++) lags.push({ from: i, fromPoint: 'end', to: n + 1, toPoint: 'start', least: 0 });
  return toProblem(rows, lags, at(lines, 2 * n + 5).slice(0, kinds));
}

/** A .sm file numbers its jobs from 1 and lets a job start when those before it have ended. */
function readSm(text: string): Problem {
  const lines = text.split('\n');
  const section = (title: string, skip: number) => {
    const begin = lines.findIndex((line) => line.startsWith(title)) + 1 + skip;
    const length = lines.slice(begin).findIndex((line) => line.startsWith('****'));
    const rows = lines.slice(begin, length < 0 ? undefined : begin + length);
    return rows.map((line) => line.trim().split(/\s+/).map(Number));
  };
  const lags = section('PRECEDENCE RELATIONS', 1).flatMap(([job = 0, , , ...successors]) =>
    successors.map((s): Lag => ({ from: job - 1, fromPoint: 'end', to: s - 1, toPoint: 'start', least: 0 })),
  );
  const rows = section('REQUESTS/DURATIONS', 2).map(([, , duration = 0, ...units]) => ({ duration, units }));
  return toProblem(rows, lags, at(section('RESOURCEAVAILABILITIES', 1), 0));
}

function toProblem(rows: readonly Row[], lags: readonly Lag[], capacities: readonly number[]): Problem {
  const longest = rows.map((row, i) =>
    lags.reduce((most, lag) => {
      const start = lag.fromPoint === 'end' ? row.duration : 0;
      return lag.from === i && typeof lag.least === 'number' ? Math.max(most, start + lag.least) : most;
    }, row.duration),
  );
  return {
    from: 0,
    to: longest.reduce((sum, length) => sum + length, 0),
    resources: capacities.map((capacity, k) => ({ name: `R${k + 1}`, capacity })),
    exclusions: 0,
    activities: rows.map((row, i): Activity => ({
      name: String(i),
      modes: [
        {
          name: 'only',
          duration: row.duration,
          uses: row.units.flatMap((units, resource) => (units > 0 ? [{ resource, units }] : [])),
          ...(i === 0 ? { starts: [{ start: 0, end: 1 }] } : {}),
        },
      ],
    })),
    lags,
    objective: [{ kind: 'end', name: 'makespan', activity: rows.length - 1, weight: 1 }],
  };
}
