import type { ShopAir } from '../air/shop-air.ts';
import type { Conflict, Outcome, SearchOptions } from '../engine/problem.ts';
import { defaultSteps } from '../engine/default-steps.ts';
import { solve } from '../engine/solve.ts';
import type { Plan, PlannedStep, Proof } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';
import { compile } from './compile.ts';
import type { Compiled } from './compiled.ts';
import { decode } from './decode.ts';
import { keptSchedule } from './kept-schedule.ts';
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
}

/** Steps laid out but not yet verified, or the reason why there are none. */
export type Draft =
  | {
      readonly found: true;
      readonly steps: readonly PlannedStep[];
      /** Piece id -> when it can be handed over. */
      readonly ready: ReadonlyMap<string, Minute>;
      readonly proof: Omit<Proof, 'verified'>;
      readonly compiled: Compiled;
    }
  | { readonly found: false; readonly proven: boolean; readonly conflict: Conflict; readonly compiled: Compiled };

function proofOf(compiled: Compiled, outcome: Outcome & { status: 'optimal' | 'feasible' }): Omit<Proof, 'verified'> {
  const groups = [
    { name: 'late', kind: 'late' },
    { name: 'tied up', kind: 'end' },
    { name: 'moved', kind: 'moved' },
  ] as const;
  const sums = groups.map(({ name, kind }) => {
    const terms = outcome.terms.filter((_, i) => compiled.problem.objective[i]?.kind === kind);
    return {
      name,
      value: terms.reduce((sum, t) => sum + t.value, 0),
      bound: terms.reduce((sum, t) => sum + t.bound, 0),
    };
  });
  const extra = outcome.value - sums.reduce((sum, s) => sum + s.value, 0);
  return {
    objective: [
      ...sums,
      { name: 'extra work', value: extra, bound: 0 },
      { name: 'all', value: outcome.value, bound: outcome.bound },
    ],
    gapPercent: outcome.value === 0 ? 0 : Math.round((1000 * (outcome.value - outcome.bound)) / outcome.value) / 10,
    proven: outcome.status === 'optimal',
    steps: outcome.steps,
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

/** Lays every remaining step of every piece onto the calendar. */
export function planShop(situation: Situation, air: ShopAir, options: PlanOptions): Draft {
  const { to, kept, factors, steps, ...search } = options;
  const compiled = compile(situation, air, { to, factors, ...(kept && { kept }) });
  const budget = { ...search, steps: steps ?? defaultSteps(compiled.problem) };
  const outcome =
    kept === undefined
      ? solve(compiled.problem, budget)
      : solveNear(compiled.problem, { ...budget, from: keptSchedule(compiled, kept) }, lateBy(compiled, kept));
  if (outcome.status === 'infeasible') return { found: false, proven: true, conflict: outcome.conflict, compiled };
  if (outcome.status === 'unknown') return { found: false, proven: false, conflict: outcome.stuck, compiled };
  const ready = new Map<string, Minute>();
  compiled.meanings.forEach((meaning, i) => {
    const end = outcome.schedule.ends[i];
    if (meaning.kind === 'ready' && end !== undefined) ready.set(meaning.piece.id, end);
  });
  return {
    found: true,
    steps: decode(compiled.ground, air, compiled, outcome.schedule),
    ready,
    proof: proofOf(compiled, outcome),
    compiled,
  };
}
