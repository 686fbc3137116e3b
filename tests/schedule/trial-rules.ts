import { windowMaps } from '../../src/drying/windows.ts';
import type { Shop } from '../../src/model/shop.ts';
import type { Need, WindowChoice } from '../../src/model/task.ts';
import type { Minute } from '../../src/time/span.ts';
import { dryAt, type Tried } from './trial-steps.ts';

function overlap(a: Minute, aEnd: Minute, b: Minute, bEnd: Minute): boolean {
  return a < bEnd && b < aEnd;
}

function atWorkTogether(a: Tried, b: Tried): boolean {
  return overlap(a.start, a.end, b.start, b.end);
}

/** Clamps stay on a glue line until it can be moved. */
function keepsToolsUntil({ end, movable, laid }: Tried): Minute {
  return laid?.material.family === 'glue' ? movable : end;
}

/** `wet` cannot be moved yet when `next`, of the same object, begins elsewhere. */
function movedWet(wet: Tried, next: Tried): boolean {
  return next.start >= wet.end && next.start < wet.movable && next.station !== wet.station;
}

function dustOnWet(dusty: Tried, wet: Tried): boolean {
  return (
    dusty.task.dusty &&
    wet.laid !== undefined &&
    dusty.station.room === wet.station.room &&
    overlap(dusty.start, dusty.end, wet.start, wet.dustFree)
  );
}

/** Can the two not both be? Every tool is there once. */
function clash(a: Tried, b: Tried): boolean {
  const sameObject = a.task.object === b.task.object;
  if (atWorkTogether(a, b) && (sameObject || a.hands.some((h) => b.hands.includes(h)))) return true;
  const sharesTool = a.way.tools.some((t) => b.way.tools.includes(t));
  if (sharesTool && overlap(a.start, keepsToolsUntil(a), b.start, keepsToolsUntil(b))) return true;
  if (sameObject && (movedWet(a, b) || movedWet(b, a))) return true;
  return dustOnWet(a, b) || dustOnWet(b, a);
}

/** Is there a slot at the station of `step`, at all times, for every object that stays there until it can be moved? */
function slotsSuffice(step: Tried, others: readonly Tried[]): boolean {
  const here = [step, ...others.filter((o) => o.station === step.station)];
  return here.every((begun) => {
    const there = here.filter((o) => o.start <= begun.start && begun.start < o.movable);
    return new Set(there.map((o) => o.task.object)).size <= step.station.slots;
  });
}

function windowHolds(choice: WindowChoice, beneath: Tried, coat: Tried, others: readonly Tried[]): boolean {
  const { laid, end } = beneath;
  if (laid !== undefined) {
    const { opens, shuts } = windowMaps(choice, laid.material, laid.film, laid.air);
    if (coat.start < opens.at(end) || (shuts !== undefined && coat.start > shuts.at(end))) return false;
  }
  const work = others.find((o) => o.task.id === choice.prepTask);
  return choice.prepTask === undefined || (work !== undefined && work.start >= end && work.end <= coat.start);
}

function needHolds(need: Need, step: Tried, others: readonly Tried[]): boolean {
  const other = others.find((o) => o.task.id === need.task);
  if (other === undefined) throw new Error(`${step.task.id} is tried before ${need.task}`);
  switch (need.kind) {
    case 'order':
      return step.start >= other.end + need.waitHours * 60;
    case 'mark':
      return step.start >= dryAt(other.laid, other.end, need.mark);
    case 'within':
      return step.end <= other.end + need.hours * 60;
    case 'window': {
      const used = need.windows.filter((w) => windowHolds(w, other, step, others));
      // Work for a window that the coat does not go into is not done.
      const idle = others.some((o) => o.task.onlyFor === step.task.id && !used.some((w) => w.prepTask === o.task.id));
      return used.length > 0 && !idle;
    }
  }
}

/** May `step` be, beside `others`, among which is all that it waits for? */
export function mayBe(step: Tried, others: readonly Tried[]): boolean {
  return (
    step.task.needs.every((need) => needHolds(need, step, others)) &&
    !others.some((other) => clash(step, other)) &&
    slotsSuffice(step, others)
  );
}

export function stationsOf(shop: Shop): ReadonlyMap<string, Shop['stations'][number]> {
  return new Map(shop.stations.map((s) => [s.id, s]));
}
