import type { Mark } from '../model/mark.ts';
import type { PlannedStep, PlannedWindow } from '../model/plan.ts';
import type { Minute, Span } from '../time/span.ts';
import { grouped } from './grouped.ts';
import { markSaid, preparationSaid } from './say-mark.ts';
import { sayMomentSeenOn, type Manner } from './say-time.ts';
import { translated, worded } from '../words/worded.ts';

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

/** What the first step that waits for this film waits for; and every window of it, which may shut. */
function waitingFor(film: PlannedStep, followers: readonly PlannedStep[]): Waiting[] {
  const first = Math.min(...followers.map(startOf));
  const found = new Map<Mark, Waiting>();
  for (const step of followers) {
    const window = step.window?.of === film.id ? step.window : undefined;
    const wait = step.after.find((a) => a.step === film.id && a.mark !== undefined);
    const mark = window === undefined ? wait?.mark : 'recoat';
    if (mark === undefined || found.has(mark) || (startOf(step) > first && window?.shuts === undefined)) continue;
    const from = window?.opens ?? wait?.notBefore ?? endOf(film);
    found.set(mark, { mark, from, ...(window !== undefined && { window }) });
  }
  return [...found.values()].sort((a, b) => a.from - b.from);
}

/** What a last coat may be used for, and when, while it is not yet fit for everything. */
function lastMarks(film: PlannedStep): Waiting[] {
  return (['handle', 'stack'] as const).flatMap((mark) => {
    const times = film.dry?.[mark];
    return times === undefined ? [] : [{ mark, from: times.late }];
  });
}

/** Films laid before the end of `day` that something still waits for when it begins, those of a section together. */
export function dryingOn(day: Span, steps: readonly PlannedStep[]): Drying[] {
  const drying = steps.flatMap((film) => {
    if (film.dry === undefined || endOf(film) > day.end) return [];
    const followers = steps.filter(
      (s) => s.window?.of === film.id || s.after.some((a) => a.step === film.id && a.mark !== undefined),
    );
    const waiting = followers.length > 0 ? waitingFor(film, followers) : lastMarks(film);
    const over = followers.length > 0 ? Math.min(...followers.map(startOf)) : (waiting.at(-1)?.from ?? endOf(film));
    const isNews = waiting.some((w) => w.from > day.start || w.window?.shuts !== undefined);
    return over > day.start && isNews ? [{ film, waiting }] : [];
  });
  return [...grouped(drying, (d) => `${d.film.piece}/${d.film.section}`).values()].flat();
}

/** `sand from 14:10`, `coat again from tomorrow 08:30, no later than Fri 15 Jan 17:00`, as said on the day of `on`. */
export function sayWaiting(waiting: Waiting, on: Minute, manner: Manner): string {
  const { window } = waiting;
  const from = waiting.from <= on ? '' : worded` from ${sayMomentSeenOn(on, waiting.from, manner)}`;
  const shuts = window?.shuts === undefined ? '' : worded`, no later than ${sayMomentSeenOn(on, window.shuts, manner)}`;
  const prep = window?.prep === undefined ? '' : `, ${translated(preparationSaid[window.prep])}`;
  return `${translated(markSaid[waiting.mark])}${from}${shuts}${prep}`;
}
