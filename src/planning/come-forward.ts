import { roomAir } from '../air/room-air.ts';
import { seriesEnd } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { soonest } from '../engine/soonest.ts';
import type { Book } from '../model/book.ts';
import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { compile } from '../schedule/compile.ts';
import { decode } from '../schedule/decode.ts';
import { keptSchedule } from '../schedule/kept-schedule.ts';
import { plannedSessions } from '../schedule/planned-sessions.ts';
import { problemWith } from '../schedule/session-problem.ts';
import { fitted, keptAgreed } from '../schedule/share-sessions.ts';
import type { Minute } from '../time/span.ts';
import { verify } from '../verify/verify.ts';
import { asCarried } from './as-carried.ts';
import { type Change, changed } from './change.ts';
import type { Standing } from './current-plan.ts';
import { horizonOf, STRETCH } from './horizon.ts';
import { limitsMissedIn, withoutLimits } from './missed-limits.ts';
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
  const changedRooms = after.shop.rooms.filter(
    (room) => before.shop.rooms.find((r) => r.id === room.id)?.air !== room.air,
  );
  return changedRooms.reduce<ShopAir>((sum, room) => {
    const known = air.get(room.id);
    if (known === undefined) return sum;
    return new Map([...sum, [room.id, roomAir(room.air, timeZone, known.from, seriesEnd(known))]]);
  }, air);
}

/** As the plan was made, but `moving` no sooner than now. */
function situationFor({ standing: { plan }, now }: Followed, made: Situation, moving: ReadonlySet<string>): Situation {
  const notBefore = new Map(made.notBefore);
  for (const id of moving) notBefore.set(id, Math.max(now, notBefore.get(id) ?? now));
  return asCarried(withoutLimits({ ...made, notBefore }, limitsMissedIn(plan.warnings)), plan);
}

/** A step, and the latest start at which it is worth anything. */
export interface Wanted {
  /** Id of the step, one of those that move. */
  readonly step: string;
  readonly by: Minute;
}

/** The plan that was come to, and when what was wanted begins in it. */
export interface Forward {
  readonly plan: Plan;
  readonly start: Minute;
}

/**
 * The plan in a shop with `changes`, `moving` begun as soon as can be and everything else where it is planned; undefined
 * where that does not bring forward what is wanted. It has passed the verifier. When pieces are ready is left as it was: no
 * later than that. A search and no proof: what it does not find might be there.
 */
export function cameForward(
  followed: Followed,
  changes: readonly Change[],
  moving: ReadonlySet<string>,
  wanted: Wanted,
): Forward | undefined {
  const { standing, made } = followed;
  const { plan, factors } = standing;
  const { book } = made;
  const other = changes.reduce(changed, book);
  const sameWork = other.pieces === book.pieces && other.journal === book.journal;
  const situation = situationFor(followed, sameWork ? { ...made, book: other } : situationOf(other, plan.from), moving);
  const air = airWith(standing.air, book, other);
  const usual = horizonOf(situation);
  const to = plan.to <= usual ? usual : horizonOf(situation, STRETCH);
  const compiled = compile(situation, air, { to, factors, kept: plan, anew: true, moving });
  const agreed = keptAgreed(compiled);
  const from = fitted(compiled, keptSchedule(compiled, plan), agreed);
  const free = compiled.meanings.flatMap((meaning, i) => {
    if (meaning.kind === 'task') return moving.has(meaning.task.id) ? [i] : [];
    return meaning.kind === 'window' && moving.has(meaning.coat.id) ? [i] : [];
  });
  const schedule = soonest(problemWith(compiled, agreed), from, free);
  const start = schedule?.starts[compiled.activityOf.get(wanted.step) ?? -1];
  if (schedule === undefined || start === undefined || start > wanted.by) return undefined;
  const steps = decode(compiled.ground, air, compiled, schedule);
  const sessions = (plan.sessions ?? []).map((s) => s.steps);
  const forward: Plan = {
    ...plan,
    steps,
    ...(plan.sessions && { sessions: plannedSessions(situation, steps, sessions) }),
  };
  return verify({ situation, air, factors }, forward).length > 0 ? undefined : { plan: forward, start };
}
