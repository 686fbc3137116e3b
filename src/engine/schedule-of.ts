import { at } from '../at.ts';
import type { Incumbent } from './improve.ts';
import type { Net } from './net.ts';
import type { Schedule } from './problem.ts';
import { int } from '../typed.ts';

/** The best schedule so far, its modes numbered within their activities. */
export function scheduleOf(net: Net, incumbent: Incumbent): Schedule {
  return {
    starts: [...incumbent.starts],
    ends: Array.from(incumbent.starts, (start, i) => at(net.modes, int(incumbent.modes, i)).slots.end(start)),
    modes: Array.from(incumbent.modes, (m, i) => m - int(net.modeFirst, i)),
  };
}
