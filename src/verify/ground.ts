import { openSpans } from '../model/hours.ts';
import { startOf, type Plan, type PlannedStep } from '../model/plan.ts';
import { partOf } from '../model/session.ts';
import type { Task } from '../model/task.ts';
import type { Minute, Spans } from '../time/span.ts';
import { ALWAYS } from '../time/time-map.ts';
import type { Breach } from './breach.ts';
import type { Fact } from './fact.ts';
import { factOf, type Evidence } from './facts.ts';
import { sameUntil } from './other-air.ts';
import { sayFor, type Say } from './say.ts';

/** All that a rule may ask about. */
export interface Ground extends Evidence {
  readonly plan: Plan;
  readonly tasks: ReadonlyMap<string, Task>;
  /** Every step of the plan that makes sense, also one that is planned twice. */
  readonly facts: readonly Fact[];
  readonly byId: ReadonlyMap<string, Fact>;
  readonly byObject: ReadonlyMap<string, readonly Fact[]>;
  readonly bySection: ReadonlyMap<string, readonly Fact[]>;
  /** When the shop is open, from before the first step until long after the last. */
  readonly open: Spans;
  readonly say: Say;
}

/** Facts by each of their keys, in order. */
export function groups(
  facts: readonly Fact[],
  keysOf: (fact: Fact) => readonly string[],
): ReadonlyMap<string, readonly Fact[]> {
  const grouped = new Map<string, Fact[]>();
  for (const fact of facts)
    for (const key of keysOf(fact)) {
      const group = grouped.get(key);
      if (group === undefined) grouped.set(key, [fact]);
      else group.push(fact);
    }
  return grouped;
}

/** The section that a step belongs to, told from those of other pieces. */
export function sectionOf({ task }: Fact): string {
  return `${task.piece}/${task.section}`;
}

/** One of the rules: all places where the plan breaks it. */
export type Rule = (ground: Ground) => Breach[];

const DAY = 1440;
const LONGEST_SHUT_DAYS = 60;

function openAround({ situation }: Evidence, facts: readonly Fact[]): Spans {
  const { opening, timeZone } = situation.book.shop;
  const first = facts.reduce<Minute>((least, f) => Math.min(least, f.start), situation.now);
  const last = facts.reduce<Minute>((most, f) => Math.max(most, f.end, f.movableFrom), situation.now);
  return openSpans(opening, timeZone, first - DAY, last + LONGEST_SHUT_DAYS * DAY);
}

/** A plan that has passed, and what it was held against. */
export interface Passed {
  readonly evidence: Evidence;
  readonly plan: Plan;
}

/** Up to when all about a step, down to the air around it, is as it was in a plan that has passed. */
function asPassed(evidence: Evidence, passed: Passed | undefined): (step: PlannedStep, task: Task) => Minute {
  if (passed === undefined) return () => ALWAYS;
  const steps = new Map(passed.plan.steps.map((s) => [s.id, s]));
  const tasks = new Map(passed.evidence.situation.tasks.map((t) => [t.id, t]));
  const roomIn = ({ situation }: Evidence, { station }: PlannedStep) =>
    situation.book.shop.stations.find((s) => s.id === station)?.room ?? '';
  const filmIn = ({ situation, factors }: Evidence, { material = '', id }: PlannedStep) =>
    [situation.book.materials.get(material), factors.get(id)] as const;
  return (step, task) => {
    if (steps.get(step.id) !== step || tasks.get(task.id) !== task) return ALWAYS;
    const [room, then] = [roomIn(evidence, step), filmIn(passed.evidence, step)];
    if (room !== roomIn(passed.evidence, step) || !filmIn(evidence, step).every((what, k) => what === then[k]))
      return ALWAYS;
    return sameUntil(evidence.air.get(room), passed.evidence.air.get(room), startOf(step));
  };
}

/** @param passed a plan that has passed before: what a step that is as it was there shows of its film is taken as so */
export function groundOf(evidence: Evidence, plan: Plan, passed?: Passed): Ground {
  const sureUntil = asPassed(evidence, passed);
  const tasks = new Map(evidence.situation.tasks.map((t) => [t.id, t]));
  const sessions = (plan.sessions ?? []).map((s) => s.steps);
  const facts = plan.steps.flatMap((step) => {
    const task = tasks.get(step.id);
    const fact =
      task === undefined ? undefined : factOf(step, task, evidence, sureUntil(step, task), partOf(sessions, step.id));
    return fact === undefined ? [] : [fact];
  });
  return {
    ...evidence,
    plan,
    tasks,
    facts,
    byId: new Map(facts.map((f) => [f.id, f])),
    byObject: groups(facts, (f) => [f.task.object]),
    bySection: groups(facts, (f) => [sectionOf(f)]),
    open: openAround(evidence, facts),
    say: sayFor(evidence.situation),
  };
}
