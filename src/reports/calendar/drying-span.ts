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

/** Waits for these go on long after the work on the section has: for them no bench is watched. */
const isSlow = (mark: Mark | undefined) => mark === 'stack' || mark === 'cure';

/** When the next film of the same section goes on: from then on that one is the one that dries. */
function nextFilm(plan: Plan, step: PlannedStep): Minute {
  const later = plan.steps.filter(
    (s) => s.piece === step.piece && s.section === step.section && s.dry !== undefined && workStart(s) >= workEnd(step),
  );
  return Math.min(...later.filter((s) => s.id !== step.id).map(workStart));
}

function dryingEnd(plan: Plan, step: PlannedStep, dry: NonNullable<PlannedStep['dry']>): Minute {
  const windows = plan.steps.flatMap((s) => (s.window?.of === step.id ? s.window.opens : []));
  if (windows.length > 0) return Math.min(...windows);
  const waits = plan.steps.flatMap((s) =>
    s.after.filter((a) => a.step === step.id && !isSlow(a.mark)).map((a) => a.notBefore),
  );
  return Math.max(...(waits.length > 0 ? waits : benchMarks.flatMap((mark) => dry[mark]?.late ?? [])));
}

/**
 * While a step's film dries and work on its section waits for it: until the window for the next coat opens, else to
 * the last time that a later step had to wait for, or where nothing waits, until it is safe to move at the slow end.
 * Undefined where nothing dries.
 */
export function dryingSpan(plan: Plan, step: PlannedStep): Span | undefined {
  if (step.dry === undefined) return undefined;
  const start = workEnd(step);
  const end = Math.min(dryingEnd(plan, step, step.dry), nextFilm(plan, step));
  return end > start ? { start, end } : undefined;
}
