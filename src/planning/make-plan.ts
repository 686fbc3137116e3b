import type { ShopAir } from '../air/shop-air.ts';
import type { Conflict } from '../engine/problem.ts';
import { heldTasks } from '../model/gates.ts';
import type { Plan, Proof, Warning } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Compiled } from '../schedule/compiled.ts';
import { planShop } from '../schedule/plan-shop.ts';
import type { Minute } from '../time/span.ts';
import type { Breach } from '../verify/breach.ts';
import { verify } from '../verify/verify.ts';
import { airFor } from './air-for.ts';
import { asCarried } from './as-carried.ts';
import { factorsOf } from './factors.ts';
import { horizonOf, STRETCH } from './horizon.ts';
import { fixedLimits, limitWarnings, missedLimits, withoutLimits } from './missed-limits.ts';
import { windowWarnings } from './missed-windows.ts';
import type { Scene } from './piece-worlds.ts';
import { openingOf, plannedPiece } from './ready.ts';
import { worded } from '../words/worded.ts';

export interface MakeOptions {
  readonly seed: number;
  /** Steps of search; absent: by the size of the shop. */
  readonly steps?: number;
  /** True: with those used up, the search goes on until `stop`. */
  readonly goOn?: boolean;
  readonly stop?: () => boolean;
  readonly onBetter?: (value: number, bound: number, steps: number) => void;
  /** The plan that the shop follows now. */
  readonly kept?: Plan;
  /** Moves off that plan cost nothing: it is only where the search begins, and how what is done was laid. */
  readonly anew?: boolean;
  /** Fingerprint of what it is made from, to be noted in the plan. */
  readonly basis?: string;
}

/** A verified plan; or one that failed the verifier, which is a defect and never shown as a plan; or none. */
export type Made =
  | {
      readonly kind: 'plan';
      readonly plan: Plan;
      readonly air: ShopAir;
      readonly factors: ReadonlyMap<string, number>;
      readonly compiled: Compiled;
    }
  | { readonly kind: 'broken'; readonly breaches: readonly Breach[]; readonly plan: Plan }
  | { readonly kind: 'none'; readonly proven: boolean; readonly conflict: Conflict; readonly compiled: Compiled };

/** Is anything still to be done that works on the old paint of a piece? */
function disturbsOldPaint({ tasks, done }: Situation, piece: string): boolean {
  return tasks.some((t) => t.piece === piece && t.disturbsOldPaint === true && !done.has(t.id));
}

function gateWarnings(situation: Situation): Warning[] {
  const held = heldTasks(situation);
  return situation.book.pieces.flatMap((piece) => {
    if (piece.leadUnsaid === true && disturbsOldPaint(situation, piece.id))
      return [
        {
          code: 'lead-unsaid',
          text: worded`${piece.name}: nothing says whether its old paint may hold lead, so that nothing waits for a test. Write may-carry-lead: yes or no into pieces/${piece.id}.yaml.`,
        },
      ];
    if (!situation.tasks.some((t) => t.piece === piece.id && held.has(t.id))) return [];
    const test = situation.leadTests.get(piece.id);
    const text =
      test?.found === true
        ? worded`${piece.name} carries lead paint: steps that disturb it are not planned. Follow local rules and licensed practice.`
        : worded`${piece.name} may carry lead paint: nothing that disturbs it is planned before a test is recorded.`;
    return [{ code: 'lead-gate', text }];
  });
}

function airWarnings(situation: Situation, air: ShopAir, to: Minute): Warning[] {
  return situation.book.shop.rooms.flatMap((room) =>
    (air.get(room.id)?.notes ?? [])
      .filter((note) => note.to > situation.now && note.from < to)
      .map((note) => ({ code: note.code, text: `${room.name}: ${note.text}` })),
  );
}

/** In the order in which a plan is read back, so that it is written the same again. */
function proofOf({ objective, gapPercent, proven, steps }: Omit<Proof, 'verified'>): Proof {
  return { objective, gapPercent, proven, verified: true, steps };
}

/**
 * Plans everything that is left to do and has the plan checked by the independent verifier. A latest hour that has passed
 * already, or that nothing can keep any more, is given up with a warning. A plan near the kept one that fails the
 * verifier is made again from nothing.
 */
export function makePlan(situation: Situation, options: MakeOptions): Made {
  const { kept, ...fresh } = options;
  const made = planSomehow(situation, options);
  return made.kind === 'broken' && kept !== undefined ? planSomehow(situation, fresh) : made;
}

function planSomehow(situation: Situation, options: MakeOptions): Made {
  const missed = missedLimits(situation);
  const made = planWithin(situation, horizonOf(situation), missed, options);
  if (made.kind !== 'none') return made;
  const fixed = new Set([...missed, ...fixedLimits(situation)]);
  const given = fixed.size > missed.size ? planWithin(situation, horizonOf(situation), fixed, options) : made;
  if (given.kind !== 'none') return given;
  const longer = planWithin(situation, horizonOf(situation, STRETCH), fixed, options);
  // The first reason is about what was asked for.
  return longer.kind === 'none' ? made : longer;
}

function planWithin(asked: Situation, to: Minute, missed: ReadonlySet<string>, options: MakeOptions): Made {
  const { kept, basis, ...search } = options;
  const situation = asCarried(withoutLimits(asked, missed), kept);
  const { book, now } = situation;
  const air = airFor(situation, to);
  const factors = factorsOf(situation, air, kept);
  const draft = planShop(situation, air, { ...search, to, factors, ...(kept && { kept }) });
  if (!draft.found) return { kind: 'none', proven: draft.proven, conflict: draft.conflict, compiled: draft.compiled };
  const last = Math.max(now, ...draft.steps.map((s) => s.spans.at(-1)?.end ?? now));
  const scene: Scene = {
    situation,
    air,
    factors,
    tasks: new Map(situation.tasks.map((t) => [t.id, t])),
    open: openingOf(book.shop, now, last),
  };
  const plan: Plan = {
    madeAt: now,
    ...(basis !== undefined && { basis }),
    timeZone: book.shop.timeZone,
    from: now,
    to: last,
    pieces: book.pieces.map((piece) => plannedPiece(scene, piece, draft.steps, draft.ready.get(piece.id))),
    steps: draft.steps,
    ...(draft.sessions && { sessions: draft.sessions }),
    proof: proofOf(draft.proof),
    warnings: [
      ...gateWarnings(situation),
      ...limitWarnings(asked, missed),
      ...windowWarnings(situation, draft.steps),
      ...airWarnings(situation, air, last),
    ],
  };
  const breaches = verify({ situation, air, factors }, plan);
  return breaches.length > 0
    ? { kind: 'broken', breaches, plan }
    : { kind: 'plan', plan, air, factors, compiled: draft.compiled };
}
