import type { PlannedStep } from '../../model/plan.ts';
import type { Span } from '../../time/span.ts';
import { sayStep } from '../bench.ts';
import { dayText, momentFrom } from '../calendar/moment.ts';
import { datedIn, sayEnd, sayLate, sayLoad, sayPart } from '../dated.ts';
import { whereAndWith } from '../day-work.ts';
import { sayClocks } from '../say-time.ts';
import { textWidth, wrapped, shortened } from './measure.ts';
import { sheets, type Page } from './paper.ts';
import { line, named, rect, text, textLines, type Markup } from './svg.ts';
import type { Drawing } from './wall-input.ts';
import type { NumberedWork, WeekModel } from './week-model.ts';
import { daysText } from './week-page.ts';
import { joinedByAnd, worded } from '../../words/worded.ts';

const { width, height } = sheets.landscape;
const COLUMNS = 3;
const GAP = 6;
const columnWidth = (width - (COLUMNS - 1) * GAP) / COLUMNS;
const TOP = 12;
const INDENT = 12;

/** Something of known height that stands in a column. */
interface Block {
  readonly height: number;
  readonly draw: (x: number, y: number) => Markup;
  /** Never the last of a column. */
  readonly heads?: true;
  /** Heading said again where a new column begins here. */
  readonly under?: string;
}

const type = {
  head: { size: 3.8, bold: true },
  main: { size: 2.8 },
  bold: { size: 2.8, bold: true },
  small: { size: 2.3 },
} as const;

function headBlock(words: string): Block {
  return {
    height: 7,
    heads: true,
    draw: (x, y) =>
      text(x, y + 4.6, shortened(words, columnWidth, type.head), { ...type.head, tone: 'strong' }) +
      line(x, y + 5.8, x + columnWidth, y + 5.8, 'piece'),
  };
}

function paragraphBlock(words: string): Block {
  const lines = wrapped(words, columnWidth, type.small);
  return { height: lines.length * 3 + 1, draw: (x, y) => textLines(x, y + 2.6, lines, 3, type.small) };
}

function stateOf(step: PlannedStep): string {
  if (step.done === true) return worded` (done)`;
  return step.atWork === true ? worded` (at work)` : '';
}

function workBlock(work: NumberedWork, drawing: Drawing, said: Set<string>): Block {
  const { step } = work;
  const { names, manner, book } = drawing;
  const room = columnWidth - INDENT;
  const section = names.section(step.piece, step.section);
  const piece = `${names.piece(step.piece)}${section === '' ? '' : `, ${section}`}`;
  const clocks = sayClocks(work.span, manner);
  const head = wrapped(`${clocks}  ${piece}`, room, type.bold);
  const what = wrapped(
    `${sayStep(step)}${work.goesOn ? worded` (goes on)` : work.breaksOff ? worded` (goes on later)` : stateOf(step)}`,
    room,
    type.main,
  );
  const details = wrapped(whereAndWith(step, undefined, names, book.shop.hands.length > 1), room, type.small);
  const cautions = work.goesOn || step.done === true ? [] : (drawing.cautions.get(step.id) ?? []);
  const fresh = cautions.filter((text) => !said.has(text));
  for (const text of fresh) said.add(text);
  const care = fresh.flatMap((text) => wrapped(worded`Careful: ${text}`, room, { ...type.small, bold: true }));
  const tall = (head.length + what.length) * 3.5 + (details.length + care.length) * 2.9 + 1.8;
  return {
    height: tall,
    draw: (x, y) =>
      [
        named(step.done === true ? worded`done` : worded`to tick when done`, rect(x, y + 0.4, 3.2, 3.2, 'box')),
        step.done === true ? text(x + 1.6, y + 3.1, '×', { size: 3.2, bold: true, anchor: 'middle' }) : '',
        text(x + INDENT - 2, y + 3, String(work.number), { ...type.bold, anchor: 'end' }),
        textLines(x + INDENT, y + 3, head, 3.5, type.bold),
        textLines(x + INDENT, y + 3 + head.length * 3.5, what, 3.5, type.main),
        textLines(x + INDENT, y + 2.8 + (head.length + what.length) * 3.5, details, 2.9, {
          ...type.small,
          tone: 'quiet',
        }),
        textLines(x + INDENT, y + 2.8 + (head.length + what.length) * 3.5 + details.length * 2.9, care, 2.9, {
          ...type.small,
          bold: true,
        }),
      ].join(''),
  };
}

