import { marks, type Mark } from '../model/mark.ts';
import type { PlannedPiece } from '../model/plan.ts';
import { grid, painted, paragraph, type Cell } from './layout.ts';
import type { Look } from './look.ts';
import { readyLines, sayLateness } from './ready-dates.ts';
import { markSaid } from './say-mark.ts';
import { sayChance } from './say-quantity.ts';
import { sayMoment, type Manner } from './say-time.ts';

const inOrder: readonly (Mark | 'listed' | 'handedOver')[] = [...marks, 'listed', 'handedOver'];

/** All pieces, a line each. */
export function readyOverview(pieces: readonly PlannedPiece[], manner: Manner, look: Look): string {
  if (pieces.length === 0) return 'No piece is planned.\n';
  return readyLines(pieces, manner, look).join('\n') + '\n';
}

/** One piece: what may be done with it from when, usually and with the chance that the shop calls safe. */
export function readyPiece(piece: PlannedPiece, manner: Manner, look: Look): string {
  const { quiet, strong } = look.paint;
  const wanted = piece.wantedBy === undefined ? '' : ` · wanted by ${sayMoment(piece.wantedBy, manner)}`;
  const verdict = sayLateness(piece, look);
  const late = typeof verdict === 'object' && 'text' in verdict ? ` · ${verdict.text}` : '';
  const rows = inOrder.flatMap((mark): Cell[][] => {
    const ready = piece.ready[mark];
    if (ready === undefined) return [];
    return [
      [
        markSaid[mark],
        sayMoment(ready.typical, manner),
        sayMoment(ready.safe, manner),
        painted(quiet, sayChance(ready.chance)),
      ],
    ];
  });
  const head = ['from then on', 'usually', 'safe', 'chance'].map((text) => painted(quiet, text));
  const table =
    rows.length === 0
      ? paragraph('nothing planned', look, 2)
      : grid([head, ...rows], [{}, {}, {}, { align: 'right' }], look, 2);
  return [...paragraph(`${piece.name}${wanted}${late}`, look, 0, strong), ...table, ''].join('\n');
}
