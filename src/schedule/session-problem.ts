import { at } from '../at.ts';
import type { Activity, Lag, Mode, Problem, Use } from '../engine/problem.ts';
import { partOf, SESSION_GAP_MINUTES, type Session } from '../model/session.ts';
import type { Compiled, Meaning } from './compiled.ts';
import type { Ground } from './ground.ts';
import type { Manner } from './manners.ts';

/** May two coats be laid in one session if they are done in these manners? */
export function alike(a: Manner, b: Manner): boolean {
  return (
    a.way.film?.material === b.way.film?.material &&
    a.place === b.place &&
    a.hands.join('\n') === b.hands.join('\n') &&
    [...a.way.tools].sort().join('\n') === [...b.way.tools].sort().join('\n')
  );
}

function shut(mode: Mode): Mode {
  return { ...mode, starts: [] };
}

/** Nothing else goes through the tools until the next coat of the session begins. */
function keepingTools(mode: Mode, tools: ReadonlySet<number>, next: number): Mode {
  const uses = mode.uses.map((use): Use => (tools.has(use.resource) ? { ...use, hold: { kind: 'next', next } } : use));
  return { ...mode, uses };
}

/** The manner in which a session is done: that of its members' first that all of them have. */
export interface Agreed {
  readonly session: Session;
  readonly manner: Manner;
}

function mannersOf(meaning: Meaning | undefined): readonly Manner[] {
  return meaning?.kind === 'task' ? meaning.manners : [];
}

function memberActivity(
  compiled: Compiled,
  { session, manner }: Agreed,
  task: string,
  next: number | undefined,
): Activity {
  const { problem, ground, activityOf } = compiled;
  const index = activityOf.get(task) ?? -1;
  const activity = at(problem.activities, index);
  const tools = new Set(ground.toolUses(manner.way.tools).map((use) => use.resource));
  const holding = (mode: Mode): Mode => (next === undefined ? mode : keepingTools(mode, tools, next));
  const { situation } = ground;
  if (situation.done.has(task))
    return next === undefined || situation.done.has(at(session, session.indexOf(task) + 1))
      ? activity
      : {
          ...activity,
          modes: activity.modes.map((mode) => holding({ ...mode, uses: ground.toolUses(manner.way.tools) })),
        };
  if (situation.atWork.has(task)) return { ...activity, modes: activity.modes.map(holding) };
  const part = partOf([session], task);
  const manners = mannersOf(compiled.meanings[index]);
  const modes = activity.modes.map((mode, m) => {
    const own = at(manners, m);
    return own.part === part && alike(own, manner) ? holding(mode) : shut(mode);
  });
  return { ...activity, modes };
}

function ties(ground: Ground, activityOf: ReadonlyMap<string, number>, { session, manner }: Agreed): Lag[] {
  const indices = session.map((id) => activityOf.get(id) ?? -1);
  const { done } = ground.situation;
  const [first = -1] = indices;
  const last = indices.at(-1) ?? -1;
  const gapAfter = (id: string) => SESSION_GAP_MINUTES - ground.ragMinutes(id);
  const potLife = manner.way.film && ground.drying.potLife(manner.way.film, manner.place.room);
  return [
    ...indices.slice(1).flatMap((to, k): Lag[] =>
      done.has(at(session, k + 1))
        ? []
        : [
            {
              from: at(indices, k),
              fromPoint: 'end',
              to,
              toPoint: 'start',
              least: 0,
              most: gapAfter(at(session, k)),
            },
          ],
    ),
    ...(potLife === undefined
      ? []
      : [{ from: first, fromPoint: 'start' as const, to: last, toPoint: 'end' as const, most: potLife }]),
  ];
}

/** The problem in which just these sessions are held, and every other coat mixes and washes up by itself. */
export function problemWith(compiled: Compiled, agreed: readonly Agreed[]): Problem {
  const { problem, ground, activityOf, meanings } = compiled;
  if (ground.shares.size === 0) return problem;
  const activities = problem.activities.map((activity, i): Activity => {
    const meaning = meanings[i];
    if (meaning?.kind !== 'task' || !ground.shares.has(meaning.task.id)) return activity;
    return {
      ...activity,
      modes: activity.modes.map((mode, m) => (at(meaning.manners, m).part === undefined ? mode : shut(mode))),
    };
  });
  for (const one of agreed)
    one.session.forEach((task, k) => {
      const next = one.session[k + 1];
      const index = activityOf.get(task) ?? -1;
      activities[index] = memberActivity(compiled, one, task, next === undefined ? undefined : activityOf.get(next));
    });
  return {
    ...problem,
    activities,
    lags: [...problem.lags, ...agreed.flatMap((one) => ties(ground, activityOf, one))],
  };
}
