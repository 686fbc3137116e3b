import type { Mark } from '../../src/model/mark.ts';
import type { Material } from '../../src/model/material.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Task } from '../../src/model/task.ts';
import type { Minute } from '../../src/time/span.ts';
import { on, shop } from './fixture.ts';

// A second opinion on plans of the small shop, written apart from the verifier: it walks minute by minute through two
// days, reads drying off the sheets (the air is the reference air), and knows the shop's hours by heart.

const from = on('mon', '00:00');
const to = from + 4 * 1440;

interface Placed {
  readonly step: PlannedStep;
  readonly task: Task;
  readonly start: Minute;
  readonly end: Minute;
  readonly material: Material | undefined;
}

function sheetMinutes(material: Material | undefined, wanted: readonly Mark[]): number {
  for (const mark of wanted) {
    const hours = material?.marks[mark];
    if (hours !== undefined) return Math.round(hours.high * 60);
  }
  return 0;
}

const dustFree = (p: Placed): Minute => p.end + sheetMinutes(p.material, ['dust-free', 'touch', 'sand', 'handle']);
const movable = (p: Placed): Minute => p.end + sheetMinutes(p.material, ['handle', 'sand', 'touch']);

/** 08:00–12:00 and 13:00–17:00 from Monday to Thursday; the helper leaves at noon. */
function isOpen(minute: Minute, hand: string): boolean {
  const clock = (minute - from) % 1440;
  const morning = clock >= 8 * 60 && clock < 12 * 60;
  const afternoon = clock >= 13 * 60 && clock < 17 * 60;
  return morning || (afternoon && hand !== 'helper');
}

function within(minute: Minute, start: Minute, end: Minute): boolean {
  return start <= minute && minute < end;
}

function needsHold(p: Placed, all: ReadonlyMap<string, Placed>): boolean {
  return p.task.needs.every((need) => {
    const other = all.get(need.task);
    if (other === undefined) return true;
    switch (need.kind) {
      case 'order':
        return p.start - other.end >= need.waitHours * 60;
      case 'mark':
        return p.start >= other.end + sheetMinutes(other.material, [need.mark]);
      case 'within':
        return p.start >= other.end && p.end - other.end <= need.hours * 60;
      case 'window':
        return need.windows.some((w) => {
          const gone = p.start - other.end;
          const inTime = gone >= w.opens.high * 60 && (w.shuts === undefined || gone <= w.shuts.low * 60);
          return inTime && w.prepTask === undefined;
        });
    }
  });
}

function meansHold({ step, task, start, end, material }: Placed): boolean {
  const way = task.ways.find((w) => w.name === step.way)!;
  const station = shop.stations.find((s) => s.id === step.station)!;
  const skilled = way.skill === undefined || step.hands.some((h) => h === 'owner' || h === 'friend');
  const hands = new Set(step.hands).size === task.people && step.hands.length === task.people;
  const potLife = material?.potLife === undefined || end - start <= material.potLife.low * 60;
  return way.stations.includes(station.kind) && skilled && hands && potLife;
}

/** Nothing is in two places, over its capacity, outside hours or in dust at this minute. */
function minuteHolds(minute: Minute, all: readonly Placed[]): boolean {
  const working = all.filter((p) => p.step.spans.some((s) => within(minute, s.start, s.end)));
  const hands = working.flatMap((p) => p.step.hands);
  if (new Set(hands).size !== hands.length) return false;
  if (hands.some((h) => !isOpen(minute, h))) return false;
  const begun = all.filter((p) => within(minute, p.start, p.end));
  if (new Set(begun.map((p) => p.task.object)).size !== begun.length) return false;
  const tools = all.flatMap((p) => {
    const glued = p.material?.family === 'glue' && within(minute, p.start, movable(p));
    return glued || working.includes(p) ? p.step.tools : [];
  });
  if (new Set(tools).size !== tools.length) return false;
  const staying = all.filter((p) => within(minute, p.start, Math.max(p.end, movable(p))));
  for (const station of shop.stations) {
    const objects = new Set(staying.filter((p) => p.step.station === station.id).map((p) => p.task.object));
    if (objects.size > station.slots) return false;
  }
  // What is not yet safe to move, and what its object is worked on or stays at, are in one place.
  const places = new Map<string, string>();
  for (const p of staying) {
    const known = places.get(p.task.object) ?? p.step.station;
    if (known !== p.step.station) return false;
    places.set(p.task.object, known);
  }
  const dusty = begun.filter((p) => p.task.dusty);
  const wet = all.filter((p) => p.material !== undefined && within(minute, p.start, dustFree(p)));
  return !dusty.some((d) => wet.some((w) => w !== d && w.step.room === d.step.room));
}

/** Does the plan of whole, unpaused or base-plan spans hold? Gate and journal are not asked. */
export function holdsByOracle(plan: Plan, tasks: readonly Task[], materials: ReadonlyMap<string, Material>): boolean {
  const all = plan.steps.map((step): Placed => {
    const task = tasks.find((t) => t.id === step.id)!;
    const film = task.ways.find((w) => w.name === step.way)!.film;
    const material = film && materials.get(film.material);
    return { step, task, start: step.spans[0]!.start, end: step.spans.at(-1)!.end, material };
  });
  const byId = new Map(all.map((p) => [p.task.id, p]));
  if (tasks.some((t) => t.onlyFor === undefined && !byId.has(t.id))) return false;
  if (all.some((p) => p.start < on('mon', '07:30'))) return false;
  if (!all.every((p) => needsHold(p, byId) && meansHold(p))) return false;
  for (let minute = from; minute < to; minute += 1) if (!minuteHolds(minute, all)) return false;
  return true;
}
