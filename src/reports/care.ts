import { freshAirNeeds, vapoursOn, type FreshAir } from '../bookkeeping/fresh-air.ts';
import { careOf, type SafetyPage } from '../model/safety.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { Span } from '../time/span.ts';
import type { Bench } from './bench.ts';
import { workOn } from './day-work.ts';
import { painted, paragraph, type Cell } from './layout.ts';
import { saidOnce } from './look.ts';
import { sayAir, sayMass } from './say-quantity.ts';
import { sayClock } from './say-time.ts';
import { joinedByAnd, marked, phrase, worded } from '../words/worded.ts';

/** Stands under what is said for care. */
export const deference = phrase(
  'Cautions are the usual ones: the label and safety data sheet of each container, local rules and licensed practice stand above them.',
);

/** What calls for care at a step and has not been `said` yet today; adds it to what was said. */
export function careLines(
  step: PlannedStep,
  { book, taskOf, warningsOf, safety = [] }: Bench,
  said: Set<string>,
): string[] {
  const task = taskOf.get(step.id);
  const care = task === undefined ? undefined : careOf(task, book.materials.get(task.material ?? ''), safety);
  const texts = [
    ...(care?.own ?? []),
    ...(care?.pages ?? []).map((p) => p.short),
    ...(warningsOf.get(step.id) ?? []).map((w) => w.text),
  ].map((text) => worded`Careful: ${text}`);
  const fresh = texts.filter((text) => !said.has(text));
  for (const text of fresh) said.add(text);
  return fresh;
}

/** The pages that the work of a day calls for, worst first. */
export function pagesOn(day: Span, { plan, book, taskOf, safety = [] }: Bench): SafetyPage[] {
  const called = new Set(
    workOn(day, plan.steps).flatMap(({ step }) => {
      const task = taskOf.get(step.id);
      if (task === undefined || step.done === true) return [];
      return careOf(task, book.materials.get(task.material ?? ''), safety).pages.map((p) => p.id);
    }),
  );
  const lead = plan.warnings.some((w) => w.code.startsWith('lead-'));
  return safety.filter((p) => called.has(p.id) || (lead && p.when === 'disturbs-old-paint'));
}

/** The rooms that need fresh air on a day, each with its worst hour. */
export function freshAirOn(day: Span, { book, tasks, plan }: Pick<Bench, 'book' | 'tasks' | 'plan'>): FreshAir[] {
  const roomsM3 = new Map(
    book.shop.rooms.flatMap((r) => (r.volumeM3 === undefined ? [] : [[r.id, r.volumeM3] as const])),
  );
  return freshAirNeeds(vapoursOn(day, book, tasks, plan.steps), roomsM3);
}

function times(value: number): string {
  return value < 10 ? marked(value.toFixed(1)) : String(Math.round(value));
}

function arithmetic(need: FreshAir, { names, manner }: Bench): string[] {
  const { from, parts, roomM3, timesLimit, m3PerHour } = need;
  const grams = joinedByAnd(
    parts.map((p) => worded`${sayMass(p.grams, manner)} of solvent (${names.material(p.material)})`),
  );
  const still =
    roomM3 === undefined || timesLimit === undefined
      ? ''
      : worded` in ${sayAir(roomM3, manner)} of still air, ${times(timesLimit)} times the limit`;
  const limits = [...new Map(parts.map((p) => [p.limit.of, p.limit])).values()]
    .map((l) => worded`${l.of} ${l.mgPerM3} mg/m³ (${l.source})`)
    .join('; ');
  return [
    worded`From ${sayClock(from, manner)}, in an hour: ${grams}${still}. To stay at it takes ${sayAir(m3PerHour, manner)} of fresh air an hour.`,
    worded`Limits for a day’s work: ${limits}. A reckoning to warn, not to rely on.`,
  ];
}

/** A row a room: how much fresh air its worst hour needs, and how that was reckoned. */
export function freshAirRows(day: Span, bench: Bench, said: Set<string>): Cell[][] {
  if (bench.safety === undefined) return [];
  const { quiet, warn } = bench.look.paint;
  return freshAirOn(day, bench).map((need, i) => {
    const [fact = '', limit = ''] = arithmetic(need, bench);
    const isNew = !said.has(limit);
    said.add(limit);
    return [
      painted(quiet, saidOnce(worded`fresh air`, i, bench.look)),
      bench.names.room(need.room),
      [painted(warn, fact), ...(isNew ? [painted(quiet, limit)] : [])],
      '',
    ];
  });
}

/** Warnings of the whole plan; behind a closed lead gate, why it is closed. */
export function generalWarnings({ plan, look, safety = [] }: Bench, onlyLead = false): string[] {
  const general = plan.warnings.filter((w) => w.step === undefined && (!onlyLead || w.code.startsWith('lead-')));
  const lead = general.some((w) => w.code.startsWith('lead-'))
    ? safety.filter((p) => p.when === 'disturbs-old-paint').map((p) => p.short)
    : [];
  return [...general.map((w) => w.text), ...lead].flatMap((text) =>
    paragraph(worded`Careful: ${text}`, look, 2, look.paint.warn, 4),
  );
}

/** Pages in full, with where their figures come from. */
export function carePages(pages: readonly SafetyPage[], { look }: Pick<Bench, 'look'>): string[] {
  const { strong, quiet } = look.paint;
  return pages.flatMap((page) => [
    '',
    ...paragraph(page.title, look, 0, strong),
    ...page.text.flatMap((text) => paragraph(text, look, 2)),
    ...page.figures.flatMap(({ say, source }) => paragraph(`${say} (${source})`, look, 2, quiet, 4)),
  ]);
}
