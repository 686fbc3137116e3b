import { int } from './typed.ts';
import { type Incumbent, restore } from './improve.ts';
import { Labels } from './labels.ts';
import { alone, chains, movedOf, type Off, offHome, withNeighbours, withObstacles } from './moved-groups.ts';
import { netOf } from './net.ts';
import { attempt, modesOf, placeHome, placeIn, placeNear, type Standing, standingOf } from './place-back.ts';
import type { Problem, Schedule } from './problem.ts';
import { scheduleOf } from './schedule-of.ts';
import { type Search, searchOf } from './search.ts';
import { violations } from './valid.ts';

/** Minutes from the home of what moved in which others may give way a little. */
const spares = [4, 12, 48].map((hours) => hours * 60);

export interface PutBackOptions {
  /** Says in which modes things were at home. */
  readonly from: Schedule;
  /** What is tried as a whole: the activities of one piece of work, say. */
  readonly wholes: readonly (readonly number[])[];
  /** Placements tried after which only wholes and single activities are still looked at. */
  readonly steps: number;
}

/**
 * Puts back what moved off its home (the `at` of its `moved` term) further than it has to. In turn each whole, each moved
 * activity with what moved behind it, each with what lies in its way, each with what may give way to it a little, and each
 * alone is placed at home or as near behind it as there is room, all else staying where it is; only what takes up nothing
 * (that a piece is ready, that a place is cleared) follows. It is kept if no rule is broken, no `late` term and no modes cost
 * more, and all moves together cost less. This goes on until nothing goes back any more.
 *
 * So in the answer no single activity can go home, and no whole in the modes of `from`, all else staying as it is, unless a
 * rule were broken, a date later or more work called for. That others together cannot is tried but not promised.
 *
 * `schedule` must be valid.
 * @throws {Error} if the answer breaks a rule of the problem, which is a defect.
 */
export function putBack(problem: Problem, schedule: Schedule, options: PutBackOptions): Schedule {
  if (problem.objective.every((term) => term.kind !== 'moved' || schedule.starts[term.activity] === term.at))
    return schedule;
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) return schedule;
  const search = searchOf(net, labels, 0);
  const answer: Incumbent = {
    value: 0,
    bound: 0,
    starts: Int32Array.from(schedule.starts),
    modes: Int32Array.from(schedule.modes, (m, i) => int(net.modeFirst, i) + m),
  };
  restore(search, answer);
  putAllBack(search, options);
  answer.starts.set(search.plan.starts);
  answer.modes.set(search.plan.modes);
  const found = scheduleOf(net, answer);
  const [broken] = violations(problem, found);
  if (broken !== undefined) throw new Error(`what was put back breaks a rule: ${JSON.stringify(broken)}`);
  return found;
}

function putAllBack(search: Search, { from, wholes, steps }: PutBackOptions): void {
  let standing = standingOf(search);
  const tryEach = <T>(list: readonly T[], attempt: (one: T) => boolean, bounded: boolean): boolean => {
    let changed = false;
    for (const one of list) {
      if (bounded && search.inserter.steps > steps) break;
      changed = attempt(one) || changed;
    }
    return changed;
  };
  const kept = (next: Standing | undefined): boolean => {
    standing = next ?? standing;
    return next !== undefined;
  };
  const near = (group: readonly number[]): boolean =>
    [true, false].some((keepsModes) =>
      kept(attempt(search, group, standing, (list) => placeNear(search, list, group, from, keepsModes))),
    );
  const whole = (group: readonly number[]): boolean =>
    kept(attempt(search, group, standing, (list) => placeHome(search, list, group, from)));
  const single = ([i = -1]: readonly number[]): boolean =>
    modesOf(search, i, from).some((mode) =>
      [true, false].some((follow) =>
        kept(attempt(search, [i], standing, (list) => placeIn(search, list, i, mode), follow)),
      ),
    );
  const off = (): Off[] => offHome(search);
  for (let changed = true; changed;) {
    changed = tryEach(movedOf(wholes, off()), whole, false);
    changed = tryEach(chains(search, off()), near, true) || changed;
    changed = tryEach(withObstacles(search, off()), near, true) || changed;
    for (const spare of spares) changed = tryEach(withNeighbours(search, off(), spare), near, true) || changed;
    changed = tryEach(alone(off()), single, false) || changed;
  }
}

