import type { ShopAir } from '../air/shop-air.ts';
import type { Book } from '../model/book.ts';
import type { Piece } from '../model/piece.ts';
import type { Plan } from '../model/plan.ts';
import { compareWith, type Comparison, type Wish } from '../planning/compare.ts';
import { makePlan, type MakeOptions } from '../planning/make-plan.ts';
import { type Answer as Promised, promiseOf } from '../planning/promise.ts';
import { situationOf } from '../planning/situation-of.ts';
import { waysOut } from '../planning/ways-out.ts';
import { namesOf } from '../reports/names.ts';
import { demandsOf, sayWaysOut } from '../reports/no-plan.ts';
import type { Manner } from '../reports/say-time.ts';
import type { Minute } from '../time/span.ts';
import { worded } from '../words/worded.ts';
import { seed } from './plan-grounds.ts';

/** What every search begins with. */
interface Ask {
  readonly book: Book;
  readonly now: Minute;
}

interface PlanAsk extends Ask, Pick<MakeOptions, 'anew' | 'goOn' | 'basis' | 'kept'> {
  readonly manner: Manner;
}

/** Why there is no plan, in words. */
interface NoPlan {
  readonly kind: 'none';
  readonly message: string;
  readonly advice: string | undefined;
  readonly demands: readonly string[];
}

interface MadePlan {
  readonly kind: 'plan';
  readonly plan: Plan;
  readonly air: ShopAir;
  readonly factors: ReadonlyMap<string, number>;
}

/** What can be searched for, and what that gives: data only, so that another thread can take it and give it back. */
export interface Searches {
  readonly plan: { readonly ask: PlanAsk; readonly answer: MadePlan | NoPlan };
  readonly promise: {
    readonly ask: Ask & { readonly kept: Plan; readonly piece: Piece; readonly by: Minute };
    readonly answer: Promised;
  };
  readonly compare: {
    readonly ask: Ask & { readonly kept: Plan; readonly wishes: readonly Wish[]; readonly minorPerMajor: number };
    readonly answer: Comparison;
  };
}

export type Kind = keyof Searches;

/** Who waits for a search. */
export interface Waiting {
  /** Asked often: is the search to end with the best that it has? */
  readonly stop: () => boolean;
  /** Told how far the search has come. */
  readonly say: (text: string) => void;
  /** Told as soon as there is something to end with. */
  readonly onFound: () => void;
}

/** Says with each better plan how far from the best it can be. */
function sayHowGood(say: Waiting['say'], value: number, bound: number): void {
  const percent = value === 0 ? 0 : Math.ceil((100 * (value - bound)) / value);
  say(worded`planning … at most ${percent} % from the best`);
}

function planned(ask: PlanAsk, { stop, say, onFound }: Waiting): MadePlan | NoPlan {
  const { book, now, manner, ...options } = ask;
  const onBetter = (value: number, bound: number) => {
    onFound();
    sayHowGood(say, value, bound);
  };
  const made = makePlan(situationOf(book, now), { ...options, seed, stop, onBetter });
  if (made.kind === 'plan') return { kind: 'plan', plan: made.plan, air: made.air, factors: made.factors };
  if (made.kind === 'broken')
    throw new Error(`the plan breaks a rule, so it is not shown: ${made.breaches[0]?.text ?? ''}`);
  const message = made.proven
    ? worded`no plan exists: these demands cannot hold together`
    : worded`no plan was found; in the way stand`;
  say(worded`looking for what would leave a plan …`);
  const names = namesOf(book);
  const advice = sayWaysOut(waysOut(now, made, seed, stop), names, manner);
  return { kind: 'none', message, advice, demands: demandsOf(made, names) };
}

/** How each of them is searched for. */
export const searches: {
  readonly [K in Kind]: (ask: Searches[K]['ask'], waiting: Waiting) => Searches[K]['answer'];
} = {
  plan: planned,
  promise: ({ book, now, kept, piece, by }, { stop, onFound }) =>
    promiseOf(book, now, kept, piece, by, { seed, stop, onBetter: onFound }),
  compare: ({ book, now, kept, wishes, minorPerMajor }, { stop, say, onFound }) =>
    compareWith(book, now, kept, wishes, {
      seed,
      minorPerMajor,
      stop,
      onPlan: (one, of) => {
        say(worded`planning … ${one} of ${of}`);
      },
      onVariant: onFound,
    }),
};
