import { at } from '../at.ts';
import type { Schedule, SearchOptions } from '../engine/problem.ts';
import { refine } from '../engine/refine.ts';
import { sessionKey } from '../model/session.ts';
import type { Compiled } from './compiled.ts';
import type { Manner } from './manners.ts';
import { type Agreed, alike, problemWith } from './session-problem.ts';
import { mannerAsPlanned } from './task-activity.ts';

/** A schedule with the sessions held in it. */
export interface Shared {
  readonly agreed: readonly Agreed[];
  readonly schedule: Schedule;
  readonly value: number;
  readonly steps: number;
}

/** Coats further apart than this are not tried together: one would wait for days. */
const FARTHEST_MINUTES = 4 * 24 * 60;

/** Changes that get their full share of the steps; who finds no place costs less. */
const TRIES = 6;

/** A coat by itself or a session, in time. */
interface Run {
  readonly agreed: Agreed;
  readonly key: string;
  readonly start: number;
  readonly end: number;
}

function runOf(compiled: Compiled, schedule: Schedule, agreed: Agreed): Run {
  const indices = agreed.session.map((id) => compiled.activityOf.get(id) ?? -1);
  return {
    agreed,
    key: sessionKey(agreed.manner.way) ?? '',
    start: at(schedule.starts, at(indices, 0)),
    end: at(schedule.ends, at(indices, indices.length - 1)),
  };
}

