import type { Schedule } from '../engine/problem.ts';
import type { AirSeries } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { markTimes } from '../drying/dry-marks.ts';
import type { Film } from '../model/material.ts';
import { startOf, type PlannedStep, type PlannedWindow } from '../model/plan.ts';
import type { Need, Task } from '../model/task.ts';
import { intersect, type Minute, type Span, type Spans } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';
import { carryOf } from './carry-lags.ts';
import { withBroughtIn } from './brought-in.ts';
import type { Compiled, WindowMode } from './compiled.ts';
import type { Ground } from './ground.ts';
import type { Manner } from './manners.ts';
import { seat, type Stay } from './seats.ts';
import { mannerAsPlanned } from './task-activity.ts';

interface Laid {
  readonly task: Task;
  readonly manner: Manner;
  readonly start: Minute;
  readonly end: Minute;
  readonly done: boolean;
  readonly chosen: ReadonlyMap<string, number>;
}

function chosenWindows(compiled: Compiled, schedule: Schedule): Map<string, Map<string, number>> {
  const chosen = new Map<string, Map<string, number>>();
  compiled.meanings.forEach((meaning, i) => {
    if (meaning.kind !== 'window') return;
    const choice = meaning.choices[schedule.modes[i] ?? 0];
    const ofCoat = chosen.get(meaning.coat.id) ?? new Map<string, number>();
    chosen.set(meaning.coat.id, ofCoat.set(meaning.film, choice?.window ?? 0));
  });
  return chosen;
}

function laidOut(ground: Ground, compiled: Compiled, schedule: Schedule): Laid[] {
  const chosen = chosenWindows(compiled, schedule);
  const none = new Map<string, number>();
  return compiled.meanings.flatMap((meaning, i): Laid[] => {
    const start = schedule.starts[i] ?? NEVER;
    const end = schedule.ends[i] ?? NEVER;
    const mode = schedule.modes[i] ?? 0;
    const laid = (task: Task, manner: Manner | undefined, done = false): Laid[] => {
      if (manner === undefined) return [];
      const rags = ground.ragsAfter(task.id);
      const way = rags?.ways[0];
      const over = way === undefined ? end : end - way.workMinutes;
      const own: Laid = { task, manner, start, end: over, done, chosen: chosen.get(task.id) ?? none };
      if (rags === undefined || way === undefined) return [own];
      const { place, hands } = manner;
      return [own, { task: rags, manner: { way, place, hands }, start: over, end, done: false, chosen: none }];
    };
    switch (meaning.kind) {
      case 'task':
        return laid(meaning.task, meaning.manners[mode]);
      case 'done':
        return laid(meaning.task, mannerAsPlanned(ground, meaning.task), true);
      case 'window': {
        const prep: WindowMode['prep'] = meaning.choices[mode]?.prep;
        return prep === undefined ? [] : laid(prep.task, prep.manner);
      }
      case 'drying':
      case 'block':
      case 'cleared':
      case 'ready':
        return [];
    }
  });
}

function workSpans(hours: Spans, laid: Laid): Span[] {
  const whole = { start: laid.start, end: laid.end };
  if (!laid.task.mayPause || laid.done) return [whole];
  const [first, ...rest] = intersect(hours, [whole]);
  if (first === undefined) return [whole];
  // Who began before the hours has worked since, and who is at it still after them works until now.
  const last = { start: rest.at(-1)?.start ?? laid.start, end: laid.end };
  return rest.length === 0 ? [last] : [{ start: laid.start, end: first.end }, ...rest.slice(0, -1), last];
}

function releasedAt(ground: Ground, { task, manner, end }: Laid): Minute {
  const { film } = manner.way;
  const movable = film && ground.drying.mark(film, manner.place.room, 'handle', 'late', ground.factorOf(task.id));
  return Math.max(end, movable?.at(end) ?? end);
}

/** When a step is over, and it and all that lies beneath it can be moved. */
function allMovableFrom(ground: Ground, laid: Laid, byTask: ReadonlyMap<string, Laid>): Minute {
  const section = ground.sectionTasks(laid.task).flatMap((t) => byTask.get(t.id) ?? []);
  return Math.max(...section.filter((l) => l.start <= laid.start).map((l) => releasedAt(ground, l)));
}

