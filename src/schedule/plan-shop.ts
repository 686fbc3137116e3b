import type { ShopAir } from '../air/shop-air.ts';
import type { Conflict, Outcome, Problem, SearchOptions } from '../engine/problem.ts';
import { defaultSteps } from '../engine/default-steps.ts';
import { solve } from '../engine/solve.ts';
import { putBack } from '../engine/put-back.ts';
import { termValues, valueOf } from '../engine/value.ts';
import type { Plan, PlannedSession, PlannedStep, Proof } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';
import { compile } from './compile.ts';
import type { Compiled } from './compiled.ts';
import { cheapestOf, isFound } from './cheapest-choice.ts';
import { decode } from './decode.ts';
import { everyAgreed } from './every-session.ts';
import { keptSchedule } from './kept-schedule.ts';
import { plannedSessions } from './planned-sessions.ts';
import { type Agreed, problemWith } from './session-problem.ts';
import { fitted, keptAgreed, naturalAgreed, type Shared, shareSessions } from './share-sessions.ts';
import { searchOn } from './search-on.ts';
import { solveNear } from './solve-near.ts';

const MINUTES_PER_HOUR = 60;

export interface PlanOptions extends Omit<SearchOptions, 'from' | 'steps'> {
  /** Steps of search; absent: by the size of the problem. */
  readonly steps?: number;
  /** Nothing is planned after this. */
  readonly to: Minute;
  /** Task id -> the shop's own factor on the hours of its film. */
  readonly factors: ReadonlyMap<string, number>;
  /** The plan that the shop follows now: to stay near. */
  readonly kept?: Plan;
  /** Moves off that plan cost nothing: it is only where the search begins, and how what is done was laid. */
  readonly anew?: boolean;
}

/** Steps laid out but not yet verified, or the reason why there are none. */
export type Draft =
  | {
      readonly found: true;
      readonly steps: readonly PlannedStep[];
      readonly sessions?: readonly PlannedSession[];
      /** Piece id -> when it can be handed over. */
      readonly ready: ReadonlyMap<string, Minute>;
      readonly proof: Omit<Proof, 'verified'>;
      readonly compiled: Compiled;
    }
  | { readonly found: false; readonly proven: boolean; readonly conflict: Conflict; readonly compiled: Compiled };

function proofOf(
  compiled: Compiled,
  outcome: Outcome & { status: 'optimal' | 'feasible' },
  best: Shared,
  bound: number,
): Omit<Proof, 'verified'> {
  const { value } = best;
  const values = termValues(compiled.problem, best.schedule);
  const groups = [
    { name: 'late', kind: 'late' },
    { name: 'tied up', kind: 'end' },
    { name: 'moved', kind: 'moved' },
  ] as const;
  const sums = groups.map(({ name, kind }) => {
    const own = compiled.problem.objective.flatMap((term, i) => (term.kind === kind ? [i] : []));
    return {
      name,
      value: own.reduce((sum, i) => sum + (values[i] ?? 0), 0),
      bound: own.reduce((sum, i) => sum + (outcome.terms[i]?.bound ?? 0), 0),
    };
  });
  const extra = value - sums.reduce((sum, s) => sum + s.value, 0);
  return {
    objective: [
      ...sums,
      { name: 'extra work', value: extra, bound: outcome.modes.bound },
      { name: 'all', value, bound },
    ],
    gapPercent: value === 0 ? 0 : Math.round((1000 * (value - bound)) / value) / 10,
    proven: value === bound,
    steps: best.steps,
  };
}

/** How late each piece is by a plan, by the activity that stands for its being ready. */
function lateBy({ meanings }: Compiled, { pieces }: Plan): Map<number, Minute> {
  const hours = new Map(pieces.map((p) => [p.id, p.lateHours]));
  return new Map(
    meanings.flatMap((meaning, i) =>
      meaning.kind === 'ready' ? [[i, (hours.get(meaning.piece.id) ?? 0) * MINUTES_PER_HOUR] as const] : [],
    ),
  );
}

/** The share of the search's steps that is kept for joining coats into sessions. */
const SHARING = 0.2;

/** Puts back where the plan that is followed has it what need not have moved. */
function movedBack(compiled: Compiled, kept: Plan, shared: Shared): Shared {
  const problem = problemWith(compiled, shared.agreed);
  const schedule = putBack(problem, shared.schedule, {
    from: fitted(compiled, keptSchedule(compiled, kept), shared.agreed),
    wholes: wholePieces(compiled),
  });
  return { ...shared, schedule, value: valueOf(problem, schedule) };
}

