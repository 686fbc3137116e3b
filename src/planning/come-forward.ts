import { airForAWhile, roomAir } from '../air/room-air.ts';
import { seriesEnd } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { soonest } from '../engine/soonest.ts';
import type { Book } from '../model/book.ts';
import { startOf, type Plan, type PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Block } from '../schedule/blocks.ts';
import { compile } from '../schedule/compile.ts';
import { decodeBare } from '../schedule/decode.ts';
import { keptSchedule } from '../schedule/kept-schedule.ts';
import { plannedSessions } from '../schedule/planned-sessions.ts';
import { problemWith } from '../schedule/session-problem.ts';
import { fitted, keptAgreed } from '../schedule/share-sessions.ts';
import { once, oncePer } from '../once-per.ts';
import type { Minute } from '../time/span.ts';
import { verify } from '../verify/verify.ts';
import { asCarried } from './as-carried.ts';
import { type Change, changed } from './change.ts';
import type { Standing } from './current-plan.ts';
import { limitsMissedIn, withoutLimits } from './missed-limits.ts';
import { narrowTo } from './narrow.ts';
import { noSooner } from './no-sooner.ts';
import { driesTooLate, type FilmWait, spoilsWhatStays } from './other-air.ts';
import { reseated } from './reseated.ts';
import { situationOf } from './situation-of.ts';

/** A plan that is followed, and the moment from which anything in it can still be done otherwise. */
export interface Followed {
  readonly standing: Standing;
  /** What it was made from. */
  readonly made: Situation;
  readonly now: Minute;
}

/** The air in which the plan was made, with that of the rooms that a change touches worked out anew. */
function airWith(air: ShopAir, before: Book, after: Book): ShopAir {
  const { timeZone } = after.shop;
  const usualIn = new Map(before.shop.rooms.map((room) => [room.id, room.air]));
  return after.shop.rooms.reduce<ShopAir>((sum, { id, air: source }) => {
    const known = air.get(id);
    const usual = usualIn.get(id);
    if (known === undefined || source === usual) return sum;
    const then =
      source.kind === 'for-a-while' && source.of === usual
        ? airForAWhile(source, known)
        : roomAir(source, timeZone, known.from, seriesEnd(known));
    return new Map([...sum, [id, then]]);
  }, air);
}

/** The shop with changes, at the moment at which the plan was made. */
interface World {
  readonly situation: Situation;
  readonly air: ShopAir;
}

/** Asked for twice: whether a film dries in time, and then all else. */
const worldWith = oncePer((changes: readonly Change[], { standing, made }: Followed): World => {
  const { book } = made;
  const other = changes.reduce(changed, book);
  const sameWork = other.pieces === book.pieces && other.journal === book.journal;
  const situation = sameWork ? { ...made, book: other } : situationOf(other, standing.plan.from);
  return { situation, air: airWith(standing.air, book, other) };
});

/** Would the film that is waited for dry in time with these changes? */
export function driesInTime(followed: Followed, changes: readonly Change[], wait: FilmWait): boolean {
  return !driesTooLate(followed.made, followed.standing, wait, worldWith(changes, followed).air);
}

/** As the plan was made, but `moving` no sooner than now. */
function situationFor(made: Situation, plan: Plan, now: Minute, moving: ReadonlySet<string>): Situation {
  const notBefore = new Map(made.notBefore);
  for (const id of moving) notBefore.set(id, Math.max(now, notBefore.get(id) ?? now));
  return asCarried(withoutLimits({ ...made, notBefore }, limitsMissedIn(plan.warnings)), plan);
}

/** What is tried one after the other often moves the same steps. */
const around = oncePer(
  ({ made, standing }: Followed, { moving, first }: { readonly moving: ReadonlySet<string>; readonly first: Minute }) =>
    narrowTo(made, standing.plan, moving, first),
  ({ moving, first }) => [first, ...moving].join(' '),
);

/** What the steps that move are placed in: a stretch of the plan. */
interface Among {
  readonly situation: Situation;
  readonly plan: Plan;
  /** Nothing is planned after this. */
  readonly to: Minute;
  readonly air: ShopAir;
  readonly factors: ReadonlyMap<string, number>;
  readonly blocks: readonly Block[];
}

/** `moving` begun as soon as can be, everything else where it is planned; undefined where what is wanted comes too late. */
export function placed(
  { plan, to, air, factors, blocks, ...among }: Among,
  moving: ReadonlySet<string>,
  now: Minute,
  wanted: Wanted,
) {
  const situation = situationFor(among.situation, plan, now, moving);
  const lastStarts = plan.steps.flatMap((s) => (moving.has(s.id) ? [[s.id, startOf(s)] as const] : []));
  const sooner = new Map([...lastStarts, [wanted.step, wanted.by]]);
  const compiled = compile(situation, air, { to, factors, kept: plan, anew: true, moving: sooner, blocks });
  const agreed = keptAgreed(compiled);
  const from = fitted(compiled, keptSchedule(compiled, plan), agreed);
  const free = compiled.meanings.flatMap((meaning, i) => {
    if (meaning.kind === 'task') return moving.has(meaning.task.id) ? [i] : [];
    return meaning.kind === 'window' && moving.has(meaning.coat.id) ? [i] : [];
  });
  const schedule = soonest(problemWith(compiled, agreed), from, free);
  const start = schedule?.starts[compiled.activityOf.get(wanted.step) ?? -1];
  return schedule === undefined || start === undefined
    ? undefined
    : { steps: once(() => decodeBare(compiled.ground, air, compiled, schedule)), start };
}

