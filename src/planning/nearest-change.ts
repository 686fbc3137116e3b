import type { Plan } from '../model/plan.ts';
import { once } from '../once-per.ts';
import type { Minute } from '../time/span.ts';
import type { Change } from './change.ts';
import { comingForward, driesInTime, type Followed, type Promising } from './come-forward.ts';
import type { FilmWait } from './other-air.ts';
import { changesAir, type Desk, type Trial, trialsFor, trimmed } from './trials.ts';
import type { Cause, WhyLink } from './why.ts';

/** What would let a step begin sooner, everything else lying as planned. Each was tried, and its `plan` has passed the verifier. */
export type Nearest =
  /** Nothing has to change: all by itself it could begin then, but the plan as a whole is better so. */
  | { readonly kind: 'as-it-is'; readonly start: Minute; readonly plan: Plan }
  | {
      readonly kind: 'change';
      /** Made together. */
      readonly changes: readonly Change[];
      readonly start: Minute;
      /** Ids of the other steps that come forward with it. */
      readonly along: readonly string[];
      readonly plan: Plan;
    }
  /** None of so many that were tried helps. */
  | { readonly kind: 'none'; readonly tried: number };

type Without<T, Key extends string> = T extends unknown ? Omit<T, Key> : never;

/** What there is to tell of it: all but the plan as it would be then. */
export type ToldNearest = Without<Nearest, 'plan'>;

export function toldOf(nearest: Nearest): ToldNearest {
  const { kind } = nearest;
  switch (kind) {
    case 'none':
      return nearest;
    case 'as-it-is':
      return { kind, start: nearest.start };
    case 'change':
      return { kind, changes: nearest.changes, start: nearest.start, along: nearest.along };
  }
}

/** Less than this is not worth a change. */
const LEAST_GAIN_MINUTES = 15;
/** After so many tries nothing else is begun. */
const MOST_TRIES = 6;
/** The links of the chain that are looked at. Where all that might be changed in one of these stretches does not help, nothing of it does. */
const STRETCHES = [
  { from: 0, to: 1 },
  { from: 1, to: 3 },
  { from: 3, to: 8 },
];

/** A link of the chain that is looked at: its `k`-th. */
interface Looked {
  readonly k: number;
  readonly link: WhyLink;
  /** What might move what holds it. */
  readonly trials: () => readonly Trial[];
}

/** Trials of one kind, the least first. */
interface Line {
  readonly trials: readonly Trial[];
  /** So many are tried before all the others are tried together. */
  readonly alone: number;
  /** Stronger than all the others: where that does not help, none of them does. */
  readonly strongest: Trial;
}

/**
 * Of other air the last is the strongest; of what gives more hands, hours or room, it is all of it together. The first of all is
 * likely to help, and so is the least of other air.
 */
function linesOf(trials: readonly Trial[], isFirst: boolean): Line[] {
  const plain = trials.filter((trial) => !changesAir(trial));
  const inOtherAir = (kind: Change['kind']): Line => {
    const own = trials.filter((trial) => trial[0]?.kind === kind);
    return { trials: own, alone: 1, strongest: own.at(-1) ?? [] };
  };
  const first = plain.slice(0, isFirst ? 1 : 0);
  const rest = plain.slice(first.length);
  return [
    { trials: first, alone: 1, strongest: [] },
    { trials: rest, alone: 0, strongest: rest.flat() },
    inOtherAir('warmer'),
    inOtherAir('drier'),
  ];
}

const sameChanges = (one: Trial, other: Trial): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Is what holds it a fact, which nothing that is tried could change? */
function isSettled({ kind }: Cause): boolean {
  return kind === 'done' || kind === 'at-work';
}

/** The steps that come forward together: those of the links, and coats that are laid in one go with them. */
function movingIn(plan: Plan, links: readonly WhyLink[]): Set<string> {
  // Oily rags go with their coat.
  const ids = links.flatMap(({ step: { id, atOnceAfter } }) => (atOnceAfter === undefined ? [id] : [atOnceAfter, id]));
  const mates = (plan.sessions ?? []).filter((s) => s.steps.some((id) => ids.includes(id))).flatMap((s) => s.steps);
  return new Set([...ids, ...mates]);
}

/** The wait for a film that holds the step of `link`, which must be over by `by`, or at least so much sooner that it is worth it. */
function waitFor({ step, cause }: WhyLink, by: Minute | undefined): FilmWait | undefined {
  if (cause.kind !== 'dry' && cause.kind !== 'window') return undefined;
  return { step, cause, minutes: by === undefined ? LEAST_GAIN_MINUTES : Math.max(1, cause.until - by) };
}