/** Every coat that could share, in the sessions it stands in, by what it can share and then by time. */
function runsOf(compiled: Compiled, { agreed, schedule }: Shared): Run[] {
  const held = new Set(agreed.flatMap((one) => one.session));
  const alone = compiled.meanings.flatMap((meaning, i): Agreed[] => {
    if (meaning.kind !== 'task' || !compiled.ground.shares.has(meaning.task.id) || held.has(meaning.task.id)) return [];
    const manner = at(meaning.manners, at(schedule.modes, i));
    return sessionKey(manner.way) === undefined ? [] : [{ session: [meaning.task.id], manner }];
  });
  return [...agreed, ...alone]
    .map((one) => runOf(compiled, schedule, one))
    .sort(
      (a, b) => compare(a.key, b.key) || a.start - b.start || compare(at(a.agreed.session, 0), at(b.agreed.session, 0)),
    );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function mannersOf(compiled: Compiled, task: string): readonly Manner[] {
  const meaning = compiled.meanings[compiled.activityOf.get(task) ?? -1];
  return meaning?.kind === 'task' ? meaning.manners : [];
}

/** The manner of either that every coat of the other could be done in as well. */
function together(compiled: Compiled, a: Agreed, b: Agreed): Agreed | undefined {
  const canAll = (session: readonly string[], manner: Manner) =>
    session.every((task) => mannersOf(compiled, task).some((m) => m.part !== undefined && alike(m, manner)));
  const session = [...a.session, ...b.session];
  if (canAll(b.session, a.manner)) return { session, manner: a.manner };
  return canAll(a.session, b.manner) ? { session, manner: b.manner } : undefined;
}

/** Sessions to be held instead: coats near one another joined. */
interface Move {
  readonly name: string;
  /** How far apart the coats lie, by join. */
  readonly gap: number;
  readonly agreed: readonly Agreed[];
}

interface Join {
  readonly from: Run;
  readonly to: Run;
  readonly gap: number;
  readonly joined: Agreed;
}

function sectionsOf(compiled: Compiled, { session }: Agreed): string[] {
  return session.flatMap((id) => {
    const meaning = compiled.meanings[compiled.activityOf.get(id) ?? -1];
    return meaning?.kind === 'task' ? [`${meaning.task.piece}/${meaning.task.section}`] : [];
  });
}

/** Two runs that could be one: not coats of one section, which dry between. */
function joinsOf(compiled: Compiled, shared: Shared): Join[] {
  const runs = runsOf(compiled, shared);
  return runs.flatMap((from, k) =>
    runs.slice(k + 1).flatMap((to): Join[] => {
      const gap = to.start - from.end;
      if (to.key !== from.key || gap > FARTHEST_MINUTES) return [];
      const own = new Set(sectionsOf(compiled, from.agreed));
      if (sectionsOf(compiled, to.agreed).some((section) => own.has(section))) return [];
      const joined = together(compiled, from.agreed, to.agreed);
      return joined === undefined ? [] : [{ from, to, gap, joined }];
    }),
  );
}

/** Each pair joined by itself, and all coats that two sections could lay together, since joining one pulls at the others. */
function movesFrom(compiled: Compiled, shared: Shared): Move[] {
  const joins = joinsOf(compiled, shared);
  const bySections = new Map<string, Join[]>();
  for (const join of joins)
    for (const a of sectionsOf(compiled, join.from.agreed))
      for (const b of sectionsOf(compiled, join.to.agreed)) {
        const name = [a, b].sort(compare).join(' & ');
        bySections.set(name, [...(bySections.get(name) ?? []), join]);
      }
  const lockstep = [...bySections].flatMap(([, list]) => (list.length > 1 ? [disjoint(list)] : []));
  const parted = shared.agreed
    .filter(({ session }) => session.every((id) => mannersOf(compiled, id).some((m) => m.part !== undefined)))
    .map((one): Move => ({
      name: `part ${one.session.join('+')}`,
      gap: FARTHEST_MINUTES,
      agreed: shared.agreed.filter((other) => other !== one),
    }));
  const joined = [...joins.map((join) => [join]), ...lockstep].map((list): Move => {
    const gone = new Set(list.flatMap((join) => [join.from.agreed, join.to.agreed]));
    return {
      name: list.map((join) => join.joined.session.join('+')).join(' | '),
      gap: list.reduce((sum, join) => sum + Math.max(0, join.gap), 0) / list.length ** 2,
      agreed: [...shared.agreed.filter((one) => !gone.has(one)), ...list.map((join) => join.joined)],
    };
  });
  return [...joined, ...parted].sort((a, b) => a.gap - b.gap || compare(a.name, b.name));
}

/** The nearest joins that leave each run to one of them. */
function disjoint(joins: readonly Join[]): Join[] {
  const taken = new Set<Run>();
  return [...joins]
    .sort((a, b) => a.gap - b.gap || a.from.start - b.from.start)
    .filter(({ from, to }) => {
      if (taken.has(from) || taken.has(to)) return false;
      taken.add(from).add(to);
      return true;
    });
}

/** The schedule's modes as they are in the problem with `agreed`: where a part is asked for, that part of the same manner. */
export function fitted(compiled: Compiled, schedule: Schedule, agreed: readonly Agreed[]): Schedule {
  const partOfTask = new Map<string, { readonly manner: Manner; readonly part: Manner['part'] }>();
  for (const { session, manner } of agreed)
    session.forEach((task, k) => {
      partOfTask.set(task, { manner, part: k === 0 ? 'first' : k === session.length - 1 ? 'last' : 'middle' });
    });
  const modes = compiled.meanings.map((meaning, i) => {
    const mode = at(schedule.modes, i);
    if (meaning.kind !== 'task' || !compiled.ground.shares.has(meaning.task.id)) return mode;
    const now = at(meaning.manners, mode);
    const asked = partOfTask.get(meaning.task.id);
    const wanted = asked?.manner ?? now;
    const found = meaning.manners.findIndex(
      (m) => m.part === asked?.part && alike(m, wanted) && m.way.name === now.way.name && m.inPlace === now.inPlace,
    );
    const near = meaning.manners.findIndex((m) => m.part === asked?.part && alike(m, wanted));
    return Math.max(0, found >= 0 ? found : near);
  });
  return { ...schedule, modes };
}

/**
 * Joins coats that lie near one another into sessions, one change after the other, nearest first, and keeps each that
 * makes the whole cheaper. Everything is planned around it anew within `steps`.
 */
export function shareSessions(
  compiled: Compiled,
  begun: Shared,
  options: SearchOptions & { readonly bound: number },
): Shared {
  let best = begun;
  let left = options.steps;
  const tried = new Set<string>();
  const each = Math.ceil(options.steps / TRIES);
  while (left > 0 && options.stop?.() !== true) {
    const move = movesFrom(compiled, best).find((m) => !tried.has(m.name));
    if (move === undefined) break;
    tried.add(move.name);
    const found = refine(problemWith(compiled, move.agreed), {
      ...options,
      steps: Math.min(left, each),
      from: fitted(compiled, best.schedule, move.agreed),
    });
    left -= Math.max(found?.steps ?? 0, each / 2);
    if (found === undefined || found.value >= best.value) continue;
    best = { agreed: move.agreed, schedule: found.schedule, value: found.value, steps: best.steps + found.steps };
  }
  return best;
}

/** The sessions of the plan that the shop follows, as they are done in it. */
export function keptAgreed(compiled: Compiled): Agreed[] {
  const { ground } = compiled;
  const tasks = new Map(ground.situation.tasks.map((task) => [task.id, task]));
  return ground.sessions.flatMap((session): Agreed[] => {
    const task = tasks.get(at(session, 0));
    const manner = task && mannerAsPlanned(ground, task);
    if (manner === undefined || sessionKey(manner.way) === undefined) return [];
    const open = session.filter((id) => mannersOf(compiled, id).some((m) => m.part !== undefined));
    const fits = open.every((id) => mannersOf(compiled, id).some((m) => m.part !== undefined && alike(m, manner)));
    return fits ? [{ session, manner }] : [];
  });
}

/**
 * Where no plan is followed yet: coats of one material on sections of one piece, the same coat in both, which a hand would
 * lay in one go. The search begins with these together, and parts them where that is better.
 */
export function naturalAgreed(compiled: Compiled): Agreed[] {
  const { ground, meanings } = compiled;
  const groups = new Map<string, Agreed[]>();
  const firstOf = new Map<string, number>();
  for (const meaning of meanings) {
    if (meaning.kind !== 'task' || !ground.shares.has(meaning.task.id)) continue;
    const manner = meaning.manners.find((m) => m.part !== undefined);
    if (manner === undefined) continue;
    const { task } = meaning;
    const place = `${task.piece}/${task.section}\n${sessionKey(manner.way) ?? ''}`;
    const nth = (firstOf.get(place) ?? 0) + 1;
    firstOf.set(place, nth);
    const key = `${task.piece}\n${sessionKey(manner.way) ?? ''}\n${nth}`;
    groups.set(key, [...(groups.get(key) ?? []), { session: [task.id], manner }]);
  }
  return [...groups.values()].flatMap((group): Agreed[] => {
    const whole = group.slice(1).reduce<Agreed | undefined>((a, b) => a && together(compiled, a, b), group[0]);
    return whole === undefined || group.length < 2 ? [] : [whole];
  });
}
