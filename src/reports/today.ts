import type { PlannedStep } from '../model/plan.ts';
import type { Minute, Span } from '../time/span.ts';
import { localDay } from '../time/zone.ts';
import { shortRows, warmRows } from './ahead.ts';
import { benchOf, pieceCell, sayStep, workRow, type Bench, type Sheet, type Writing } from './bench.ts';
import { benchGrid, dayHead, dryingRows, unfitRows } from './week.ts';
import { careLines, carePages, deference, freshAirRows, generalWarnings, pagesOn } from './care.ts';
import { datedRows } from './dated-rows.ts';
import { workOn, type Work } from './day-work.ts';
import { painted, paragraph, type Cell } from './layout.ts';
import { noPieceLines } from './no-piece.ts';
import { preparationSaid } from './say-mark.ts';
import { sayClock, sayMoment, sayMomentSeenOn, type Manner } from './say-time.ts';
import { translated, worded } from '../words/worded.ts';

/** One day on one screen: now, next and after; what opens and shuts; what to carry; when not to coat. */
export function todayScreen(sheet: Sheet, writing: Writing, withPages = false): string {
  const bench = benchOf(sheet, writing);
  const { look, manner } = writing;
  const day = localDay(manner.now, manner.zone);
  const work = workOn(day, sheet.plan.steps);
  const rows = [
    ...workRows(work, bench),
    ...datedRows(day, bench),
    ...openingRows(day, bench),
    ...carryRows(day, bench),
    ...(sheet.ahead === undefined ? [] : [...warmRows(sheet.ahead, bench), ...shortRows(sheet.ahead, bench)]),
    ...dryingRows(day, bench),
    ...freshAirRows(day, bench, new Set()),
    ...unfitRows(day, bench),
  ];
  const head = worded`${dayHead(day, bench)} · now ${sayClock(manner.now, manner)}`;
  const screen = [...paragraph(head, look, 0, look.paint.strong), ...benchGrid(rows, bench)];
  return [
    ...shuttingLines(bench),
    ...screen,
    ...tomorrowLines(work, bench),
    ...careEnd(day, bench, withPages),
    '',
  ].join('\n');
}

/** What closes the lead gate, and whether there is more to know for care; or all of it. */
function careEnd(day: Span, bench: Bench, withPages: boolean): string[] {
  const { look, safety } = bench;
  if (safety === undefined) return [];
  const pages = pagesOn(day, bench);
  const more =
    pages.length === 0 || withPages ? [] : paragraph(worded`today --care tells more of it.`, look, 2, look.paint.quiet);
  const shown = withPages ? carePages(pages, bench) : [];
  if (pages.length === 0) return [];
  return [
    '',
    ...generalWarnings(bench, true),
    ...paragraph(translated(deference), look, 2, look.paint.quiet),
    ...more,
    ...shown,
  ];
}

/** The day's work with the word that says where the person stands in it. */
function workRows(work: readonly Work[], bench: Bench): Cell[][] {
  const { look, manner } = bench;
  const said = new Set<string>();
  const care = (step: PlannedStep) => careLines(step, bench, said);
  const open = work.filter((w) => w.step.done !== true && w.span.end > manner.now);
  const words = new Map<Work, string>();
  const [first, ...later] = open;
  const running = first !== undefined && (first.span.start <= manner.now || first.step.atWork === true);
  if (first !== undefined) words.set(first, running ? worded`now` : worded`next`);
  const [second, third] = later;
  if (second !== undefined) words.set(second, running ? worded`next` : worded`after`);
  if (third !== undefined && running) words.set(third, worded`after`);
  if (work.length === 0) return [['', painted(look.paint.quiet, worded`no hands-on work today`), '', '']];
  return work.map((w, i, all) => {
    const [time = '', ...rest] = workRow(w, bench, care, all[i - 1]?.step);
    const word = words.get(w);
    return [word === undefined ? time : [time, painted(look.paint.strong, word)].flat(), ...rest];
  });
}

const DAY_MINUTES = 24 * 60;

interface Shutting {
  readonly step: PlannedStep;
  readonly shuts: Minute;
  /** What has to be done for it where it comes later. */
  readonly sparing?: PlannedStep;
  /** When it can go on again where it comes later. */
  readonly reopens?: Minute;
}

