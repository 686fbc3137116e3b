import { warmedThrough } from '../drying/carry-in.ts';
import { mapOf } from '../drying/first-minute.ts';
import type { AirSeries } from '../air/series.ts';
import type { Mode, Lag } from '../engine/problem.ts';
import { openSpans } from '../model/hours.ts';
import type { Film, Material } from '../model/material.ts';
import type { Task } from '../model/task.ts';
import type { Minute, Spans } from '../time/span.ts';
import { inTurn, NEVER, type TimeMap } from '../time/time-map.ts';
import type { Ground } from './ground.ts';
import type { Source } from './lags.ts';
import type { Manner } from './manners.ts';
import { mannerAsPlanned } from './task-activity.ts';
import { unmovedBefore } from './unmoved.ts';

/** No shop is shut for longer than this around the time that is planned. */
const SHUT_MINUTES = 60 * 1440;

/** The calendar is looked through by as many minutes. */
const LOOK_MINUTES = 7 * 1440;

/** The first minute from some time on at which somebody can carry: while the shop is open, or as it closes. */
export function carryOf({ book: { shop }, from, to }: Ground): TimeMap {
  const [first, last] = [from - SHUT_MINUTES, to + SHUT_MINUTES];
  const known = new Map<number, Spans>();
  const spansIn = (look: number): Spans => {
    const start = first + look * LOOK_MINUTES;
    const spans =
      known.get(look) ?? openSpans(shop.opening, shop.timeZone, start, Math.min(last, start + LOOK_MINUTES));
    known.set(look, spans);
    return spans;
  };
  return mapOf((t) => {
    for (
      let look = Math.max(0, Math.floor((t - first) / LOOK_MINUTES));
      first + look * LOOK_MINUTES < last;
      look += 1
    ) {
      const span = spansIn(look).find((s) => s.end >= t);
      if (span !== undefined) return Math.max(t, span.start);
    }
    return NEVER;
  });
}

/** Can the cold of the work forbid this material? */
function minds(material: Material): boolean {
  return material.limits !== undefined || material.minFilmTempC !== undefined;
}

/** Does it ask for at least as warm a surface as `other` does? */
function asStrict(material: Material, other: Material): boolean {
  const ask = (m: Material) => [m.limits?.minTempC, m.limits?.dewMarginK, m.minFilmTempC];
  const theirs = ask(other);
  return ask(material).every((value, i) => (value ?? -Infinity) >= (theirs[i] ?? -Infinity));
}

/** Modes that the air allows at all, by room and film. */
function byRoom(manners: readonly (Manner | undefined)[], modes: readonly Mode[]) {
  const rooms = new Map<string, { room: string; film: Film | undefined; modes: number[] }>();
  manners.forEach((manner, mode) => {
    if (manner === undefined || modes[mode]?.starts?.length === 0) return;
    const { film } = manner.way;
    const { room } = manner.place;
    const key = JSON.stringify([room, film]);
    const known = rooms.get(key);
    if (known === undefined) rooms.set(key, { room, film, modes: [mode] });
    else known.modes.push(mode);
  });
  return [...rooms.values()];
}

export interface Around {
  readonly ground: Ground;
  readonly airIn: (room: string) => AirSeries;
  readonly carry: TimeMap;
  readonly sourceOf: (task: string) => Source;
  readonly modesOf: (activity: number) => readonly Mode[];
}

function roomsOf(task: Task, { ground, sourceOf, modesOf }: Around) {
  return ground.once(`rooms of ${task.id}`, () => {
    const source = sourceOf(task.id);
    const own = ground.situation.done.has(task.id) ? mannerAsPlanned(ground, task) : undefined;
    return byRoom(own !== undefined ? [own] : source.manners, modesOf(source.activity));
  });
}

/** Earlier steps of the section after which the work may still be colder than the room in which `task` is done. */
function cameFrom(task: Task, material: Material, rooms: readonly string[], around: Around): Task[] {
  const { ground } = around;
  const section = ground.sectionTasks(task);
  const found = new Set(unmovedBefore(ground, task));
  for (const before of section.slice(0, section.indexOf(task)).reverse()) {
    found.add(before);
    const films = roomsOf(before, around);
    const strict = films.every(({ film }) => film !== undefined && asStrict(ground.drying.material(film), material));
    const [only] = rooms;
    if (strict && rooms.length === 1 && films.every((f) => f.room === only)) break;
  }
  return [...found];
}

