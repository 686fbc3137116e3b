import type { Mark } from '../model/mark.ts';
import type { PlannedStep, PlannedWindow } from '../model/plan.ts';
import type { Minute, Span } from '../time/span.ts';
import { markSaid, preparationSaid } from './say-mark.ts';
import { sayMomentSeenOn, type Manner } from './say-time.ts';

/** A film that dries, and what waits for it. */
export interface Drying {
  readonly film: PlannedStep;
  readonly waiting: readonly Waiting[];
}

export interface Waiting {
  readonly mark: Mark;
  readonly from: Minute;
  readonly window?: PlannedWindow;
}

const endOf = (step: PlannedStep): Minute => step.spans.at(-1)?.end ?? step.holdsStationUntil;
const startOf = (step: PlannedStep): Minute => step.spans[0]?.start ?? step.holdsStationUntil;

/** What steps wait for this film, by mark, the first of each; for a last coat, the marks that the buyer cares for. */
function waitingFor(film: PlannedStep, followers: readonly PlannedStep[]): Waiting[] {
  const found = new Map<Mark, Waiting>();
  for (const step of followers) {
    const window = step.window?.of === film.id ? step.window : undefined;
    const wait = step.after.find((a) => a.step === film.id && (a.mark !== undefined || window !== undefined));
    if (wait === undefined && window === undefined) continue;
    const mark = window === undefined ? (wait?.mark ?? 'recoat') : 'recoat';
    if (found.has(mark)) continue;
    const from = window?.opens ?? wait?.notBefore ?? endOf(film);
    found.set(mark, { mark, from, ...(window !== undefined && { window }) });
  }
  if (found.size === 0)
    for (const mark of ['handle', 'stack'] as const) {
      const times = film.dry?.[mark];
      if (times !== undefined) found.set(mark, { mark, from: times.late });
    }
  return [...found.values()].sort((a, b) => a.from - b.from);
}

/** Films laid before the end of `day` that something still waits for when it begins. */
export function dryingOn(day: Span, steps: readonly PlannedStep[]): Drying[] {
  return steps.flatMap((film) => {
    if (film.dry === undefined || endOf(film) > day.end) return [];
    const followers = steps.filter(
      (s) => s.window?.of === film.id || s.after.some((a) => a.step === film.id && a.mark !== undefined),
    );
    const waiting = waitingFor(film, followers);
    const over = followers.length > 0 ? Math.max(...followers.map(startOf)) : (waiting.at(-1)?.from ?? endOf(film));
    return over > day.start && waiting.length > 0 ? [{ film, waiting }] : [];
  });
}

/** `sand from 14:10`, `coat again from tomorrow 08:30, no later than Fri 15 Jan 17:00`, as said on the day of `on`. */
export function sayWaiting(waiting: Waiting, on: Minute, manner: Manner): string {
  const { window } = waiting;
  const from = `${markSaid[waiting.mark]} from ${sayMomentSeenOn(on, waiting.from, manner)}`;
  const shuts = window?.shuts === undefined ? '' : `, no later than ${sayMomentSeenOn(on, window.shuts, manner)}`;
  const prep = window?.prep === undefined ? '' : `, ${preparationSaid[window.prep]}`;
  return `${from}${shuts}${prep}`;
}