/** What cannot wait: windows of films that lie already which shut within a day, before anything else. */
function shuttingLines(bench: Bench): string[] {
  const { plan, manner, look, names, ahead } = bench;
  const soon = ({ shuts }: Shutting) => shuts >= manner.now && shuts < manner.now + DAY_MINUTES;
  const lies = new Set(plan.steps.filter((s) => s.done === true).map((s) => s.id));
  const planned = plan.steps.flatMap((step): Shutting[] => {
    const { window } = step;
    const shuts = window?.shuts;
    if (shuts === undefined || step.done === true || step.atWork === true || !lies.has(window?.of ?? '')) return [];
    return [{ step, shuts }];
  });
  const late = (ahead?.late ?? []).map(({ coat, remedy, shuts }) => ({ step: coat, shuts, sparing: remedy }));
  const early = (ahead?.early ?? []).map(({ coat, shuts, reopens }) => ({ step: coat, shuts, reopens }));
  const shutting: readonly Shutting[] = [...planned, ...late, ...early].filter(soon);
  if (shutting.length === 0) return [];
  const lines = [...shutting]
    .sort((a, b) => a.shuts - b.shuts)
    .flatMap((one) => {
      const { step } = one;
      const section = names.section(step.piece, step.section);
      const where = `${names.piece(step.piece)}${section === '' ? '' : `, ${section}`}`;
      const when = worded`${byWhen(one, manner)}; planned ${sayMoment(startOf(step), manner)}`;
      return paragraph(`${where}: “${sayStep(step)}” ${when}`, look, 2, look.paint.warn, 4);
    });
  return [...paragraph(worded`A window shuts within a day`, look, 0, look.paint.strong), ...lines, ''];
}

function byWhen({ shuts, sparing, reopens }: Shutting, manner: Manner): string {
  const until = sayMoment(shuts, manner);
  if (sparing !== undefined) return worded`begun by ${until} is spared “${sayStep(sparing)}”`;
  if (reopens !== undefined) return worded`can go on until ${until}, and again from ${sayMoment(reopens, manner)}`;
  return worded`must have begun by ${until}`;
}

/** Windows that open or shut today, by the hour. */
function openingRows(day: Span, bench: Bench): Cell[][] {
  const { plan, manner, look } = bench;
  const within = (minute: number | undefined) => minute !== undefined && minute >= day.start && minute < day.end;
  const events = plan.steps.flatMap((step) => {
    const { window } = step;
    if (window === undefined || step.done === true) return [];
    const prep = window.prep === undefined ? '' : `, ${translated(preparationSaid[window.prep])}`;
    const planned = worded`planned ${sayMomentSeenOn(day.start, startOf(step), manner)}`;
    return [
      ...(within(window.opens)
        ? [{ at: window.opens, step, word: worded`opens`, what: worded`may begin${prep}; ${planned}` }]
        : []),
      ...(window.shuts !== undefined && within(window.shuts)
        ? [{ at: window.shuts, step, word: worded`shuts`, what: worded`must have begun; ${planned}` }]
        : []),
    ];
  });
  return events
    .sort((a, b) => a.at - b.at)
    .map(({ at, step, word, what }) => [
      painted(look.paint.quiet, `${word} ${sayClock(at, manner)}`),
      pieceCell(step, bench),
      `${sayStep(step)}: ${what}`,
      '',
    ]);
}

const startOf = (step: PlannedStep) => step.spans[0]?.start ?? step.holdsStationUntil;

/**
 * What is to be carried to another room before its next step, from when it may be and by when it must be; but for what the
 * next day asks to be brought into the warm, which is said there.
 */
function carryRows(day: Span, bench: Bench): Cell[][] {
  const { plan, look, manner, names, ahead } = bench;
  return plan.steps.flatMap((step, i): Cell[][] => {
    const before = plan.steps
      .slice(0, i)
      .findLast((s) => s.piece === step.piece && s.section === step.section && s.atOnceAfter === undefined);
    if (before === undefined || before.room === step.room || step.done === true) return [];
    if (ahead?.bringIn.some((b) => b.step.id === step.id)) return [];
    const from = step.broughtIn?.at ?? before.holdsStationUntil;
    const start = startOf(step);
    const by = step.broughtIn?.by ?? start;
    if (from >= day.end || start < day.start || from < day.start) return [];
    const when = from <= manner.now ? worded`any time` : worded`from ${sayMomentSeenOn(day.start, from, manner)}`;
    const warm = by < start ? worded`; warm for it if there by ${sayMomentSeenOn(day.start, by, manner)}` : '';
    const where = worded`to ${names.station(step.station)} in ${names.room(step.room)}`;
    // What goes on at once is carried then, and at no other time.
    const whenNeeded =
      from === start ? sayMoment(start, manner) : worded`${when}; needed there ${sayMoment(start, manner)}`;
    return [[painted(look.paint.quiet, worded`carry`), pieceCell(step, bench), `${where}, ${whenNeeded}${warm}`, '']];
  });
}

/** When nothing is left today: what comes first on the next day of work. */
function tomorrowLines(work: readonly Work[], bench: Bench): string[] {
  const { plan, manner, look, names } = bench;
  if (work.some((w) => w.span.end > manner.now && w.step.done !== true)) return [];
  const next = plan.steps.find((s) => s.done !== true && startOf(s) >= manner.now);
  if (plan.pieces.length === 0) return noPieceLines(look);
  if (next === undefined) return paragraph(worded`Nothing is left to do.`, look);
  return paragraph(
    worded`Next: ${sayMoment(startOf(next), manner)}, ${names.piece(next.piece)}: ${sayStep(next)}`,
    look,
  );
}
