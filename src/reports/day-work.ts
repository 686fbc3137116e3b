import type { PlannedStep } from '../model/plan.ts';
import type { Task } from '../model/task.ts';
import type { Span } from '../time/span.ts';
import type { Names } from './names.ts';
import { joinedByAnd, translated, worded } from '../words/worded.ts';

/** A stretch of hands-on work on one day. */
export interface Work {
  readonly step: PlannedStep;
  readonly span: Span;
  /** The step began in an earlier span. */
  readonly goesOn: boolean;
  /** It goes on in a later one. */
  readonly breaksOff: boolean;
}

/** Work that begins on `day`, in order of time. */
export function workOn(day: Span, steps: readonly PlannedStep[]): Work[] {
  return steps
    .flatMap((step) =>
      step.spans.map((span, i) => ({ step, span, goesOn: i > 0, breaksOff: i < step.spans.length - 1 })),
    )
    .filter(({ span }) => span.start >= day.start && span.start < day.end)
    .sort((a, b) => a.span.start - b.span.start || (a.step.id < b.step.id ? -1 : 1));
}

/** Where a step is done, by whom if there are several hands, and with what. */
export function whereAndWith(step: PlannedStep, task: Task | undefined, names: Names, severalHands: boolean): string {
  return [
    names.station(step.station),
    ...(severalHands ? [joinedByAnd(step.hands.map(names.hand))] : []),
    ...(step.material === undefined ? [] : [names.material(step.material)]),
    ...(step.way === '' ? [] : [worded`by ${translated(step.way)}`]),
    ...step.tools.map(names.tool),
    ...(task?.grit === undefined ? [] : [worded`grit ${task.grit}`]),
    ...(task?.supplies ?? []).map(names.material),
  ].join(' · ');
}
