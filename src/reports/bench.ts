import type { Book } from '../model/book.ts';
import type { PlannedStep, Plan, Warning } from '../model/plan.ts';
import type { SafetyPage } from '../model/safety.ts';
import type { Task } from '../model/task.ts';
import type { Span } from '../time/span.ts';
import type { Ahead } from './what-is-ahead.ts';
import { whereAndWith, type Work } from './day-work.ts';
import { linesOf, painted, textOf, type Cell } from './layout.ts';
import { grouped } from './grouped.ts';
import { isByLine, type Look } from './look.ts';
import { namesOf, type Names } from './names.ts';
import { sessionNotes } from './sessions.ts';
import { sayClocks, type Manner } from './say-time.ts';
import { worded } from '../words/worded.ts';

/** A stretch of one day's opening hours in which the air of a room forbids coating, and why. */
export interface UnfitHours {
  readonly room: string;
  readonly span: Span;
  readonly why: string;
}

/** What a bench sheet is made of. Every text in it must be harmless. */
export interface Sheet {
  readonly book: Book;
  readonly plan: Plan;
  readonly tasks: readonly Task[];
  readonly unfit: readonly UnfitHours[];
  /** Absent: nothing is told of what to buy and to warm. */
  readonly ahead?: Ahead;
  /** Absent: only what recipes themselves say for care is shown. */
  readonly safety?: readonly SafetyPage[];
}

/** How and for whom it is written. */
export interface Writing {
  readonly manner: Manner;
  readonly look: Look;
}

/** A sheet with all that its lines are looked up in. */
export interface Bench extends Sheet, Writing {
  readonly names: Names;
  readonly taskOf: ReadonlyMap<string, Task>;
  readonly warningsOf: ReadonlyMap<string, readonly Warning[]>;
  /** What a step shares with the coats of its session. */
  readonly sharedOf: ReadonlyMap<string, string>;
}

export function benchOf(sheet: Sheet, writing: Writing): Bench {
  const names = namesOf(sheet.book);
  return {
    ...sheet,
    ...writing,
    names,
    taskOf: new Map(sheet.tasks.map((t) => [t.id, t])),
    sharedOf: sessionNotes(sheet.plan, names),
    warningsOf: grouped(
      sheet.plan.warnings.filter((w) => w.step !== undefined),
      (w) => w.step ?? '',
    ),
  };
}

/** From here on a line holds all; below, what is done and what with stand under each other. */
export const wideColumns = 100;

/** Lines of several cells as one cell, without the empty ones. */
export function under(...cells: Cell[]): Cell {
  return cells.flatMap(linesOf).filter((line) => textOf(line) !== '');
}

/** A piece and its section; what the row `before` already said of them is left out, but for a reader by line. */
export function pieceCell({ piece, section }: Whose, { names, look }: Bench, before?: Whose): Cell {
  const part = names.section(piece, section);
  const name = names.piece(piece);
  if (before?.piece === piece && !isByLine(look))
    return before.section === section ? '' : painted(look.paint.quiet, part === '' ? name : part);
  if (look.columns >= wideColumns) return part === '' ? name : `${name}, ${part}`;
  return under(name, painted(look.paint.quiet, part));
}

export interface Whose {
  readonly piece: string;
  readonly section: string;
}

/** `Spray an even coat, coat 2` */
export function sayStep(step: PlannedStep): string {
  return step.coat === undefined ? step.title : worded`${step.title}, coat ${step.coat}`;
}

function state(work: Work): string {
  if (work.step.done === true) return worded` (done)`;
  if (work.step.atWork === true) return worded` (at work)`;
  if (work.goesOn) return worded` (goes on)`;
  return work.breaksOff ? worded` (goes on later)` : '';
}

/** When, which piece, what to do and with what care, where and with what. `careOfStep`: what is to be said for care and was not yet. */
export function workRow(
  work: Work,
  bench: Bench,
  careOfStep: (step: PlannedStep) => readonly string[],
  before?: Whose,
): Cell[] {
  const { step } = work;
  const { look, manner, names, book } = bench;
  const { strong, quiet, warn } = look.paint;
  const words = `${sayStep(step)}${state(work)}`;
  if (step.done === true)
    return [painted(quiet, sayClocks(work.span, manner)), pieceCell(step, bench, before), painted(quiet, words), ''];
  const care = work.goesOn ? [] : careOfStep(step);
  return [
    painted(strong, sayClocks(work.span, manner)),
    pieceCell(step, bench, before),
    under(
      words,
      work.goesOn ? '' : (bench.sharedOf.get(step.id) ?? ''),
      care.map((text) => painted(warn, text)),
    ),
    work.goesOn ? '' : painted(quiet, whereAndWith(step, bench.taskOf.get(step.id), names, book.shop.hands.length > 1)),
  ];
}