/** By piece: the activities of its tasks. */
function wholePieces({ meanings }: Compiled): number[][] {
  const byPiece = new Map<string, number[]>();
  meanings.forEach((meaning, i) => {
    if (meaning.kind === 'task') byPiece.set(meaning.task.piece, [...(byPiece.get(meaning.task.piece) ?? []), i]);
  });
  return [...byPiece.values()];
}

/** Is there a schedule at all if every coat may share what it likes? Only a sure "no" counts. */
function isPossible(loosened: Problem, seed: number): boolean {
  return solve(loosened, { seed, steps: 1 }).status !== 'infeasible';
}

/** Lays every remaining step of every piece onto the calendar. */
export function planShop(situation: Situation, air: ShopAir, options: PlanOptions): Draft {
  const { to, kept, anew = false, factors, steps, onBetter, goOn = false, ...search } = options;
  const compiled = compile(situation, air, { to, factors, anew, ...(kept && { kept }) });
  const budget = steps ?? defaultSteps(compiled.problem);
  const sharing = compiled.ground.shares.size > 0;
  /** The plan with just these sessions; as one of so many `choices`, its bound is that of this choice alone. */
  const first = (agreed: readonly Agreed[], choices?: number): Outcome => {
    const problem = problemWith(compiled, agreed);
    const asked = {
      ...search,
      ...(onBetter && choices === undefined && { onBetter }),
      steps: sharing ? Math.ceil((budget * (1 - SHARING)) / (choices ?? 1)) : budget,
      ...(sharing && choices === undefined && { loosened: compiled.problem }),
    };
    const from = kept && fitted(compiled, keptSchedule(compiled, kept), agreed);
    return kept === undefined || from === undefined || anew
      ? solve(problem, { ...asked, ...(from && { from }) })
      : solveNear(problem, { ...asked, from }, lateBy(compiled, kept));
  };
  const together = kept === undefined ? naturalAgreed(compiled) : keptAgreed(compiled);
  let agreed: readonly Agreed[] = together;
  let outcome = first(agreed);
  // What the shop held to, or would lay in one go, may not hold; without it there may be a plan.
  if (together.length > 0 && !isFound(outcome)) [agreed, outcome] = [[], first([])];
  // Where people follow a plan, only what is new to it is worth another look.
  const looks = anew || [...compiled.ground.shares].some((task) => !compiled.ground.kept.has(task));
  const choices = sharing && (looks || !isFound(outcome)) ? everyAgreed(compiled) : undefined;
  if (choices !== undefined && outcome.status !== 'optimal')
    ({ agreed, outcome } = cheapestOf(
      choices.map((choice) => ({ agreed: choice, outcome: first(choice, choices.length) })),
      { agreed, outcome },
    ));
  if (outcome.status === 'infeasible')
    return {
      found: false,
      proven: !sharing || choices !== undefined || !isPossible(compiled.problem, search.seed),
      conflict: outcome.conflict,
      compiled,
    };
  if (outcome.status === 'unknown') return { found: false, proven: false, conflict: outcome.stuck, compiled };
  const begun: Shared = { agreed, schedule: outcome.schedule, value: outcome.value, steps: outcome.steps };
  const shared =
    looks && outcome.status !== 'optimal'
      ? shareSessions(compiled, begun, { ...search, steps: Math.floor(budget * SHARING), bound: outcome.bound })
      : begun;
  const long =
    goOn && outcome.status !== 'optimal' ? searchOn(compiled, shared, { ...options, steps: budget }) : undefined;
  const best = long?.shared ?? (kept === undefined || anew ? shared : movedBack(compiled, kept, shared));
  const ready = new Map<string, Minute>();
  compiled.meanings.forEach((meaning, i) => {
    const end = best.schedule.ends[i];
    if (meaning.kind === 'ready' && end !== undefined) ready.set(meaning.piece.id, end);
  });
  const laid = decode(compiled.ground, air, compiled, best.schedule);
  return {
    found: true,
    steps: laid,
    ...(best.agreed.length > 0 && {
      sessions: plannedSessions(
        situation,
        laid,
        best.agreed.map((one) => one.session),
      ),
    }),
    ready,
    proof: proofOf(compiled, outcome, best, Math.max(outcome.bound, long?.bound ?? 0)),
    compiled,
  };
}
