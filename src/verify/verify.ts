import type { Plan } from '../model/plan.ts';
import type { Breach } from './breach.ts';
import type { Evidence } from './facts.ts';
import { type Ground, groundOf, type Rule } from './ground.ts';
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
import { touchedPieces } from './touched.ts';

const checks: readonly Rule[] = [
  planComplete,
  orderKept,
  waitsKept,
  windowsKept,
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

/** What looks at each step minute by minute and at nothing beyond its piece: nearly all of the work. */
const ofEachPiece: readonly Rule[] = [airKept, timesShown];

/** A plan that has passed, and what it was held against. */
export interface Passed {
  readonly evidence: Evidence;
  readonly plan: Plan;
}

function onlyTouched(ground: Ground, { evidence, plan }: Passed): Ground {
  const touched = touchedPieces(ground, groundOf(evidence, plan));
  return { ...ground, facts: ground.facts.filter((f) => touched.has(f.task.piece)) };
}

/**
 * Checks a plan against all that no plan may break, working everything out anew from the tasks, the shop, the
 * materials and the air. Empty: the plan holds.
 * @param passed a plan that has passed before: what it has alike, down to the air, is not looked at minute by minute again
 */
export function verify(evidence: Evidence, plan: Plan, passed?: Passed): Breach[] {
  const ground = groundOf(evidence, plan);
  const unsure = passed === undefined ? ground : onlyTouched(ground, passed);
  return [...checks.flatMap((check) => check(ground)), ...ofEachPiece.flatMap((check) => check(unsure))];
}
