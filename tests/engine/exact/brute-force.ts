import type { Problem } from '../../../src/engine/problem.ts';

/** The least objective over every schedule of a problem with one fixed mode per activity; undefined if there is none. */
export function bruteForce(problem: Problem): number | undefined {
  const modes = problem.activities.map((a) => a.modes[0]!);
  const starts: number[] = [];
  let best: number | undefined;
  const end = (i: number) => starts[i]! + modes[i]!.duration;
  const point = (i: number, which: 'start' | 'end') => (which === 'start' ? starts[i]! : end(i));
  const lagsHold = () =>
    problem.lags.every((lag) => {
      if (lag.from >= starts.length || lag.to >= starts.length) return true;
      const gap = point(lag.to, lag.toPoint) - point(lag.from, lag.fromPoint);
      return gap >= ((lag.least as number | undefined) ?? -1e9) && gap <= ((lag.most as number | undefined) ?? 1e9);
    });
  const fits = () => {
    for (let t = problem.from; t < problem.to; t++) {
      const used = problem.resources.map(() => 0);
      starts.forEach((s, i) => {
        if (s <= t && t < end(i)) for (const use of modes[i]!.uses) used[use.resource]! += use.units;
      });
      if (problem.resources.some((resource, k) => used[k]! > resource.capacity)) return false;
    }
    return true;
  };
  const cost = () =>
    problem.objective.reduce((sum, term) => {
      if (term.kind === 'end') return sum + term.weight * (end(term.activity) - problem.from);
      if (term.kind === 'late') return sum + term.weight * Math.max(0, end(term.activity) - term.due);
      throw new Error('not of the exact form');
    }, 0);
  const place = (i: number) => {
    if (i === modes.length) {
      best = Math.min(best ?? Infinity, cost());
      return;
    }
    for (let s = problem.from; s + modes[i]!.duration <= problem.to; s++) {
      starts.push(s);
      if (lagsHold() && fits()) place(i + 1);
      starts.pop();
    }
  };
  place(0);
  return best;
}