/** Are the places of those that moved free of what the plan keeps there, also longer than it has to? */
function moversHaveRoom(
  steps: readonly PlannedStep[],
  moving: ReadonlySet<string>,
  { book, tasks }: Situation,
): boolean {
  const objects = new Map(tasks.map((t) => [t.id, t.object]));
  const standing = steps.filter((s) => s.atOnceAfter === undefined);
  return standing.every((step) => {
    const slots = book.shop.stations.find((s) => s.id === step.station)?.slots ?? 0;
    if (!moving.has(step.id)) return true;
    const there = standing.filter((s) => s.station === step.station && s.holdsStationUntil > startOf(step));
    const met = there.filter((s) => startOf(s) < step.holdsStationUntil);
    return met.every((other) => {
      const then = Math.max(startOf(step), startOf(other));
      const stand = met.filter((s) => startOf(s) <= then && then < s.holdsStationUntil);
      return new Set(stand.map((s) => objects.get(s.id))).size <= slots;
    });
  });
}

/** A step, and the latest start at which it is worth anything. */
export interface Wanted {
  /** Id of the step, one of those that move. */
  readonly step: string;
  readonly by: Minute;
  /** What must be over sooner if other air is to help. */
  readonly wait?: FilmWait;
}

/** The plan that was come to, and when what was wanted begins in it. */
export interface Forward {
  /** Where each step lies then. What it shows of films and of carrying nobody has looked at. */
  readonly plan: Plan;
  readonly start: Minute;
}

/** What was found around the steps that move; nobody has looked at the whole plan yet. */
export interface Promising {
  readonly steps: () => readonly PlannedStep[];
  readonly start: Minute;
  /** The whole plan, once what is done in it, and when, has passed the verifier in a shop with `changes`, of those that were tried; undefined where it does not. */
  held(changes: readonly Change[]): Forward | undefined;
}

/**
 * The plan in a shop with `changes`, `moving` begun as soon as can be and everything else where it is planned; undefined
 * where that does not bring forward what is wanted. When pieces are ready is left as it was: no later than that. A search and
 * no proof: what it does not find might be there.
 */
export function comingForward(
  followed: Followed,
  changes: readonly Change[],
  moving: ReadonlySet<string>,
  wanted: Wanted,
): Promising | undefined {
  const { standing, made, now } = followed;
  const { plan, factors } = standing;
  const { situation: whole, air } = worldWith(changes, followed);
  const bound = noSooner(whole, plan, moving, { now, sameAir: air === standing.air });
  if (bound(wanted.step) > wanted.by) return undefined;
  if (wanted.wait !== undefined && !driesInTime(followed, changes, wanted.wait)) return undefined;
  const forAWhile = changes.flatMap((c) =>
    (c.kind === 'warmer' || c.kind === 'drier') && c.during !== undefined ? [{ room: c.room, during: c.during }] : [],
  );
  if (forAWhile.some((c) => spoilsWhatStays(whole, standing, moving, { ...c, then: air }))) return undefined;
  const narrow = around(followed, { moving, first: Math.min(...[...moving].map(bound)) });
  const { plan: own, to: until, blocks } = narrow;
  const among = { situation: narrow.of(whole), plan: own, to: until, air, factors, blocks };
  const found = placed(among, moving, now, wanted);
  if (found === undefined) return undefined;

  const sessions = (plan.sessions ?? []).map((s) => s.steps);
  const before = once(() => ({ situation: situationFor(made, plan, now, moving), air: standing.air, factors }));
  return {
    ...found,
    held: (meant) => {
      const then = worldWith(meant, followed).situation;
      const lying = narrow.widened(found.steps());
      const steps = moversHaveRoom(lying, moving, then) ? lying : reseated(lying, moving, then);
      if (!moversHaveRoom(steps, moving, then)) return undefined;
      const situation = situationFor(then, plan, now, moving);
      const forward = {
        ...plan,
        steps,
        ...(plan.sessions && { sessions: plannedSessions(situation, steps, sessions) }),
      };
      const passed = { evidence: before(), plan };
      const breaches = verify({ situation, air, factors }, forward, { passed, shown: false });
      return breaches.length > 0 ? undefined : { plan: forward, start: found.start };
    },
  };
}