/** Until when a step by itself keeps its place. */
function ownHold(ground: Ground, laid: Laid, byTask: ReadonlyMap<string, Laid>): Minute {
  const next = byTask.get(ground.nextOf.get(laid.task.id)?.id ?? '');
  if (laid.manner.inPlace === 'until-movable') return allMovableFrom(ground, laid, byTask);
  if (laid.manner.inPlace === 'until-next' && next !== undefined) return next.start;
  const released = releasedAt(ground, laid);
  // A next step that began before this one was over took nothing over from it.
  return next === undefined || next.start < laid.end ? released : Math.min(released, next.start);
}

/** Steps of its section done before it: what they laid keeps the place, too. */
function doneBefore(ground: Ground, laid: Laid, byTask: ReadonlyMap<string, Laid>): Laid[] {
  return ground.sectionTasks(laid.task).flatMap((t) => {
    const other = byTask.get(t.id);
    return other?.done === true && other.start <= laid.start ? [other] : [];
  });
}

function stayOf(ground: Ground, laid: Laid, byTask: ReadonlyMap<string, Laid>, previous: Laid | undefined): Stay {
  const { task, manner } = laid;
  const holds = (l: Laid) => {
    const next = byTask.get(ground.nextOf.get(l.task.id)?.id ?? '');
    if (!l.done) return ownHold(ground, l, byTask);
    if (next?.done === true) return next.start;
    const released = Math.max(...[l, ...doneBefore(ground, l, byTask)].map((film) => releasedAt(ground, film)));
    return next === undefined ? released : Math.max(l.end, Math.min(released, next.start));
  };
  const wet =
    previous?.manner.place === manner.place &&
    (previous.manner.inPlace === 'until-next' ||
      laid.start < Math.max(...[previous, ...doneBefore(ground, laid, byTask)].map((l) => releasedAt(ground, l))));
  const known = ground.situation.done.get(task.id)?.station;
  const before = ground.kept.get(task.id)?.station;
  const kept = manner.place.stations.some((s) => s.id === before) ? before : undefined;
  const sure = known ?? (laid.done || ground.situation.atWork.has(task.id) ? kept : undefined);
  return {
    task: task.id,
    place: manner.place,
    start: laid.start,
    until: holds(laid),
    ...(wet && { takesOver: previous.task.id }),
    ...(kept !== undefined && { wish: kept }),
    ...(sure !== undefined && { fixed: sure }),
  };
}

function blockStays(ground: Ground, { meanings }: Compiled): Stay[] {
  return meanings.flatMap((meaning): Stay[] => {
    if (meaning.kind !== 'block' || meaning.step.atOnceAfter !== undefined) return [];
    const { id, station, holdsStationUntil: until } = meaning.step;
    const place = ground.placeOfStation(station);
    return place === undefined ? [] : [{ task: id, place, start: startOf(meaning.step), until, fixed: station }];
  });
}

function windowOf(ground: Ground, need: Need & { kind: 'window' }, laid: Laid, film: Laid): PlannedWindow | undefined {
  const choice = need.windows[laid.chosen.get(need.task) ?? 0];
  if (choice === undefined || film.manner.way.film === undefined) return undefined;
  const maps = ground.drying.window(film.manner.way.film, film.manner.place.room, choice, ground.factorOf(need.task));
  const shuts = maps.shuts?.at(film.end);
  return {
    opens: maps.opens.at(film.end),
    ...(shuts !== undefined && shuts < NEVER && { shuts }),
    ...(choice.prep !== undefined && { prep: choice.prep }),
    of: need.task,
  };
}

function waitsOf(ground: Ground, laid: Laid, byTask: ReadonlyMap<string, Laid>): PlannedStep['after'] {
  return laid.task.needs.flatMap((need) => {
    const other = byTask.get(need.task);
    if (other === undefined) return [];
    const { film } = other.manner.way;
    switch (need.kind) {
      case 'order':
        return [{ step: need.task, notBefore: other.end + Math.round(need.waitHours * 60) }];
      case 'mark': {
        const map =
          film && ground.drying.mark(film, other.manner.place.room, need.mark, 'late', ground.factorOf(need.task));
        return map === undefined ? [] : [{ step: need.task, mark: need.mark, notBefore: map.at(other.end) }];
      }
      case 'window': {
        const window = windowOf(ground, need, laid, other);
        return window === undefined ? [] : [{ step: need.task, mark: 'recoat' as const, notBefore: window.opens }];
      }
      case 'within':
        return [];
    }
  });
}

