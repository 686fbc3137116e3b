import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';
import { structureOf } from '../../src/engine/structure.ts';

/** A problem that has `schedule`, laid out for a search; and the schedule with its modes numbered through. */
export function numbered(problem: Problem, schedule: Schedule) {
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) throw new Error('a problem with a schedule must have labels');
  const starts = Int32Array.from(schedule.starts);
  const modes = Int32Array.from(schedule.modes, (m, i) => m + (net.modeFirst[i] ?? 0));
  return { net, labels, structure: structureOf(net, labels), settled: { starts, modes } };
}
