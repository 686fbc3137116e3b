import type { Mark } from '../../model/mark.ts';
import type { Plan, PlannedStep } from '../../model/plan.ts';
import type { Minute, Span } from '../../time/span.ts';
import { at } from '../../at.ts';

/** Marks of a film on the way to being safe to move. Its cure goes on for weeks and keeps nobody waiting at the bench. */
const benchMarks: readonly Mark[] = ['dust-free', 'touch', 'tape', 'sand', 'recoat', 'handle'];

/** When the hands-on work of a step is over. */
export function workEnd(step: PlannedStep): Minute {
  return at(step.spans, step.spans.length - 1).end;
}

/** When the hands-on work of a step begins. */
export function workStart(step: PlannedStep): Minute {
  return at(step.spans, 0).start;
}

/**
 * While a step's film dries and something waits for it: to the last time that a later step had to wait for, or where
 * nothing waits, until it is safe to move at the slow end. Undefined where nothing dries.
 */
export function dryingSpan(plan: Plan, step: PlannedStep): Span | undefined {
  const { dry } = step;
  if (dry === undefined) return undefined;
  const waits = plan.steps.flatMap((s) => s.after.filter((a) => a.step === step.id).map((a) => a.notBefore));
  const own = benchMarks.flatMap((mark) => dry[mark]?.late ?? []);
  const end = Math.max(...(waits.length > 0 ? waits : own));
  const start = workEnd(step);
  return end > start ? { start, end } : undefined;
}
