import type { Activity, Hold, Mode, Presence, Use } from '../engine/problem.ts';
import type { Task } from '../model/task.ts';
import { fixedMap } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import type { Ground } from './ground.ts';
import type { Manner } from './manners.ts';
import type { Place } from './places.ts';
import { followerOf, keepsTools, mannerAsPlanned, minutesTogether, presencesOf, usesOf, WET } from './task-activity.ts';
import { endOfWork } from './work-hours.ts';

/**
 * What is so is so, even where it should not be: of what goes on now, only as much is laid upon a resource as it has
 * room for, and nothing that would clash with what else goes on. So facts never contradict facts.
 */
interface Ledger {
  uses(wanted: readonly Use[]): Use[];
  presences(wanted: readonly Presence[]): Presence[];
}

function openLedger(ground: Ground): Ledger {
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
function atWorkActivity(
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
  const then = minutesTogether(ground, task, manner) - manner.way.workMinutes;
  const mode: Mode = {
    name: 'at work',
    duration: Math.max(lasts, ground.from) + then - begun,
    starts: [{ start: begun, end: begun + 1 }],
    uses: ledger.uses(usesOf(ground, task, manner, activityOf)),
    presences: ledger.presences(presencesOf(ground, task, manner.way.film, manner.place.room)),
  };
  return { activity: { name: task.id, modes: [mode] }, manners: [manner] };
}

/** What goes on now, read before anything else is laid out. */
export interface Facts {
  /** By task id. */
  readonly atWork: ReadonlyMap<string, { readonly activity: Activity; readonly manners: Manner[] }>;
  readonly drying: readonly { readonly task: Task; readonly activity: Activity }[];
}

/**
 * The steps at work and the films that still dry. Where they are more than there is room for, those that last longest
 * are laid on the resource: whenever one of them ends, so have all that were left out.
 */
export function factsOf(ground: Ground, planned: readonly Task[], activityOf: ReadonlyMap<string, number>): Facts {
  const ledger = openLedger(ground);
  const atWork = new Map<string, { activity: Activity; manners: Manner[] }>();
  const drying: { task: Task; activity: Activity }[] = [];
  const claims: { readonly until: Minute; readonly lay: () => void }[] = [];
  const standing = new Map<Place, number>();
  const stands = (place: Place) => standing.set(place, (standing.get(place) ?? 0) + 1);
  // Nobody takes over a place that already holds more than it has room for.
  const crowded = (place: Place) => (standing.get(place) ?? 0) > place.slots;
  for (const task of planned) {
    const begun = ground.situation.atWork.get(task.id);
    if (begun === undefined) continue;
    const manner = mannerAsPlanned(ground, task);
    const film = manner?.way.film;
    const room = manner?.place.room ?? '';
    if (manner !== undefined) stands(manner.place);
    const minutes = Math.max(...task.ways.map((w) => w.workMinutes));
    const end = Math.max(ground.from, begun + minutes);
    const movable = film && ground.drying.mark(film, room, 'handle', 'late', ground.factorOf(task.id))?.at(end);
    claims.push({
      until: movable ?? end,
      lay: () => void atWork.set(task.id, atWorkActivity(ground, ledger, task, begun, activityOf)),
    });
  }
  for (const section of new Set(planned.map((t) => ground.sectionTasks(t)))) {
    const [task] = section;
    const films = doneFilms(ground, section);
    const last = lastOf(films);
    if (task === undefined || last === undefined) continue;
    if (films.some((f) => f.movable > ground.from))
      stands(standingPlace(ground, last.task.object) ?? last.manner.place);
    claims.push({
      until: Math.max(...films.map((f) => f.movable)),
      lay: () => {
        const activity = dryingActivity(ground, ledger, section, crowded, activityOf);
        if (activity !== undefined) drying.push({ task, activity });
      },
    });
  }
  for (const claim of [...claims].sort((a, b) => b.until - a.until)) claim.lay();
  return { atWork, drying };
}

/** Where an object stands is where it was last worked on, wet or not. */
export function standingPlace(ground: Ground, object: string): Place | undefined {
  const { done, tasks } = ground.situation;
  const ended = tasks.filter((t) => t.object === object && done.has(t.id));
  const last = ended.reduce<Task | undefined>(
    (a, b) => (a !== undefined && (done.get(a.id)?.to ?? 0) > (done.get(b.id)?.to ?? 0) ? a : b),
    undefined,
  );
  return last === undefined ? undefined : mannerAsPlanned(ground, last)?.place;
}

interface DoneFilm {
  readonly task: Task;
  readonly manner: Manner;
  readonly end: Minute;
  readonly movable: Minute;
  readonly dustFree: Minute;
}

function lastOf(films: readonly DoneFilm[]): DoneFilm | undefined {
  return films.reduce<DoneFilm | undefined>((a, b) => (a === undefined || b.end >= a.end ? b : a), undefined);
}

function doneFilms(ground: Ground, section: readonly Task[]): DoneFilm[] {
  return section.flatMap((task) => {
    const end = ground.situation.done.get(task.id)?.to;
    if (end === undefined) return [];
    const manner = mannerAsPlanned(ground, task);
    const film = manner?.way.film;
    if (manner === undefined || film === undefined) return [];
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
function dryingActivity(
  ground: Ground,
  ledger: Ledger,
  section: readonly Task[],
  crowded: (place: Place) => boolean,
  activityOf: ReadonlyMap<string, number>,
): Activity | undefined {
  const films = doneFilms(ground, section).filter((f) => Math.max(f.movable, f.dustFree) > ground.from);
  const last = lastOf(films);
  if (last === undefined) return undefined;
  const movable = Math.max(...films.map((f) => f.movable));
  const place = standingPlace(ground, last.task.object) ?? last.manner.place;
  const next = crowded(place) ? undefined : followerOf(ground, last.task, activityOf);
  const until: Hold =
    next === undefined ? { kind: 'map', map: fixedMap(movable) } : { kind: 'mapOrNext', map: fixedMap(movable), next };
  const staying = movable > ground.from ? [ground.placeUse(place), ...ground.objectUses(last.task)] : [];
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
