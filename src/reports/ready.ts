import { marks, type Mark } from '../model/mark.ts';
import type { PlannedPiece } from '../model/plan.ts';
import { headed } from './headed.ts';
import { painted, paragraph, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';
import { noPieceScreen } from './no-piece.ts';
import { handOver, readyLines, sayLateness } from './ready-dates.ts';
import { markSaid } from './say-mark.ts';
import { sayChance } from './say-quantity.ts';
import { sayDate, sayDeadline, sayMoment, type Manner } from './say-time.ts';
import type { Minute } from '../time/span.ts';
import { localDay } from '../time/zone.ts';
import { phrase, translated, worded } from '../words/worded.ts';

/** Drying marks as they come true, then what the shop does. */
function inOrder({ ready }: PlannedPiece): readonly (Mark | 'listed' | 'handedOver')[] {
  const dry = marks.filter((mark) => ready[mark] !== undefined);
  const safe = (mark: Mark) => ready[mark]?.safe ?? 0;
  return [...dry.sort((a, b) => safe(a) - safe(b)), 'listed', 'handedOver'];
}

/** All pieces, a line each. */
export function readyOverview(pieces: readonly PlannedPiece[], manner: Manner, look: Look): string {
  if (pieces.length === 0) return noPieceScreen(look);
  return readyLines(pieces, manner, look).join('\n') + '\n';
}

/** What a buyer asks for, shortest in words, in the order in which it comes. */
const asked: readonly (readonly [Mark | 'handedOver', string])[] = [
  ['touch', phrase('touch')],
  ['handle', phrase('carry')],
  ['stack', phrase('wrap, set on')],
  ['handedOver', phrase('hand over')],
  ['cure', phrase('clean, use')],
];

/** Hours stand under hours, days under days. */
const timed: Column = { align: 'right' };

/** On a narrower screen each piece stands by itself. */
const tableColumns = 76;

/** The first day on all of which it holds. */
function wholeDay(minute: Minute, manner: Manner): string {
  return sayDate(localDay(minute - 1, manner.zone, 1).start, manner);
}

/** All pieces, a row each, to be read to a customer: from which day on what may be done, with the shop's chance. */
export function readyTable(pieces: readonly PlannedPiece[], safeChance: number, manner: Manner, look: Look): string {
  if (pieces.length === 0) return noPieceScreen(look);
  if (look.columns < tableColumns) return pieces.map((piece) => readyPiece(piece, manner, look)).join('\n');
  const { quiet, strong } = look.paint;
  const head = [worded`from`, ...asked.map(([, text]) => translated(text))].map((text) => painted(quiet, text));
  const rows = pieces.map((piece): Cell[] => [
    painted(strong, piece.name),
    ...asked.map(([mark]) => {
      // Until all of it is planned, no customer may be told a day: what dries first is only the filler.
      if (handOver(piece) === undefined) return mark === 'handedOver' ? worded`not planned` : '';
      const ready = piece.ready[mark];
      if (ready === undefined) return '';
      return mark === 'handedOver' ? sayMoment(ready.safe, manner) : wholeDay(ready.safe, manner);
    }),
  ]);
  const chance = worded`Each day holds with a chance of ${sayChance(safeChance)} or more, the whole of it; drybench ready PIECE says when it usually is.`;
  return [
    ...headed([head, ...rows], [{ least: 12 }, ...asked.map(() => timed)], look),
    '',
    ...paragraph(chance, look),
    '',
  ].join('\n');
}

/** Of which pieces only what comes before their lead test is planned, so that their dates hold for no more than that. */
export function heldLines(names: readonly string[], look: Look): string[] {
  return names.flatMap((name) =>
    paragraph(worded`${name}: the steps that wait for its lead test are not counted.`, look, 0, look.paint.warn, 2),
  );
}

/** One piece: what may be done with it from when, usually and with the chance that the shop calls safe. */
export function readyPiece(piece: PlannedPiece, manner: Manner, look: Look): string {
  const { quiet, strong } = look.paint;
  const wanted = piece.wantedBy === undefined ? '' : worded` · wanted by ${sayDeadline(piece.wantedBy, manner)}`;
  const verdict = sayLateness(piece, look);
  const late = typeof verdict === 'object' && 'text' in verdict ? ` · ${verdict.text}` : '';
  const rows = inOrder(piece).flatMap((mark): Cell[][] => {
    const ready = piece.ready[mark];
    if (ready === undefined) return [];
    return [
      [
        translated(markSaid[mark]),
        sayMoment(ready.typical, manner),
        sayMoment(ready.safe, manner),
        painted(quiet, sayChance(ready.chance)),
      ],
    ];
  });
  const head = [worded`from then on`, worded`usually`, worded`safe`, worded`chance`].map((text) =>
    painted(quiet, text),
  );
  const table =
    rows.length === 0
      ? paragraph(worded`nothing planned`, look, 2)
      : headed([head, ...rows], [{}, timed, timed, timed], look, 2);
  return [...paragraph(`${piece.name}${wanted}${late}`, look, 0, strong), ...table, ''].join('\n');
}
