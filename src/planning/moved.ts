import { endOf, startOf, type Plan, type PlannedStep } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';
import type { Standing } from './current-plan.ts';
import type { Situation } from '../model/situation.ts';
import { type Cause, whyChain } from './why.ts';

/** What is new since the plan was followed. `step` is where it happened. */
export type Event =
  | { readonly kind: 'done-late' | 'done-early'; readonly step: string; readonly minutes: number }
  | { readonly kind: 'not-begun'; readonly step: string }
  | { readonly kind: 'put-off'; readonly step: string; readonly until: Minute }
  /** The film dries more slowly, or faster, than it was planned to: seen, learned, or by the air. */
  | { readonly kind: 'slower' | 'faster'; readonly step: string; readonly minutes: number }
  | { readonly kind: 'new'; readonly step: string }
  | { readonly kind: 'gone'; readonly step: string };

/** Why a step moved: something new, or what holds it now; `room`: nothing holds it where it was any more. */
export type MoveCause =
  Event | { readonly kind: 'held'; readonly cause: Cause; readonly step: PlannedStep } | { readonly kind: 'room' };

export interface Move {
  readonly step: PlannedStep;
  readonly from: Minute;
  readonly to: Minute;
  readonly cause: MoveCause;
}

/** What can make a step later, and what can make it sooner. */
const delays: ReadonlySet<Event['kind']> = new Set(['done-late', 'not-begun', 'put-off', 'slower', 'new']);
const hastens: ReadonlySet<Event['kind']> = new Set(['done-early', 'faster', 'gone']);

/** Less than this is no move that anybody has to be told of. */
const LEAST_MINUTES = 15;

function dryingShift(before: PlannedStep, after: PlannedStep): number {
  const mark = (['touch', 'recoat', 'handle'] as const).find((m) => before.dry?.[m] && after.dry?.[m]);
  if (mark === undefined) return 0;
  const took = (step: PlannedStep) => (step.dry?.[mark]?.late ?? 0) - endOf(step);
  return took(after) - took(before);
}

/** What happened to one step since `before` was planned, if anything. */
function eventOf(
  before: PlannedStep | undefined,
  after: PlannedStep,
  { notBefore }: Situation,
  now: Minute,
): Event | undefined {
  const step = after.id;
  if (before === undefined) return { kind: 'new', step };
  if (after.done === true && before.done !== true) {
    const minutes = endOf(after) - endOf(before);
    if (minutes >= LEAST_MINUTES) return { kind: 'done-late', step, minutes };
    if (minutes <= -LEAST_MINUTES) return { kind: 'done-early', step, minutes: -minutes };
  }
  if (after.done === true && after.spans[0]?.start === before.spans[0]?.start && endOf(after) === endOf(before)) {
    const minutes = dryingShift(before, after);
    if (Math.abs(minutes) >= LEAST_MINUTES)
      return { kind: minutes > 0 ? 'slower' : 'faster', step, minutes: Math.abs(minutes) };
  }
  const until = notBefore.get(step);
  if (after.done !== true && until !== undefined && startOf(before) < until) return { kind: 'put-off', step, until };
  if (after.done !== true && after.atWork !== true && before.done !== true && startOf(before) < now)
    return { kind: 'not-begun', step };
  return undefined;
}

/** The first event on the way from a step back along what it waits for, nearest first. */
function firstEvent(
  from: string,
  steps: ReadonlyMap<string, PlannedStep>,
  events: ReadonlyMap<string, Event>,
): Event | undefined {
  const queue = [from];
  const seen = new Set(queue);
  for (const id of queue) {
    const event = events.get(id);
    if (event !== undefined) return event;
    for (const { step } of steps.get(id)?.after ?? []) {
      if (seen.has(step)) continue;
      seen.add(step);
      queue.push(step);
    }
  }
  return undefined;
}

/**
 * What lies elsewhere in the new plan than in the one that the shop followed, the largest move first, each with why: what
 * happened since to the step or to what it waits for, else what holds it now.
 */
export function movesOf(kept: Plan, made: Standing & { readonly situation: Situation }): Move[] {
  const { plan, air, situation } = made;
  if (plan === kept) return [];
  const before = new Map(kept.steps.map((s) => [s.id, s]));
  const after = new Map(plan.steps.map((s) => [s.id, s]));
  const events = new Map<string, Event>();
  for (const step of plan.steps) {
    const event = eventOf(before.get(step.id), step, situation, plan.from);
    if (event !== undefined) events.set(step.id, event);
  }
  for (const step of kept.steps)
    if (!after.has(step.id) && step.done !== true) events.set(step.id, { kind: 'gone', step: step.id });
  const moved = plan.steps.flatMap((step) => {
    const old = before.get(step.id);
    if (old === undefined || step.done === true || step.atWork === true || old.done === true) return [];
    const [from, to] = [startOf(old), startOf(step)];
    return Math.abs(to - from) < LEAST_MINUTES ? [] : [{ step, from, to }];
  });
  const eventsThat = (delay: boolean) => new Map([...events].filter(([, e]) => (delay ? delays : hastens).has(e.kind)));
  const [delaying, hastening] = [eventsThat(true), eventsThat(false)];
  const causeOf = (step: PlannedStep, from: Minute, to: Minute): MoveCause => {
    const fitting = to > from ? delaying : hastening;
    const near = firstEvent(step.id, after, fitting) ?? firstEvent(step.id, before, fitting);
    if (near !== undefined) return near;
    if (to < from) return { kind: 'room' };
    const chain = whyChain(situation, air, plan, step.id);
    const event = chain.flatMap((link) => fitting.get(link.step.id) ?? [])[0];
    const [first] = chain;
    if (event !== undefined) return event;
    return first === undefined ? { kind: 'room' } : { kind: 'held', cause: first.cause, step: first.step };
  };
  return moved
    .map(({ step, from, to }): Move => ({ step, from, to, cause: causeOf(step, from, to) }))
    .sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from) || (a.step.id < b.step.id ? -1 : 1));
}