function windowStepHas(ground: Ground, laid: Laid, byTask: ReadonlyMap<string, Laid>): PlannedWindow | undefined {
  for (const need of laid.task.needs) {
    if (need.kind !== 'window') continue;
    const film = byTask.get(need.task);
    if (film !== undefined) return windowOf(ground, need, laid, film);
  }
  return undefined;
}

function airOf(air: ShopAir, room: string): AirSeries {
  const series = air.get(room);
  if (series === undefined) throw new Error(`the air of room ${room} is missing`);
  return series;
}

/** Reads the search's answer back into steps with hands, stations, dry marks and windows, in order of start. */
export function decode(ground: Ground, air: ShopAir, compiled: Compiled, schedule: Schedule): PlannedStep[] {
  return decoded(ground, air, compiled, schedule, true);
}

/** Only what is done in them, when, where and by whom: nothing of what they wait for, how their films dry and how work is carried. */
export function decodeBare(ground: Ground, air: ShopAir, compiled: Compiled, schedule: Schedule): PlannedStep[] {
  return decoded(ground, air, compiled, schedule, false);
}

function decoded(ground: Ground, air: ShopAir, compiled: Compiled, schedule: Schedule, shown: boolean): PlannedStep[] {
  const all = laidOut(ground, compiled, schedule);
  const byTask = new Map(all.map((l) => [l.task.id, l]));
  const previousOf = new Map([...ground.nextOf].map(([first, next]) => [next.id, byTask.get(first)]));
  const stays = all
    .filter((l) => l.task.atOnceAfter === undefined)
    .map((l) => stayOf(ground, l, byTask, previousOf.get(l.task.id)));
  const stationOf = seat([...stays, ...blockStays(ground, compiled)].filter((s) => s.until > ground.from));
  const untilOf = new Map(stays.map((s) => [s.task, s]));

  const stationFor = ({ task, manner }: Laid): string => {
    const standing = task.atOnceAfter ?? task.id;
    const known = stationOf.get(standing) ?? untilOf.get(standing)?.fixed;
    const { stations } = manner.place;
    const isThere = task.atOnceAfter === undefined || stations.some((s) => s.id === known);
    return (isThere ? known : undefined) ?? stations[0]?.id ?? '';
  };

  const dryOf = ({ task, manner, end }: Laid, film: Film): PlannedStep['dry'] => {
    const material = ground.drying.material(film);
    return markTimes(material, film, airOf(air, manner.place.room), end, ground.factorOf(task.id));
  };

  const step = (laid: Laid): PlannedStep => {
    const { task, manner } = laid;
    const { film } = manner.way;
    const dry = film && shown ? dryOf(laid, film) : undefined;
    const window = shown ? windowStepHas(ground, laid, byTask) : undefined;
    return {
      id: task.id,
      piece: task.piece,
      section: task.section,
      step: task.step,
      title: task.title,
      stage: task.stage,
      ...(task.coat !== undefined && { coat: task.coat }),
      ...(film !== undefined && { material: film.material }),
      way: manner.way.name,
      room: manner.place.room,
      station: stationFor(laid),
      hands: manner.hands,
      tools: manner.way.tools,
      spans: workSpans(ground.hours.ofHands(manner.hands), laid),
      holdsStationUntil: ownHold(ground, laid, byTask),
      ...(dry !== undefined && { dry }),
      ...(window !== undefined && { window }),
      ...(task.atOnceAfter !== undefined && { atOnceAfter: task.atOnceAfter }),
      after: shown ? waitsOf(ground, laid, byTask) : [],
      ...(laid.done && { done: true as const }),
      ...(ground.situation.atWork.has(task.id) && !laid.done && { atWork: true as const }),
    };
  };
  const steps = all.map(step).sort((a, b) => startOf(a) - startOf(b) || (a.id < b.id ? -1 : 1));
  if (!shown) return steps;
  return withBroughtIn(steps, (s) => byTask.get(s.id)?.task.thicknessMm, {
    ground,
    air,
    carry: carryOf(ground),
    releasedAt: (s) => {
      const laid = byTask.get(s.id);
      return laid === undefined ? NEVER : releasedAt(ground, laid);
    },
  });
}
