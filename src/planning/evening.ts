import { tempAt } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { warmedThrough } from '../drying/carry-in.ts';
import { openSpans } from '../model/hours.ts';
import type { Material } from '../model/material.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute, Span } from '../time/span.ts';
import { localDay, type LocalDay } from '../time/zone.ts';

/** Work that must leave a colder room in time to be warm enough for its coat. */
export interface BringIn {
  readonly step: PlannedStep;
  /** The last minute at which the shop is open and the work may still leave. */
  readonly by: Minute;
}

/** Paint, glue or filler that would be too cold in the room where it is used. */
export interface KeepWarm {
  readonly material: string;
  readonly room: string;
  /** The first step that takes it. */
  readonly step: PlannedStep;
  /** Coldest that the room gets until then, and the least that the material bears, °C. */
  readonly coldestC: number;
  readonly leastC: number;
}

/** What an evening is good for: what the next day of work needs brought to temperature. */
export interface Evening {
  readonly bringIn: readonly BringIn[];
  readonly keepWarm: readonly KeepWarm[];
}

const MOST_DAYS_AHEAD = 7;
const SAMPLE_MINUTES = 15;

const startOf = (step: PlannedStep): Minute => step.spans[0]?.start ?? step.holdsStationUntil;

function isAhead(step: PlannedStep, { start, end }: Span): boolean {
  return step.done !== true && step.atWork !== true && startOf(step) >= start && startOf(step) < end;
}

/** The next day after that of `now` on which work begins; tomorrow if none does within a week. */
export function nextWorkDay(plan: Plan, now: Minute): LocalDay {
  const days = Array.from({ length: MOST_DAYS_AHEAD }, (_, i) => localDay(now, plan.timeZone, i + 1));
  return days.find((day) => plan.steps.some((s) => isAhead(s, day))) ?? localDay(now, plan.timeZone, 1);
}

/** The last of the minutes from `from` to `to` for which `holds`, which never holds again once it fails. */
function lastMinute(from: Minute, to: Minute, holds: (minute: Minute) => boolean): Minute {
  let [good, bad] = [from, to];
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** The least temperature that a material bears, °C. */
function leastTempC({ limits, minFilmTempC }: Material): number {
  return Math.max(limits?.minTempC ?? -Infinity, minFilmTempC ?? -Infinity);
}

function coldestC(air: ShopAir, room: string, from: Minute, to: Minute): number {
  const series = air.get(room);
  if (series === undefined) return Infinity;
  let coldest = tempAt(series, to);
  for (let minute = from; minute < to; minute += SAMPLE_MINUTES) coldest = Math.min(coldest, tempAt(series, minute));
  return coldest;
}

/** What of the next day's coats asks for something to be warmed before: the work, or the can. */
export function eveningFor({ book, tasks, now }: Situation, air: ShopAir, plan: Plan): Evening {
  const { shop, materials } = book;
  const day = nextWorkDay(plan, now);
  const open = openSpans(shop.opening, shop.timeZone, now, day.end);
  const opens = open.find((s) => s.start >= day.start)?.start ?? day.start;
  const coats = plan.steps.flatMap((step) => {
    const material = materials.get(step.material ?? '');
    return material !== undefined && isAhead(step, day) ? [{ step, material }] : [];
  });
  const bringIn = coats.flatMap(({ step, material }): BringIn[] => {
    const earlier = plan.steps.slice(0, plan.steps.indexOf(step));
    const before = earlier.findLast(
      (s) => s.piece === step.piece && s.section === step.section && s.atOnceAfter === undefined,
    );
    const [from, to] = [air.get(before?.room ?? ''), air.get(step.room)];
    const thicknessMm = tasks.find((t) => t.id === step.id)?.thicknessMm;
    if (before === undefined || before.room === step.room) return [];
    if (from === undefined || to === undefined || thicknessMm === undefined) return [];
    const warm = warmedThrough(from, to, thicknessMm, material);
    const start = startOf(step);
    const free = Math.min(start, Math.max(now, before.holdsStationUntil));
    if (warm.at(start) <= start) return [];
    const latest = lastMinute(free, start, (minute) => warm.at(minute) <= start);
    if (latest >= opens) return [];
    const closes = open.findLast((s) => s.start <= latest)?.end ?? latest;
    return [{ step, by: Math.max(now, Math.min(latest, closes)) }];
  });
  const keepWarm = new Map<string, KeepWarm>();
  for (const { step, material } of coats) {
    const leastC = leastTempC(material);
    const isFromTap = (material.containers ?? []).length === 0;
    if (isFromTap || keepWarm.has(material.id) || leastC === -Infinity) continue;
    const coldest = coldestC(air, step.room, now, startOf(step));
    if (coldest < leastC)
      keepWarm.set(material.id, { material: material.id, room: step.room, step, coldestC: coldest, leastC });
  }
  return { bringIn, keepWarm: [...keepWarm.values()] };
}
