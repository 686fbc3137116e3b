import type { Piece } from '../../model/piece.ts';
import type { Mark } from '../../model/mark.ts';
import type { PlannedPiece, PlannedStep } from '../../model/plan.ts';
import { sayDate } from '../say-time.ts';
import { markSaid } from '../say-mark.ts';
import { sayChance } from '../say-quantity.ts';
import { careForAll, careOf } from './care.ts';
import { wrapped, type Type } from './measure.ts';
import { paperDocument, sheets, type Page } from './paper.ts';
import { line, text, textLines, type Markup } from './svg.ts';
import { drawingOf, type Drawing, type WallInput } from './wall-input.ts';
import type { Paper } from './wall-week.ts';

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

/** Films of a section, the first laid first, each material once. */
function finishOf(steps: readonly PlannedStep[], section: string, { names, book }: Drawing): string {
  const films = steps.filter((s) => s.section === section && s.dry !== undefined).flatMap((s) => s.material ?? []);
  const lasting = films.filter((id) => !['cleaner', 'tape', 'glue'].includes(book.materials.get(id)?.family ?? ''));
  return [...new Set(lasting)].map((id) => names.material(id)).join(', then ');
}

const buyerMarks: readonly Mark[] = ['handle', 'stack', 'cure'];

function fromWhen(planned: PlannedPiece, drawing: Drawing): CardLine[] {
  const manner = { ...drawing.manner, now: 0 };
  return buyerMarks.flatMap((mark) => {
    const ready = planned.ready[mark];
    if (ready === undefined) return [];
    return [{ kind: 'row' as const, text: `from ${sayDate(ready.safe, manner)}`, beside: markSaid[mark] }];
  });
}

function leadLines(piece: Piece, journalSays: boolean | undefined): CardLine[] {
  const found = journalSays ?? piece.leadTest?.found;
  const say = (text: string): CardLine[] => [{ kind: 'body', text }];
  if (found === true)
    return say(
      'Lead was found in the old paint of this piece. Do not sand, scrape or heat it, keep small children from mouthing it, and follow your local rules.',
    );
  if (!piece.mayCarryLead) return [];
  if (found === false)
    return say('The old paint was tested for lead and none was found. A test speaks for the spots that were tested.');
  return say('Old paint on this piece may hold lead and was not tested: do not sand, scrape or heat it.');
}

function families(steps: readonly PlannedStep[], { book }: Drawing) {
  const lastBySection = new Map<string, string>();
  for (const step of steps)
    if (step.dry !== undefined && step.material !== undefined && ['coat', 'topcoat'].includes(step.stage))
      lastBySection.set(step.section, step.material);
  return [...new Set([...lastBySection.values()].flatMap((id) => book.materials.get(id)?.family ?? []))];
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
    const finish = finishOf(steps, section.id, drawing);
    return finish === '' ? [] : [{ kind: 'row', text: section.name, beside: finish }];
  });
  const dates = fromWhen(planned, drawing);
  const lead = leadLines(piece, tested);
  return [
    { kind: 'name', text: piece.name },
    bodyLine(
      handed === undefined
        ? 'The day of hand-over is not planned yet.'
        : `Ready to hand over: ${sayDate(handed.safe, { ...manner, now: 0 })} (holds with ${sayChance(handed.chance)} chance)`,
    ),
    ...(finishes.length > 0 ? [{ kind: 'head' as const, text: 'Finish' }, ...finishes] : []),
    ...(dates.length > 0 ? [{ kind: 'head' as const, text: 'What it can bear, and from when' }, ...dates] : []),
    ...(dates.length > 0
      ? [
          bodyLine(
            'Until the last of these days the finish is still hardening: nothing hot, wet or heavy on it, and nothing laid over it.',
          ),
        ]
      : []),
    { kind: 'head', text: 'Care' },
    ...[...families(steps, drawing).flatMap((family) => careOf[family] ?? []), ...careForAll].map((t) =>
      bodyLine(`• ${t}`),
    ),
    ...(lead.length > 0 ? [{ kind: 'head' as const, text: 'Mind' }, ...lead] : []),
    { kind: 'head', text: 'What this card is' },
    bodyLine(
      'Dates are worked out from the finish and the air that was expected; the maker’s label and data sheet of the finish stand above them. Care is common practice.',
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

/** A card for the buyer of one piece: finish, dates, care and cautions, on one upright sheet or as many as it takes. */
export function buyerCard(input: WallInput, piece: Piece, planned: PlannedPiece): Paper {
  const drawing = drawingOf(input);
  const shop = input.book.shop.name;
  const drawings: Markup[] = [''];
  let y = 0;
  for (const cardLine of cardLines(piece, planned, drawing)) {
    const set = setLine(cardLine, y);
    if (y + set.height > height - 8) {
      drawings.push('');
      y = 0;
    }
    const placed = y === 0 ? setLine(cardLine, 0) : set;
    drawings[drawings.length - 1] += placed.drawing;
    y += placed.height;
  }
  const pages: Page[] = drawings.map((drawn, i) => ({
    title: `Card for the buyer: ${piece.name}`,
    description: 'Finish, day of hand-over, what the piece can bear from when, care and cautions.',
    drawing:
      drawn +
      textLines(
        0,
        height - 2,
        wrapped(`${shop}${drawings.length > 1 ? ` · ${i + 1} of ${drawings.length}` : ''}`, width, { size: 2.8 }).slice(
          0,
          1,
        ),
        3,
        { size: 2.8, tone: 'quiet' },
      ),
  }));
  return { html: paperDocument(piece.name, 'portrait', pages), pages: pages.length };
}
