import type { Plan } from '../model/plan.ts';
import type { Breach } from './breach.ts';
import type { Evidence } from './facts.ts';
import { groundOf, type Passed, type Rule } from './ground.ts';
import { airKept } from './rules/air.ts';
import { capacitiesKept } from './rules/capacity.ts';
import { planComplete } from './rules/complete.ts';
import { dustKept } from './rules/dust.ts';
import { engagementsKept } from './rules/engagements.ts';
import { gatesKept } from './rules/gate.ts';
import { hoursKept } from './rules/hours.ts';
import { journalKept } from './rules/journal.ts';
import { latenessShown } from './rules/lateness.ts';
import { meansKept } from './rules/means.ts';
import { orderKept } from './rules/order.ts';
import { potLifeKept } from './rules/pot-life.ts';
import { ragsPutAway } from './rules/rags.ts';
import { sessionsKept } from './rules/session.ts';
import { timesShown } from './rules/shown.ts';
import { staysKept } from './rules/stay.ts';
import { waitsKept } from './rules/wait.ts';
import { windowsKept } from './rules/window.ts';
import { limitsKept } from './rules/within.ts';
import { touchedIn } from './touched.ts';

const checks: readonly Rule[] = [
  planComplete,
  orderKept,
  limitsKept,
  meansKept,
  capacitiesKept,
  hoursKept,
  dustKept,
  potLifeKept,
  sessionsKept,
  journalKept,
  gatesKept,
  ragsPutAway,
  engagementsKept,
  staysKept,
  latenessShown,
];

/** What works out how films dry, and looks at nothing beyond a piece: nearly all of the work, with the air of each step. */
const ofEachPiece: readonly Rule[] = [waitsKept, windowsKept];

export interface Asked {
  /** A plan that has passed before: what is alike, down to the air, is not worked out again. */
  readonly passed?: Passed;
  /** Must what it shows of films be so, too? Else only what is to be done, and when. */
  readonly shown?: boolean;
}

/**
 * Checks a plan against all that no plan may break, working everything out anew from the tasks, the shop, the
 * materials and the air. Empty: the plan holds.
 */
export function verify(evidence: Evidence, plan: Plan, { passed, shown = true }: Asked = {}): Breach[] {
  const ground = groundOf(evidence, plan, passed);
  const all = { facts: ground.facts, ofTheirPieces: ground.facts };
  const touched = passed === undefined ? all : touchedIn(ground, groundOf(passed.evidence, passed.plan, passed));
  const pieces = { ...ground, facts: touched.ofTheirPieces };
  return [
    ...checks.flatMap((check) => check(ground)),
    ...ofEachPiece.flatMap((check) => check(pieces)),
    ...airKept(ground, touched.facts),
    ...(shown ? timesShown(pieces) : []),
  ];
}
