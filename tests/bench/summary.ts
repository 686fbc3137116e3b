import type { Known } from './best-known.ts';
import type { Answer } from './instances.ts';

/** One line per set: how many solved, proven, proven infeasible, and the mean deviation from the best known. */
export function summarise(answers: readonly Answer[], known: ReadonlyMap<string, Known>): string {
  const sets = new Map<string, Answer[]>();
  for (const answer of answers) {
    const set = setOf(answer.instance);
    sets.set(set, [...(sets.get(set) ?? []), answer]);
  }
  const head = ['set', 'files', 'solved', 'optimal', 'infeasible', 'unknown', 'deviation', 'bound gap', 'seconds'];
  const rows = [...sets].map(([set, all]) => rowOf(set, all, known));
  return [head, ...rows].map((row) => row.map((cell) => cell.padStart(10)).join(' ')).join('\n') + '\n';
}

/** `sm_j10_psp1.sch` is of sm_j10, `j1201_7.sm` of j120. */
function setOf(instance: string): string {
  return /^(j120|j\d\d|.*(?=_psp))/.exec(instance)?.[0] ?? instance;
}

function rowOf(set: string, all: readonly Answer[], known: ReadonlyMap<string, Known>): string[] {
  const count = (status: Answer['status']) => all.filter((answer) => answer.status === status).length;
  const deviations = all.flatMap(({ instance, makespan }) => {
    const upper = known.get(instance)?.upper;
    return upper === undefined || makespan === undefined ? [] : [makespan / upper - 1];
  });
  const gaps = all.flatMap(({ makespan, bound }) => (makespan === undefined ? [] : [(makespan - bound) / makespan]));
  const mean = (list: readonly number[]) =>
    list.length === 0 ? '-' : `${((100 * list.reduce((sum, d) => sum + d, 0)) / list.length).toFixed(2)} %`;
  return [
    set,
    all.length,
    count('optimal') + count('feasible'),
    count('optimal'),
    count('infeasible'),
    count('unknown'),
    mean(deviations),
    mean(gaps),
    all.reduce((sum, answer) => sum + answer.seconds, 0).toFixed(1),
  ].map(String);
}
