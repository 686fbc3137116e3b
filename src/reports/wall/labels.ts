import type { Piece } from '../../model/piece.ts';
import { wrappedWithin } from './measure.ts';
import { paperDocument, sheets, type Page } from './paper.ts';
import { element, named, text, textLines, type Markup } from './svg.ts';
import type { Paper } from './wall-week.ts';
import { counted, worded } from '../../words/worded.ts';

/** One label: to tie to a part, or to go into its bag of screws. */
interface Label {
  readonly piece: string;
  readonly section: string;
  readonly count: string;
}

const { width, height } = sheets.portrait;
const ACROSS = 3;
const DOWN = 8;
const wide = width / ACROSS;
const tall = height / DOWN;
const PAD = 3.5;

const things = (count: number) => counted(count, '{0} part', '{0} parts');

/** A label a section with the count of its parts, and one a piece for the bag that holds what was taken off it. */
function labelsOf(piece: Piece): Label[] {
  const all = piece.sections.reduce((sum, s) => sum + s.items, 0);
  return [
    ...piece.sections.map((s) => ({ piece: piece.name, section: s.name, count: things(s.items) })),
    {
      piece: piece.name,
      section: worded`screws and fittings`,
      count: worded`bag ___ of ___ · piece has ${things(all)}`,
    },
  ];
}

function drawn(label: Label, x: number, y: number): Markup {
  const room = wide - 2 * PAD;
  const pieceType = { size: 4.2, bold: true } as const;
  const sectionType = { size: 3.8 };
  const lines = wrappedWithin(label.piece, room, pieceType, 2);
  const section = wrappedWithin(label.section, room, sectionType, 2);
  return named(
    `${label.piece}, ${label.section}, ${label.count}`,
    element('rect', { x, y, width: wide, height: tall, class: 'cut' }),
    textLines(x + PAD, y + PAD + 4, lines, 5, { ...pieceType, tone: 'strong' }),
    textLines(x + PAD, y + PAD + 4.6 + lines.length * 5, section, 4.4, sectionType),
    text(x + PAD, y + tall - PAD, label.count, { size: 3.2 }),
  );
}

/** Labels for the sections of `pieces` and their bags of hardware, to cut apart along the dashed lines. */
export function bagLabels(pieces: readonly Piece[]): Paper {
  const labels = pieces.flatMap(labelsOf);
  const count = Math.max(1, Math.ceil(labels.length / (ACROSS * DOWN)));
  const pages: Page[] = Array.from({ length: count }, (_, p) => {
    const mine = labels.slice(p * ACROSS * DOWN, (p + 1) * ACROSS * DOWN);
    return {
      title: worded`Labels, sheet ${p + 1} of ${count}`,
      description: worded`Piece, section and count of parts, to cut apart.`,
      drawing: mine.map((label, i) => drawn(label, (i % ACROSS) * wide, Math.floor(i / ACROSS) * tall)).join(''),
    };
  });
  return { html: paperDocument(worded`Labels`, 'portrait', pages), pages: count };
}
