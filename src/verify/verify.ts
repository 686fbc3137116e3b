import type { Plan } from '../model/plan.ts';
import type { Breach } from './breach.ts';
import type { Evidence } from './facts.ts';
import { groundOf, type Rule } from './ground.ts';
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

const checks: readonly Rule[] = [
  planComplete,
  orderKept,
  waitsKept,
  windowsKept,
  limitsKept,
  meansKept,
  capacitiesKept,
  hoursKept,
  airKept,
  dustKept,
  potLifeKept,
  sessionsKept,
  journalKept,
  gatesKept,
  ragsPutAway,
  engagementsKept,
  staysKept,
  timesShown,
  latenessShown,
];

/**
 * Checks a plan against all that no plan may break, working everything out anew from the tasks, the shop, the
 * materials and the air. Empty: the plan holds.
 */
export function verify(evidence: Evidence, plan: Plan): Breach[] {
  const ground = groundOf(evidence, plan);
  return checks.flatMap((check) => check(ground));
}
