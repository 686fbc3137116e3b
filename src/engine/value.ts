import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import type { Problem, Schedule, Term } from './problem.ts';

/** What one term costs when its activity runs from `start` to `end`. `from` is the problem's. */
export function termValue(term: Term, from: Minute, start: Minute, end: Minute): number {
  switch (term.kind) {
    case 'late':
      return term.weight * Math.max(0, end - term.due);
    case 'end':
      return term.weight * (end - from);
    case 'moved':
      return start === term.at ? 0 : term.weight * Math.abs(start - term.at) + (term.once ?? 0);
  }
}

/** The value of every term of `schedule`, by index. */
export function termValues(problem: Problem, schedule: Schedule): number[] {
  return problem.objective.map((term) =>
    termValue(term, problem.from, at(schedule.starts, term.activity), at(schedule.ends, term.activity)),
  );
}

/** What the chosen modes of `schedule` cost together. */
export function modesCost(problem: Problem, schedule: Schedule): number {
  return problem.activities.reduce(
    (sum, activity, i) => sum + (at(activity.modes, at(schedule.modes, i)).cost ?? 0),
    0,
  );
}

/** The objective: all terms and the costs of the chosen modes. */
export function valueOf(problem: Problem, schedule: Schedule): number {
  return termValues(problem, schedule).reduce((sum, value) => sum + value, modesCost(problem, schedule));
}
