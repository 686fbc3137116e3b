import type { Activity, Hold, Mode, Presence, Use } from '../engine/problem.ts';
import type { Film } from '../model/material.ts';
import { partOf } from '../model/session.ts';
import { sessionParts } from '../model/session-part.ts';
import type { Task } from '../model/task.ts';
import { intersect, type Minute, type Spans } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';
import type { Ground } from './ground.ts';
import { type Manner, mannersOf } from './manners.ts';
import { standingSpans, startsWithin, type Stay } from './standing.ts';
import { mayBeInPlace, unmovedBefore } from './unmoved.ts';
import { WORK_WEIGHT } from './weights.ts';
import { pausingStarts, unbrokenStarts } from './work-hours.ts';

export const WET = 0;
export const DUSTY = 1;

/** The section's next step, which takes over its place, where it is still to come. */
export function followerOf(ground: Ground, task: Task, activityOf: ReadonlyMap<string, number>): number | undefined {
  const { done, atWork } = ground.situation;
  let next = ground.nextOf.get(task.id);
  while (next !== undefined && done.has(next.id)) next = ground.nextOf.get(next.id);
  return next === undefined || atWork.has(next.id) ? undefined : activityOf.get(next.id);
}

/** The name under which the clearing of a place after the task has its number: it ends the stay `until-movable`. */
export function clearingOf(task: Task): string {
  return `${task.id} cleared`;
}

/** Who ends the stay of a step that was begun in place. */
function stayEnds(
  ground: Ground,
  task: Task,
  inPlace: Manner['inPlace'],
  activityOf: ReadonlyMap<string, number>,
): number | undefined {
  if (inPlace === undefined) return undefined;
  return inPlace === 'until-next' ? followerOf(ground, task, activityOf) : activityOf.get(clearingOf(task));
}

/** How long a film keeps its place: until it can be moved, or the section's next step takes the place over. */
function placeHold(ground: Ground, task: Task, released: TimeMap, activityOf: ReadonlyMap<string, number>): Hold {
  const next = followerOf(ground, task, activityOf);
  return next === undefined ? { kind: 'map', map: released } : { kind: 'mapOrNext', map: released, next };
}

function held(uses: readonly Use[], hold: Hold | undefined): Use[] {
  return uses.map((use) => (hold === undefined ? use : { ...use, hold }));
}

/** Clamps stay on a glue line until it may be moved; other tools are free when the work is over. */
export function keepsTools(ground: Ground, film: Film): boolean {
  return ground.drying.material(film).family === 'glue';
}

/** What a task in this manner occupies: place, hands, tools, object. */
export function usesOf(ground: Ground, task: Task, manner: Manner, activityOf: ReadonlyMap<string, number>): Use[] {
  if (task.atOnceAfter !== undefined) return ground.handUses(manner.hands);
  const { film } = manner.way;
  const dries = film && ground.drying.mark(film, manner.place.room, 'handle', 'late', ground.factorOf(task.id));
  const released = dries && ground.fromActivity(task.id, dries);
  const next = stayEnds(ground, task, manner.inPlace, activityOf);
  const stays: Hold | undefined =
    next !== undefined ? { kind: 'next', next } : released && placeHold(ground, task, released, activityOf);
  const clamped = film !== undefined && released !== undefined && keepsTools(ground, film);
  return [
    ...held([ground.placeUse(manner.place)], stays),
    ...ground.handUses(manner.hands),
    ...held(ground.toolUses(manner.way.tools), clamped ? { kind: 'map', map: released } : undefined),
    // Another section of the same object waits until what is wet can be moved with it.
    ...held(ground.objectUses(task), stays),
  ];
}

export function presencesOf(ground: Ground, task: Task, film: Film | undefined, room: string): Presence[] {
  const exclusion = ground.book.shop.rooms.findIndex((r) => r.id === room);
  const until = film && ground.drying.mark(film, room, 'dust-free', 'late', ground.factorOf(task.id));
  return [
    ...(until === undefined ? [] : [{ exclusion, side: WET, until: ground.fromActivity(task.id, until) } as const]),
    ...(task.dusty ? [{ exclusion, side: DUSTY } as const] : []),
  ];
}

function earliestOf(ground: Ground, task: Task): Minute {
  const piece = ground.book.pieces.find((p) => p.id === task.piece);
  return Math.max(ground.from, piece?.arrives ?? 0, ground.situation.notBefore.get(task.id) ?? 0);
}

function startsOf(ground: Ground, task: Task, manner: Manner): Spans {
  const suited = startsBySuiting(ground, task, manner);
  if (task.atOnceAfter !== undefined) return suited;
  const { way, place, hands } = manner;
  const piece = ground.book.pieces.find((p) => p.id === task.piece);
  const standing = piece && standingSpans(piece, task.object, ground.roomOpen.get(place.room));
  if (standing === undefined) return suited;
  const movable = way.film && ground.drying.mark(way.film, place.room, 'handle', 'late', ground.factorOf(task.id));
  const stay: Stay = {
    minutes: way.workMinutes,
    ...(task.mayPause && { pausesOutside: ground.hours.ofHands(hands) }),
    ...(movable && { movable }),
  };
  return intersect(suited, startsWithin(standing, stay));
}

/** Minutes of the task and of what follows it at once. */
export function minutesTogether(ground: Ground, task: Task, { way }: Manner): number {
  return way.workMinutes + ground.ragMinutes(task.id);
}

