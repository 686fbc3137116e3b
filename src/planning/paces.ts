import { learnPace, type Observation } from '../drying/learn.ts';
import { openSpans } from '../model/hours.ts';
import type { Learned } from '../model/learned.ts';
import type { Paces } from '../model/paced-work.ts';
import type { Shop } from '../model/shop.ts';
import type { DoneStep, Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { intersect, lengthOf } from '../time/span.ts';

/** Paces are kept to a twentieth, so that one more job, done as usual, moves no plan. */
const GRAIN = 20;

/** Minutes of work between two times: what pauses is not worked on while the shop is shut. */
function workedMinutes(task: Task, { from, to }: DoneStep, shop: Shop): number {
  if (!task.mayPause) return to - from;
  const open = lengthOf(intersect(openSpans(shop.opening, shop.timeZone, from, to), [{ start: from, end: to }]));
  return open > 0 ? open : to - from;
}

function observed(task: Task, done: DoneStep, shop: Shop): Observation | undefined {
  const way = task.ways.length === 1 ? task.ways[0] : task.ways.find((w) => w.name === done.way);
  if (way === undefined || done.timed !== true) return undefined;
  return { kind: 'at', expected: way.workMinutes, seen: workedMinutes(task, done, shop) };
}

function rounded(learned: Learned): Learned {
  return { ...learned, factor: Math.round(learned.factor * GRAIN) / GRAIN };
}

/**
 * The pace of each hand of whom times are known: those that somebody stated, of work whose usual minutes are known. Where
 * several worked together, the time speaks of each.
 */
export function pacesOf(shop: Shop, { tasks, done }: Pick<Situation, 'tasks' | 'done'>): Paces {
  const observations = new Map<string, Observation[]>();
  for (const task of tasks) {
    const over = done.get(task.id);
    const seen = over && observed(task, over, shop);
    if (seen === undefined) continue;
    for (const hand of over?.hands ?? []) observations.set(hand, [...(observations.get(hand) ?? []), seen]);
  }
  return new Map(
    shop.hands.flatMap(({ id }): [string, Learned][] => {
      const seen = observations.get(id);
      return seen === undefined ? [] : [[id, rounded(learnPace(seen))]];
    }),
  );
}
