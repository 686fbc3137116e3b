import type { Piece } from '../../model/piece.ts';
import type { Mark } from '../../model/mark.ts';
import type { PlannedPiece, PlannedStep } from '../../model/plan.ts';
import { grouped } from '../grouped.ts';
import { sayDate } from '../say-time.ts';
import { markSaid } from '../say-mark.ts';
import { sayChance } from '../say-quantity.ts';
import { careForAll, careOf } from './care.ts';
import { shortened, wrapped, type Type } from './measure.ts';
import { paperDocument, sheets, type Page } from './paper.ts';
import { line, text, textLines, type Markup } from './svg.ts';
import { drawingOf, type Drawing, type WallInput } from './wall-input.ts';
import type { Paper } from './wall-week.ts';
import { translated, worded } from '../../words/worded.ts';

const { width, height } = sheets.portrait;
const body: Type = { size: 3.6 };
const head = { size: 4.6, bold: true } as const;
const LEAD = 4.9;

/** Lines of a card, in order, each with what it takes. */
interface CardLine {
  readonly text: string;
  readonly kind: 'name' | 'head' | 'body' | 'row';
  /** Second column of a row. */
  readonly beside?: string;
}

const DATE_X = 74;

/** Kept free for the shop's name. */
const FOOT = 8;

const lasting: readonly string[] = ['prime', 'coat', 'topcoat'];

/** Materials that stay on a section, the first laid first, each once. */
function filmsOf(steps: readonly PlannedStep[], section: string): readonly string[] {
  const films = steps.filter((s) => s.section === section && lasting.includes(s.stage));
  return [...new Set(films.flatMap((s) => s.material ?? []))];
}

const buyerMarks: readonly Mark[] = ['handle', 'stack', 'cure'];

function fromWhen(planned: PlannedPiece, drawing: Drawing): CardLine[] {
  const manner = { ...drawing.manner, now: 0 };
  return buyerMarks.flatMap((mark) => {
    const ready = planned.ready[mark];
    if (ready === undefined) return [];
    return [
      { kind: 'row' as const, text: worded`from ${sayDate(ready.safe, manner)}`, beside: translated(markSaid[mark]) },
    ];
  });
}

function leadLines(piece: Piece, journalSays: boolean | undefined): CardLine[] {
  const found = journalSays ?? piece.leadTest?.found;
  const say = (text: string): CardLine[] => [{ kind: 'body', text }];
  if (found === true)
    return say(
      worded`Lead was found in the old paint of this piece. Do not sand, scrape or heat it, keep small children from mouthing it, and follow your local rules.`,
    );
  if (!piece.mayCarryLead) return [];
  if (found === false)
    return say(
      worded`The old paint was tested for lead and none was found. A test speaks for the spots that were tested.`,
    );
  return say(worded`Old paint on this piece may hold lead and was not tested: do not sand, scrape or heat it.`);
}

/** What to mind of each last film, and which sections it is on. */
function careLines(piece: Piece, steps: readonly PlannedStep[], { book }: Drawing): string[] {
  const families = grouped(
    piece.sections.flatMap((section) => {
      const last = filmsOf(steps, section.id).at(-1);
      const family = last === undefined ? undefined : book.materials.get(last)?.family;
      return family === undefined ? [] : [{ section: section.name, family }];
    }),
    (f) => f.family,
  );
  const own = [...families].flatMap(([family, on]) => {
    const whose = families.size > 1 ? `${on.map((f) => f.section).join(', ')}: ` : '';
    return (careOf[family] ?? []).map((care) => `${whose}${translated(care)}`);
  });
  return [...own, ...careForAll.map(translated)];
}