/** The starts that suit hands and air. */
function startsBySuiting(ground: Ground, task: Task, manner: Manner): Spans {
  const { workMinutes, film } = manner.way;
  const minutes = minutesTogether(ground, task, manner);
  const { hands, place } = manner;
  const earliest = earliestOf(ground, task);
  const air = film === undefined ? [] : [ground.drying.nameOf(film), place.room, task.thicknessMm];
  return ground.once(JSON.stringify(['starts', hands, workMinutes, minutes, task.mayPause, earliest, ...air]), () => {
    const hours = ground.hours.ofHands(hands);
    const byHours = task.mayPause ? pausingStarts(hours, minutes) : unbrokenStarts(hours, minutes);
    const inTime = intersect(byHours, [{ start: earliest, end: ground.to }]);
    if (film === undefined) return inTime;
    return intersect(inTime, ground.drying.starts(film, place.room, workMinutes, task.thicknessMm));
  });
}

/** The task in this manner, begun at one of `starts`. */
export function modeOf(
  ground: Ground,
  task: Task,
  manner: Manner,
  activityOf: ReadonlyMap<string, number>,
  starts: Spans,
): Mode {
  return {
    name: [manner.way.name, `${manner.place.kind} in ${manner.place.room}`, manner.hands.join(' and ')]
      .filter((word) => word !== '')
      .join(', '),
    duration: minutesTogether(ground, task, manner),
    starts,
    ...(task.mayPause && { calendar: ground.hours.ofHands(manner.hands) }),
    uses: usesOf(ground, task, manner, activityOf),
    presences: presencesOf(ground, task, manner.way.film, manner.place.room),
  };
}

/**
 * Until when a task begun in place stays: a next step that waits until all can be moved takes nothing over. (Where the
 * next may take over, it is taken to do so soon: to try both would be a larger search for a rare gain.)
 */
export function stayInPlace(
  ground: Ground,
  task: Task,
  activityOf: ReadonlyMap<string, number>,
): 'until-next' | 'until-movable' {
  const next = followerOf(ground, task, activityOf) === undefined ? undefined : ground.nextOf.get(task.id);
  return next === undefined || unmovedBefore(ground, next).length === 0 ? 'until-movable' : 'until-next';
}

/** Whoever is in can put the rags of a coat away that is done: in the room of the coat. */
function mannersBeside(ground: Ground, task: Task, coat: string): Manner[] {
  const done = ground.situation.tasks.find((t) => t.id === coat);
  const place = done && mannerAsPlanned(ground, done)?.place;
  const places = place === undefined ? ground.places : [place];
  return mannersOf(task, ground.book.shop, places, new Map());
}

/**
 * Where a film beneath may not be safe to move yet when the task begins, each manner comes twice: after that film can be
 * moved, or before, and then it keeps the place. Where the task's own film keeps the place longer anyway, once is enough.
 * @param places if given, the only ones; what goes on beside a coat is done where that is
 */
export function mannersWithPlaces(
  ground: Ground,
  task: Task,
  activityOf: ReadonlyMap<string, number>,
  places = ground.places,
): Manner[] {
  if (task.atOnceAfter !== undefined) return mannersBeside(ground, task, task.atOnceAfter);
  const parts = ground.shares.has(task.id) ? [undefined, ...sessionParts] : [undefined];
  const manners = parts.flatMap((part) => mannersOf(task, ground.book.shop, places, ground.situation.paces, part));
  if (!mayBeInPlace(ground, task)) return manners;
  const inPlace = stayInPlace(ground, task, activityOf);
  return manners.flatMap((manner) => [manner, { ...manner, inPlace }]);
}

/**
 * A step still to do, in every manner that hours, hands and air ever allow; where they allow none, in all that the shop
 * has, so that it can be told what is in the way. What takes longer than it must costs the more.
 * @param way if given, the only one
 */
export function taskActivity(
  ground: Ground,
  task: Task,
  activityOf: ReadonlyMap<string, number>,
  way?: string,
): { activity: Activity; manners: Manner[] } {
  const all = mannersWithPlaces(ground, task, activityOf).filter((m) => way === undefined || m.way.name === way);
  const possible = all.filter((manner) => startsOf(ground, task, manner).length > 0);
  const manners = possible.length > 0 ? possible : all;
  const least = task.onlyFor === undefined ? Math.min(...manners.map((m) => m.way.workMinutes)) : 0;
  const modes = manners.map((m) => ({
    ...modeOf(ground, task, m, activityOf, startsOf(ground, task, m)),
    cost: WORK_WEIGHT * task.people * (m.way.workMinutes - least),
  }));
  return { activity: { name: task.id, modes }, manners };
}

/** The manner in which a task at work, or over, was planned; else the first that the shop has. */
export function mannerAsPlanned(ground: Ground, task: Task): Manner | undefined {
  const part = ground.situation.atWork.has(task.id) ? partOf(ground.sessions, task.id) : undefined;
  const manners = mannersOf(task, ground.book.shop, ground.places, ground.situation.paces, part);
  const done = ground.situation.done.get(task.id);
  const planned = ground.kept.get(task.id);
  const station = done?.station ?? planned?.station;
  const way = done?.way ?? planned?.way;
  const fits = (m: Manner) =>
    (station === undefined || m.place.stations.some((s) => s.id === station)) &&
    (way === undefined || m.way.name === way) &&
    (planned === undefined || planned.hands.every((h) => m.hands.includes(h)));
  return manners.find(fits) ?? manners[0];
}
