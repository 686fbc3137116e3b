import type { ShopAir } from '../../src/air/shop-air.ts';
import { airAt, type AirSeries } from '../../src/air/series.ts';
import { dryMap } from '../../src/drying/dry-marks.ts';
import { potLifeMap } from '../../src/drying/pot-life.ts';
import { effectiveMark } from '../../src/model/effective-mark.ts';
import { openSpans } from '../../src/model/hours.ts';
import type { Mark } from '../../src/model/mark.ts';
import type { Film, Material } from '../../src/model/material.ts';
import type { Hand, Station } from '../../src/model/shop.ts';
import type { SessionPart } from '../../src/model/session-part.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { Task, Way } from '../../src/model/task.ts';
import { intersect, type Minute, type Span, type Spans } from '../../src/time/span.ts';

/** A small shop to be planned by trying everything. */
export interface Trial {
  readonly situation: Situation;
  readonly air: ShopAir;
  /** Nothing is over after this. */
  readonly to: Minute;
  /** Only starts this many minutes apart are tried. */
  readonly gridMinutes: number;
}

/** One way, at one station, by certain hands, from a certain minute: all that there is to choose about a step. */
export interface Tried {
  readonly task: Task;
  readonly way: Way;
  readonly station: Station;
  readonly hands: readonly string[];
  /** Shares mixing, set-up and wash-up, as this part of a session; absent: by itself. */
  readonly part?: SessionPart;
  readonly minutes: number;
  readonly spans: readonly Span[];
  readonly start: Minute;
  readonly end: Minute;
  readonly laid?: { readonly material: Material; readonly film: Film; readonly air: AirSeries };
  /** At the slow end; the end of the work where nothing has to dry. */
  readonly movable: Minute;
  readonly dustFree: Minute;
  readonly stackable: Minute;
}

/** When what was laid until `end` has reached `wanted`, or what stands in for it, at the slow end of its spread. */
export function dryAt(laid: Tried['laid'], end: Minute, wanted: Mark): Minute {
  const mark = laid && effectiveMark(laid.material, wanted);
  return laid === undefined || mark === undefined
    ? end
    : dryMap(laid.material, mark, 'late', laid.film, laid.air).at(end);
}

function teamsOf(hands: readonly Hand[], people: number): Hand[][] {
  if (people === 0) return [[]];
  return hands.flatMap((hand, i) => teamsOf(hands.slice(i + 1), people - 1).map((team) => [hand, ...team]));
}

/** A job of at least so many minutes is not begun just before a break. */
const LEAST_STRETCH_MINUTES = 15;

/** The hands-on spans of work begun at `start`; undefined where it cannot be done from there. */
function workFrom(hours: Spans, start: Minute, minutes: number, mayPause: boolean): Span[] | undefined {
  const spans: Span[] = [];
  let left = minutes;
  for (const { start: opens, end: shuts } of hours) {
    if (shuts <= start) continue;
    if (spans.length === 0 && start < opens) return undefined;
    const from = Math.max(start, opens);
    const span = { start: from, end: Math.min(shuts, from + left) };
    left -= span.end - span.start;
    if (left > 0 && (!mayPause || (spans.length === 0 && span.end - span.start < LEAST_STRETCH_MINUTES)))
      return undefined;
    spans.push(span);
    if (left === 0) return spans;
  }
  return undefined;
}

/** Does the material bear the air of every minute from the start of application until it is dust-free? */
function airBears({ material, air, film }: NonNullable<Tried['laid']>, start: Minute, end: Minute): boolean {
  const mark = material.marks['dust-free'] === undefined ? 'touch' : 'dust-free';
  const until = dryMap(material, mark, 'late', film, air).at(end);
  const { limits } = material;
  for (let minute = start; limits !== undefined && minute < until; minute += 1) {
    const { tempC, rhPercent } = airAt(air, minute);
    if (tempC < limits.minTempC || tempC > limits.maxTempC) return false;
    if (rhPercent < limits.minRhPercent || rhPercent > limits.maxRhPercent) return false;
  }
  return end <= (potLifeMap(material, air)?.at(start) ?? end);
}

/** Two coats that could be laid with what is mixed once: one material through the same tools. */
function couldShare(a: Way, b: Way): boolean {
  const tools = (way: Way) => [...way.tools].sort().join();
  return a.inSession !== undefined && a.film?.material === b.film?.material && tools(a) === tools(b);
}

/** By itself, and, where another task could share with it, as any part of a session. */
function partsOf(way: Way, task: Task, tasks: readonly Task[]): (SessionPart | undefined)[] {
  const others = tasks.filter((t) => t.id !== task.id);
  return others.some((t) => t.ways.some((w) => couldShare(way, w)))
    ? [undefined, 'first', 'middle', 'last']
    : [undefined];
}

/** Every single way of doing `task`, by start, as if it were alone in the shop. */
export function triesOf({ situation, air, to, gridMinutes }: Trial, task: Task): Tried[] {
  const { book, now, notBefore } = situation;
  const { shop } = book;
  const arrives = book.pieces.find((p) => p.id === task.piece)?.arrives ?? now;
  const earliest = Math.max(now, arrives, notBefore.get(task.id) ?? now);
  const hoursOf = (team: readonly Hand[]) =>
    [shop.opening, ...team.map((h) => h.hours)].reduce<Spans>(
      (left, hours) => intersect(left, openSpans(hours, shop.timeZone, now, to)),
      [{ start: now, end: to }],
    );
  const tries: Tried[] = [];
  for (const team of teamsOf(shop.hands, task.people)) {
    const hours = hoursOf(team);
    for (const way of task.ways) {
      if (way.skill !== undefined && !team.some((h) => h.skills.includes(way.skill ?? ''))) continue;
      for (const station of shop.stations) {
        if (!way.stations.includes(station.kind)) continue;
        const roomAir = air.get(station.room)!;
        const laid = way.film && { material: book.materials.get(way.film.material)!, film: way.film, air: roomAir };
        for (const part of partsOf(way, task, situation.tasks)) {
          const minutes = part === undefined ? way.workMinutes : (way.inSession?.[part] ?? way.workMinutes);
          for (let start = now; start < to; start += gridMinutes) {
            if (start < earliest) continue;
            const spans = workFrom(hours, start, minutes, task.mayPause);
            const end = spans?.at(-1)?.end;
            if (spans === undefined || end === undefined || (laid && !airBears(laid, start, end))) continue;
            tries.push({
              task,
              way,
              station,
              hands: team.map((h) => h.id),
              ...(part && { part }),
              minutes,
              spans,
              start,
              end,
              ...(laid && { laid }),
              movable: dryAt(laid, end, 'handle'),
              dustFree: dryAt(laid, end, 'dust-free'),
              stackable: dryAt(laid, end, 'stack'),
            });
          }
        }
      }
    }
  }
  return tries.sort((a, b) => a.start - b.start);
}