/** What is fixed on one day. */
function datedBlocks(day: Span, { book, plan, names, manner }: Drawing): Block[] {
  const when = (minute: number) => momentFrom(day.start, minute, manner);
  return datedIn(day, book).map((dated) => {
    const part = sayPart(dated.span, day, manner);
    switch (dated.kind) {
      case 'appointment': {
        const { what, hands } = dated.appointment;
        const late = sayLate(dated.appointment, plan, names, when);
        const words = [what, ...sayLoad(dated.appointment, names), joinedByAnd(hands.map(names.hand)), ...late];
        return paragraphBlock(`${part}: ${words.join(', ')}.`);
      }
      case 'away': {
        const back = sayEnd(dated.span.end, manner, when, (t) => dayText(t, manner));
        const section = dated.section === undefined ? '' : `, ${names.section(dated.piece, dated.section)}`;
        return paragraphBlock(
          worded`${names.piece(dated.piece)}${section}: away at ${dated.at}, promised back ${back}.`,
        );
      }
      case 'off':
        return paragraphBlock(worded`${names.hand(dated.hand)} is off: ${part}.`);
      case 'open':
        return paragraphBlock(worded`${names.room(dated.room)} can be had: ${part}.`);
    }
  });
}

/** When not to coat on one day, and why. */
function unfitBlocks(day: Span, { unfit, names, manner }: Drawing): Block[] {
  return unfit
    .filter(({ span }) => span.start < day.end && span.end > day.start)
    .map(({ room, span, why }) => {
      const within = { start: Math.max(span.start, day.start), end: Math.min(span.end, day.end) };
      return paragraphBlock(worded`${names.room(room)}: no coating ${sayClocks(within, manner)}: ${why}.`);
    });
}

function blocksOf(model: WeekModel, drawing: Drawing): Block[] {
  const { manner, plan } = drawing;
  const days = model.days.flatMap((day) => {
    const works = model.works.filter((w) => w.day === day);
    const said = new Set<string>();
    const head = [headBlock(dayText(day.start, manner)), ...datedBlocks(day, drawing), ...unfitBlocks(day, drawing)];
    if (works.length === 0) return [...head, paragraphBlock(worded`No hands-on work.`)];
    return [
      ...head,
      ...works.map((work) => ({ ...workBlock(work, drawing, said), under: dayText(day.start, manner) })),
    ];
  });
  const warnings = plan.warnings
    .filter((w) => w.step === undefined)
    .map((w) => paragraphBlock(worded`Careful: ${w.text}`));
  const care = worded`Times, never permission: the label and safety data sheet of the container stand above every time here, and local rules and licensed practice above both.`;
  return [...days, headBlock(worded`Mind`), ...warnings, paragraphBlock(care)];
}

/** Blocks into columns of one height, in order; a heading goes with what it heads. */
function columnsOf(blocks: readonly Block[]): Block[][] {
  const columns: Block[][] = [[]];
  let used = 0;
  blocks.forEach((block, i) => {
    const needed = block.height + (block.heads === true ? (blocks[i + 1]?.height ?? 0) : 0);
    if (used > 0 && used + needed > height - TOP) {
      const again = block.under === undefined ? [] : [headBlock(worded`${block.under}, continued`)];
      columns.push(again);
      used = again.reduce((sum, b) => sum + b.height, 0);
    }
    columns.at(-1)?.push(block);
    used += block.height;
  });
  return columns;
}

function column(blocks: readonly Block[], x: number): Markup {
  let y = TOP;
  return blocks
    .map((block) => {
      const drawn = block.draw(x, y);
      y += block.height;
      return drawn;
    })
    .join('');
}

/** What to do each day, with boxes to tick, on as many sheets as it takes. */
export function daySheets(model: WeekModel, drawing: Drawing): Page[] {
  const columns = columnsOf(blocksOf(model, drawing));
  const count = Math.ceil(columns.length / COLUMNS);
  const days = daysText(model, drawing);
  return Array.from({ length: count }, (_, i) => {
    const title = worded`Day sheet, ${days}${count > 1 ? worded` (${i + 1} of ${count})` : ''}`;
    const mine = columns.slice(i * COLUMNS, (i + 1) * COLUMNS);
    const shop = shortened(drawing.book.shop.name, width - textWidth(title, { size: 5, bold: true }) - 10, type.main);
    return {
      title,
      description: worded`Boxes to tick, each with its number on the picture, its time, piece and work.`,
      drawing: [
        text(0, 6, title, { size: 5, bold: true, tone: 'strong' }),
        text(width, 6, shop, { ...type.main, anchor: 'end', tone: 'quiet' }),
        ...mine.map((blocks, c) => column(blocks, c * (columnWidth + GAP))),
      ].join(''),
    };
  });
}
