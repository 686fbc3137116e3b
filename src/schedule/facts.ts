import type { Activity, Hold, Mode, Presence, Use } from '../engine/problem.ts';
import type { Task } from '../model/task.ts';
import { fixedMap } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import type { Ground } from './ground.ts';
import type { Manner } from './manners.ts';
import { followerOf, keepsTools, mannerAsPlanned, presencesOf, usesOf, WET } from './task-activity.ts';
import { endOfWork } from './work-hours.ts';

/**
 * What is so is so, even where it should not be: of what goes on now, only as much is laid upon a resource as it has
 * room for, and nothing that would clash with what else goes on. So facts never contradict facts.
 */
export interface Ledger {
  uses(wanted: readonly Use[]): Use[];
  presences(wanted: readonly Presence[]): Presence[];
}

export function openLedger(ground: Ground): Ledger {
  const left = ground.resources.map((r) => r.capacity);
  const sides = new Map<number, 0 | 1>();
  return {
    uses: (wanted) =>
      wanted.filter(({ resource, units }) => {
        const room = left[resource] ?? 0;
        if (room < units) return false;
        left[resource] = room - units;
        return true;
      }),
    presences: (wanted) =>
      wanted.filter(({ exclusion, side }) => {
        const there = sides.get(exclusion);
        if (there === undefined) sides.set(exclusion, side);
        return there === undefined || there === side;
      }),
  };
}

/** A step that is over: its times and nothing more. */
export function doneActivity(task: Task, from: Minute, to: Minute): Activity {
  return {
    name: task.id,
    modes: [{ name: 'done', duration: to - from, starts: [{ start: from, end: from + 1 }], uses: [] }],
  };
}

/** A step that was begun: it stays where it is, with whom it is, and is over no sooner than now. */
export function atWorkActivity(
  ground: Ground,
  ledger: Ledger,
  task: Task,
  begun: Minute,
  activityOf: ReadonlyMap<string, number>,
): { activity: Activity; manners: Manner[] } {
  const manner = mannerAsPlanned(ground, task);
  if (manner === undefined) throw new Error(`no hand or place can do ${task.id}, though the files were checked`);
  const hours = ground.hours.ofHands(manner.hands);
  const end = task.mayPause ? endOfWork(hours, begun, manner.way.workMinutes) : begun + manner.way.workMinutes;
  const lasts = Number.isFinite(end) ? end : begun + manner.way.workMinutes;
  const mode: Mode = {
    name: 'at work',
    duration: Math.max(lasts, ground.from) - begun,
    starts: [{ start: begun, end: begun + 1 }],
    uses: ledger.uses(usesOf(ground, task, manner, activityOf)),
    presences: ledger.presences(presencesOf(ground, task, manner.way.film, manner.place.room)),
  };
  return { activity: { name: task.id, modes: [mode] }, manners: [manner] };
}

interface DoneFilm {
  readonly task: Task;
  readonly manner: Manner;
  readonly end: Minute;
  readonly movable: Minute;
  readonly dustFree: Minute;
}

function doneFilms(ground: Ground, section: readonly Task[]): DoneFilm[] {
  return section.flatMap((task) => {
    const end = ground.situation.done.get(task.id)?.to;
    const manner = mannerAsPlanned(ground, task);
    const film = manner?.way.film;
    if (end === undefined || manner === undefined || film === undefined) return [];
    const reached = (mark: 'handle' | 'dust-free') =>
      ground.drying.mark(film, manner.place.room, mark, 'late', ground.factorOf(task.id))?.at(end) ?? end;
    return [{ task, manner, end, movable: reached('handle'), dustFree: reached('dust-free') }];
  });
}

/**
 * What is left after now of the films already on a section: they keep the place, the object and a glue line's clamps
 * until all of them can be moved, or the next step takes the place over, and are wet until dust-free. Undefined where
 * nothing is left.
 */
export function dryingActivity(
  ground: Ground,
  ledger: Ledger,
  section: readonly Task[],
  activityOf: ReadonlyMap<string, number>,
): Activity | undefined {
  const films = doneFilms(ground, section).filter((f) => Math.max(f.movable, f.dustFree) > ground.from);
  const last = films.reduce<DoneFilm | undefined>((a, b) => (a === undefined || b.end >= a.end ? b : a), undefined);
  if (last === undefined) return undefined;
  const movable = Math.max(...films.map((f) => f.movable));
  const next = followerOf(ground, last.task, activityOf);
  const until: Hold =
    next === undefined ? { kind: 'map', map: fixedMap(movable) } : { kind: 'mapOrNext', map: fixedMap(movable), next };
  const staying = movable > ground.from ? [ground.placeUse(last.manner.place), ...ground.objectUses(last.task)] : [];
  const clamped = films.flatMap((f) => {
    const { film, tools } = f.manner.way;
    if (film === undefined || !keepsTools(ground, film) || f.movable <= ground.from) return [];
    return ground.toolUses(tools).map((use): Use => ({ ...use, hold: { kind: 'map', map: fixedMap(f.movable) } }));
  });
  const wet = films
    .filter((f) => f.dustFree > ground.from)
    .map((f): Presence => ({
      exclusion: ground.book.shop.rooms.findIndex((r) => r.id === f.manner.place.room),
      side: WET,
      until: fixedMap(f.dustFree),
    }));
  return {
    name: `${last.task.piece}/${last.task.section} drying`,
    modes: [
      {
        name: 'drying',
        duration: 0,
        starts: [{ start: ground.from, end: ground.from + 1 }],
        uses: ledger.uses([...staying.map((use) => ({ ...use, hold: until })), ...clamped]),
        presences: ledger.presences(wet),
      },
    ],
  };
}
