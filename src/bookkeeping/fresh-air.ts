import type { Book } from '../model/book.ts';
import type { PlannedStep } from '../model/plan.ts';
import { supplyOf } from '../model/supply.ts';
import type { Task } from '../model/task.ts';
import type { Minute, Span } from '../time/span.ts';
import { usesOf, type Use } from './uses.ts';
import { wayNamed } from './work-left.ts';

/** Solvent that one step gives to the air of its room, taken to leave evenly from `span.start` to `span.end`. */
export interface Vapour {
  readonly material: string;
  readonly room: string;
  readonly grams: number;
  readonly span: Span;
  readonly limit: { readonly of: string; readonly mgPerM3: number; readonly source: string };
}

/** The hour of a day in which a room needs most fresh air. */
export interface FreshAir {
  readonly room: string;
  readonly from: Minute;
  /** What evaporates in that hour. */
  readonly parts: readonly { readonly material: string; readonly grams: number; readonly limit: Vapour['limit'] }[];
  readonly roomM3?: number;
  /** Fresh air that keeps the mixture at its limit. */
  readonly m3PerHour: number;
  /** How often over the limit that hour's vapour is in the room's still air; absent where its volume is unknown. */
  readonly timesLimit?: number;
}

const MINUTES_PER_HOUR = 60;
/** Thinners but water, grams a litre: 780 to 870, common practice, no source. */
const THINNER_G_PER_L = 800;

/** Solvent in what a step takes of its material, with its thinner. */
function fromMaterial(book: Book, task: Task, uses: readonly Use[]): Omit<Vapour, 'room' | 'span'>[] {
  const material = book.materials.get(task.material ?? '');
  const { solventGPerL, solventLimit: limit, thinning } = material ?? {};
  if (material === undefined || solventGPerL === undefined || limit === undefined) return [];
  const litres = uses.find((u) => u.item === material.id)?.value ?? 0;
  const thinner = thinning === undefined || thinning.with === 'water' ? 0 : (litres * thinning.percent) / 100;
  return [{ material: material.id, grams: litres * solventGPerL + thinner * THINNER_G_PER_L, limit }];
}

/** Solvent in what it takes besides, like a stripper. */
function fromSupplies(book: Book, task: Task, uses: readonly Use[]): Omit<Vapour, 'room' | 'span'>[] {
  return task.supplies.flatMap((id) => {
    const { solventGPerL, solventLimit: limit } = supplyOf(book.supplies, id) ?? {};
    const litres = uses.find((u) => u.item === id)?.value ?? 0;
    return solventGPerL === undefined || limit === undefined
      ? []
      : [{ material: id, grams: litres * solventGPerL, limit }];
  });
}

/** What a step of the plan gives off: all the solvent in what it takes, within the hour at the latest. */
function vapourOf(book: Book, tasks: readonly Task[], task: Task, step: PlannedStep): Vapour[] {
  const [first] = step.spans;
  if (first === undefined) return [];
  const uses = usesOf(book, tasks, task, wayNamed(task, step.way));
  const span = {
    start: first.start,
    end: Math.max(step.spans.at(-1)?.end ?? first.end, first.start + MINUTES_PER_HOUR),
  };
  return [...fromMaterial(book, task, uses), ...fromSupplies(book, task, uses)]
    .filter(({ grams }) => grams > 0)
    .map((vapour) => ({ ...vapour, room: step.room, span }));
}

/** What of it evaporates in the hour from `from`. */
function gramsInHour({ grams, span }: Vapour, from: Minute): number {
  const shared = Math.min(span.end, from + MINUTES_PER_HOUR) - Math.max(span.start, from);
  return shared <= 0 ? 0 : (grams * shared) / (span.end - span.start);
}

/** Vapour that begins on `day`, by step. */
export function vapoursOn(day: Span, book: Book, tasks: readonly Task[], steps: readonly PlannedStep[]): Vapour[] {
  const byId = new Map(tasks.map((t) => [t.id, t]));
  return steps.flatMap((step) => {
    const task = byId.get(step.id);
    const start = step.spans[0]?.start ?? NaN;
    return task === undefined || step.done === true || !(start >= day.start && start < day.end)
      ? []
      : vapourOf(book, tasks, task, step);
  });
}

/**
 * The worst hour of each room, where its vapour would pass the limit in still air or the room's volume is unknown. Of a
 * mixture the parts of the limits add up (29 CFR 1910.1000(d)(2)(i), from memory): fresh air that carries G mg an hour at
 * L mg/m³ is G / L m³ an hour, summed over the solvents. A warning with its arithmetic, nothing to rely on: no mixing, no
 * slow evaporation, no breathing right above the work is in it.
 */
export function freshAirNeeds(vapours: readonly Vapour[], roomsM3: ReadonlyMap<string, number>): FreshAir[] {
  const rooms = [...new Set(vapours.map((v) => v.room))];
  return rooms.flatMap((room): FreshAir[] => {
    const inRoom = vapours.filter((v) => v.room === room);
    const roomM3 = roomsM3.get(room);
    // The sum is linear between beginnings and ends, so that one of these hours is the worst.
    const starts = inRoom.flatMap(({ span }) => [span.start, span.end - MINUTES_PER_HOUR]);
    const hours = starts.map((from) => {
      const parts = inRoom.flatMap((v) => {
        const grams = gramsInHour(v, from);
        return grams <= 0 ? [] : [{ material: v.material, grams, limit: v.limit }];
      });
      return { from, parts, m3PerHour: parts.reduce((sum, p) => sum + (p.grams * 1000) / p.limit.mgPerM3, 0) };
    });
    const [worst] = hours.toSorted((a, b) => b.m3PerHour - a.m3PerHour || a.from - b.from);
    if (worst === undefined || (roomM3 !== undefined && worst.m3PerHour <= roomM3)) return [];
    return [{ room, ...worst, ...(roomM3 !== undefined && { roomM3, timesLimit: worst.m3PerHour / roomM3 }) }];
  });
}
