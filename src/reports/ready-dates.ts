import type { PlannedPiece, ReadyTime } from '../model/plan.ts';
import { painted, type Cell } from './layout.ts';
import type { Look } from './look.ts';
import { sayChance } from './say-quantity.ts';
import { sayLength, sayMoment, type Manner } from './say-time.ts';

/** When a piece can go to its buyer, or the nearest to it that the plan knows. */
export function handOver(piece: PlannedPiece): ReadyTime | undefined {
  return piece.ready.handedOver ?? piece.ready.listed ?? piece.ready.stack ?? piece.ready.handle;
}

/** `in time`, `2 d 4 h late`; nothing if nobody waits for it. */
export function sayLateness(piece: PlannedPiece, look: Look): Cell {
  if (piece.lateHours > 0) return painted(look.paint.bad, `${sayLength(piece.lateHours * 60)} late`);
  return piece.wantedBy === undefined ? '' : painted(look.paint.good, 'in time');
}

/** A row a piece: usual date, safe date with its chance, wish, verdict. The first row names the columns. */
export function readyRows(pieces: readonly PlannedPiece[], manner: Manner, look: Look): Cell[][] {
  const chances = new Set(pieces.flatMap((p) => handOver(p)?.chance ?? []));
  const [chance] = chances;
  const oneChance = chance !== undefined && chances.size === 1 ? ` (${sayChance(chance)})` : '';
  const { quiet } = look.paint;
  const head = ['hand over', 'usually', `safe${oneChance}`, 'wanted by', ''].map((t) => painted(quiet, t));
  const rows = pieces.map((piece): Cell[] => {
    const ready = handOver(piece);
    const safe = ready === undefined ? '' : sayMoment(ready.safe, manner);
    return [
      painted(look.paint.strong, piece.name),
      ready === undefined ? 'not planned' : sayMoment(ready.typical, manner),
      oneChance === '' && ready !== undefined ? `${safe} (${sayChance(ready.chance)})` : safe,
      piece.wantedBy === undefined ? '' : sayMoment(piece.wantedBy, manner),
      sayLateness(piece, look),
    ];
  });
  return [head, ...rows];
}