/** What is done last of a section may still stand where that was done; what was done before it has been carried since. */
function isLastDone(task: Task, ground: Ground): boolean {
  const { situation } = ground;
  const own = situation.done.get(task.id);
  return (
    own !== undefined && ground.sectionTasks(task).every((t) => (situation.done.get(t.id)?.to ?? own.to) <= own.to)
  );
}

/** Steps that may have had the work in another room: who did them where, by mode. */
interface Comer {
  readonly activity: number;
  readonly count: number;
  readonly rooms: ReturnType<typeof byRoom>;
  /** Until the work leaves the room; comers of one name answer alike. */
  readonly name: string;
  readonly maps: (film: Film | undefined, room: string) => readonly TimeMap[];
}

/** `task` is not coated while the cold that the work brought from a room of `comer` breaks a limit of its material. */
function lagsFrom(comer: Comer, task: Task, around: Around): Lag[] {
  const { ground, airIn, carry, sourceOf } = around;
  const { thicknessMm } = task;
  const to = sourceOf(task.id);
  if (thicknessMm === undefined) return [];
  return roomsOf(task, around).flatMap((here) => {
    const material = here.film && ground.drying.material(here.film);
    if (material === undefined || !minds(material)) return [];
    return comer.rooms.flatMap((there): Lag[] => {
      if (there.room === here.room) return [];
      const key = `${there.room}\n${here.room}\n${thicknessMm}\n${material.id}`;
      const least = ground.once(
        `carried ${key}\n${there.film === undefined ? '' : ground.drying.nameOf(there.film)}\n${comer.name}`,
        () => {
          const warm = ground.once(`warmed ${key}`, () =>
            warmedThrough(airIn(there.room), airIn(here.room), thicknessMm, material),
          );
          return inTurn([...comer.maps(there.film, there.room), carry, warm]);
        },
      );
      const when = [
        ...(there.modes.length === comer.count ? [] : [{ activity: comer.activity, modes: there.modes }]),
        ...(here.modes.length === to.manners.length ? [] : [{ activity: to.activity, modes: here.modes }]),
      ];
      return [
        {
          from: comer.activity,
          fromPoint: 'end',
          to: to.activity,
          toPoint: 'start',
          least,
          ...(when.length > 0 && { when }),
        },
      ];
    });
  });
}

/**
 * A coat on work that was in another room before: it is carried as soon as it may be, follows the new room's air, and is not
 * coated while its own cold breaks a limit.
 */
export function carryLags(task: Task, around: Around): Lag[] {
  const { ground, sourceOf } = around;
  const here = roomsOf(task, around);
  const film = here[0]?.film;
  if (film === undefined) return [];
  const rooms = [...new Set(here.map((r) => r.room))];
  return cameFrom(task, ground.drying.material(film), rooms, around).flatMap((before) => {
    const { activity, manners } = sourceOf(before.id);
    const since = ground.situation.carried?.get(before.id) ?? ground.from;
    const floor = isLastDone(before, ground) ? since : undefined;
    const factor = ground.factorOf(before.id);
    const maps: Comer['maps'] = (laid, room) => {
      const movable = laid && ground.drying.mark(laid, room, 'handle', 'late', factor);
      return [
        ...(movable ? [ground.fromActivity(before.id, movable)] : []),
        ...(floor === undefined ? [] : [atLeast(floor)]),
      ];
    };
    const name = `${String(factor)} ${String(floor)} ${String(ground.ragMinutes(before.id))}`;
    return lagsFrom({ activity, count: manners.length, rooms: roomsOf(before, around), name, maps }, task, around);
  });
}

/** The same from a preparation just before the coat. */
export function carryLagsAfterPrep(
  prep: { readonly activity: number; readonly manners: readonly (Manner | undefined)[] },
  coat: Task,
  around: Around,
): Lag[] {
  const { activity, manners } = prep;
  const rooms = byRoom(manners, around.modesOf(activity));
  return lagsFrom({ activity, count: manners.length, rooms, name: '', maps: () => [] }, coat, around);
}

/** Not before `floor`. */
function atLeast(floor: Minute): TimeMap {
  return mapOf((t) => Math.max(t, floor));
}