function cardLines(piece: Piece, planned: PlannedPiece, drawing: Drawing): CardLine[] {
  const { plan, manner, book } = drawing;
  const steps = plan.steps.filter((s) => s.piece === piece.id);
  const handed = planned.ready.handedOver ?? planned.ready.listed;
  const tested = book.journal
    .flatMap(({ deed }) => (deed.kind === 'lead-test' && deed.piece === piece.id ? [deed.found] : []))
    .at(-1);
  const bodyLine = (text: string): CardLine => ({ kind: 'body', text });
  const finishes = piece.sections.flatMap((section): CardLine[] => {
    const finish = filmsOf(steps, section.id)
      .map(drawing.names.material)
      .join(worded`, then `);
    return finish === '' ? [] : [{ kind: 'row', text: section.name, beside: finish }];
  });
  const dates = fromWhen(planned, drawing);
  const lead = leadLines(piece, tested);
  return [
    { kind: 'name', text: piece.name },
    bodyLine(
      handed === undefined
        ? worded`The day of hand-over is not planned yet.`
        : worded`Ready to hand over: ${sayDate(handed.safe, { ...manner, now: 0 })} (holds with ${sayChance(handed.chance)} chance)`,
    ),
    ...(finishes.length > 0 ? [{ kind: 'head' as const, text: worded`Finish` }, ...finishes] : []),
    ...(dates.length > 0 ? [{ kind: 'head' as const, text: worded`What it can bear, and from when` }, ...dates] : []),
    ...(dates.length > 0
      ? [
          bodyLine(
            worded`Until the last of these days the finish is still hardening: spare it heat, water and rubbing.`,
          ),
        ]
      : []),
    { kind: 'head', text: worded`Care` },
    ...careLines(piece, steps, drawing).map((t) => bodyLine(`• ${t}`)),
    ...(lead.length > 0 ? [{ kind: 'head' as const, text: worded`Mind` }, ...lead] : []),
    { kind: 'head', text: worded`What this card is` },
    bodyLine(
      worded`Dates are worked out from the finish and the air that was expected; the maker’s label and data sheet of the finish stand above them. Care is common practice.`,
    ),
  ];
}

/** A line set at `y`, and what it takes. */
function setLine(cardLine: CardLine, y: number): { readonly drawing: Markup; readonly height: number } {
  if (cardLine.kind === 'name') {
    const big = { size: 7.5, bold: true } as const;
    const lines = wrapped(cardLine.text, width, big);
    return { drawing: textLines(0, y + 6.5, lines, 9, { ...big, tone: 'strong' }), height: lines.length * 9 + 1 };
  }
  if (cardLine.kind === 'head')
    return {
      drawing: text(0, y + 8, cardLine.text, { ...head, tone: 'strong' }) + line(0, y + 9.6, width, y + 9.6, 'rule'),
      height: 11.5,
    };
  if (cardLine.kind === 'body') {
    const lines = wrapped(cardLine.text, width, body);
    return { drawing: textLines(0, y + 3.6, lines, LEAD, body), height: lines.length * LEAD + 0.6 };
  }
  const strong = { ...body, bold: true };
  const first = wrapped(cardLine.text, DATE_X - 4, strong);
  const second = wrapped(cardLine.beside ?? '', width - DATE_X, body);
  return {
    drawing: textLines(0, y + 3.6, first, LEAD, strong) + textLines(DATE_X, y + 3.6, second, LEAD, body),
    height: Math.max(first.length, second.length) * LEAD + 0.6,
  };
}

/** Lines under each other, on as many sheets as they need. */
function setSheets(lines: readonly CardLine[]): Markup[] {
  const set: Markup[] = [];
  let drawn: Markup = '';
  let y = 0;
  for (const cardLine of lines) {
    if (y > 0 && y + setLine(cardLine, y).height > height - FOOT) {
      set.push(drawn);
      drawn = '';
      y = 0;
    }
    const placed = setLine(cardLine, y);
    drawn += placed.drawing;
    y += placed.height;
  }
  return [...set, drawn];
}

/** A card for the buyer of one piece: finish, dates, care and cautions, on one upright sheet or as many as it takes. */
export function buyerCard(input: WallInput, piece: Piece, planned: PlannedPiece): Paper {
  const drawing = drawingOf(input);
  const small = { size: 2.8 };
  const set = setSheets(cardLines(piece, planned, drawing));
  const pages: Page[] = set.map((drawn, i) => {
    const foot = `${input.book.shop.name}${set.length > 1 ? worded` · ${i + 1} of ${set.length}` : ''}`;
    return {
      title: worded`Card for the buyer: ${piece.name}`,
      description: worded`Finish, day of hand-over, what the piece can bear from when, care and cautions.`,
      drawing: drawn + text(0, height - 2, shortened(foot, width, small), { ...small, tone: 'quiet' }),
    };
  });
  return { html: paperDocument(piece.name, 'portrait', pages), pages: pages.length };
}