/**
 * The nearest change that would let the first step of `chain` begin sooner: of what holds it, or else of what holds that,
 * back along the chain; the least of each kind first. Everything that is not on the way there stays as planned.
 * @param onTry told before each try
 */
export function nearestChange(
  followed: Followed,
  chain: readonly WhyLink[],
  onTry: () => void = () => undefined,
): Nearest {
  const [first] = chain;
  const { plan } = followed.standing;
  const desk: Desk = {
    followed,
    tasks: new Map(followed.made.tasks.map((t) => [t.id, t])),
    steps: new Map(plan.steps.map((s) => [s.id, s])),
  };
  let tried = 0;
  if (first === undefined || isSettled(first.cause)) return { kind: 'none', tried };
  const { id } = first.step;
  const by = first.start - LEAST_GAIN_MINUTES;
  const settled = chain.findIndex((link) => isSettled(link.cause));
  const open = settled < 0 ? chain : chain.slice(0, settled);

  const forward = (changes: Trial, moving: ReadonlySet<string>, wait?: FilmWait): Promising | undefined => {
    onTry();
    tried += 1;
    return comingForward(followed, changes, moving, { step: id, by, ...(wait && { wait }) });
  };
  const answer = (asked: Trial, found: Promising): Nearest | undefined => {
    const least = trimmed(desk, found.steps(), asked);
    const enough = found.held(least);
    const then = enough ?? (sameChanges(least, asked) ? undefined : found.held(asked));
    const along = then?.plan.steps.flatMap((step) =>
      step.id === id || step.spans[0]?.start === desk.steps.get(step.id)?.spans[0]?.start ? [] : [step.id],
    );
    return then && along && { kind: 'change', changes: enough === undefined ? asked : least, along, ...then };
  };
  /** The least of a line that lets `moving` begin sooner. */
  const leastOf = (
    { trials, alone, strongest }: Line,
    moving: ReadonlySet<string>,
    wait: FilmWait | undefined,
    asItIs: () => Nearest | undefined,
  ): Nearest | undefined => {
    /** What was found with the strongest, and what it uses of that. */
    let most: { readonly found: Promising; readonly used: Trial } | undefined;
    for (const [n, asked] of trials.entries()) {
      if (tried >= MOST_TRIES) return undefined;
      if (n === alone && trials.length > alone + 1) {
        const found = forward(strongest, moving, wait);
        if (found === undefined) return undefined;
        most = { found, used: trimmed(desk, found.steps(), strongest) };
      }
      const used = most && trimmed(desk, most.found.steps(), asked);
      // What was there and was not used is not what is missing.
      if (used?.length === 0) continue;
      const found = most && used && sameChanges(used, most.used) ? most.found : forward(asked, moving, wait);
      // What helps with no change at all is no change's merit; what the verifier turns down would be turned down all the more
      // of what is stronger.
      if (found !== undefined) return asItIs() ?? answer(asked, found);
    }
    return undefined;
  };
  /** What moves the links of the chain up to this one. */
  const movedBy = ({ k, link, trials }: Looked, mayHelp: () => boolean): Nearest | undefined => {
    const moving = movingIn(plan, open.slice(0, k + 1));
    const wait = waitFor(link, k === 0 ? by : undefined);
    const asItIs = once((): Nearest | undefined => {
      const held = forward([], moving)?.held([]);
      return held && { kind: 'as-it-is', ...held };
    });
    const anyway = link.cause.kind === 'better-so' && mayHelp() ? asItIs() : undefined;
    if (anyway !== undefined) return anyway;
    const possible = trials().filter((trial) =>
      changesAir(trial) ? wait === undefined || driesInTime(followed, trial, wait) : mayHelp(),
    );
    for (const line of linesOf(possible, k === 0)) {
      const nearest = leastOf(line, moving, wait, asItIs);
      if (nearest !== undefined) return nearest;
    }
    return undefined;
  };
  for (const { from, to } of STRETCHES) {
    const links = open.slice(from, to).map((link, i): Looked => {
      return { k: from + i, link, trials: once(() => trialsFor(desk, link)) };
    });
    const allOfIt = () => links.flatMap(({ trials }) => trials()).filter((trial) => !changesAir(trial));
    const mayHelp = once(
      () => from === 0 || forward(allOfIt().flat(), movingIn(plan, open.slice(0, to))) !== undefined,
    );
    for (const looked of links) {
      const nearest = tried < MOST_TRIES ? movedBy(looked, mayHelp) : undefined;
      if (nearest !== undefined) return nearest;
    }
  }
  return { kind: 'none', tried };
}
