import type { PlannedPiece, ReadyTime } from '../model/plan.ts';
import { grid, painted, paragraph, type Cell, type Column } from './layout.ts';
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

/** What is said of a piece's dates, each with the name of its column. */
function datesOf(piece: PlannedPiece, safeName: string, manner: Manner, look: Look): [name: string, said: Cell][] {
  const ready = handOver(piece);
  const chance = ready === undefined || safeName !== 'safe' ? '' : ` (${sayChance(ready.chance)})`;
  return [
    ['usually', ready === undefined ? 'not planned' : sayMoment(ready.typical, manner)],
    [safeName, ready === undefined ? '' : `${sayMoment(ready.safe, manner)}${chance}`],
    ['wanted by', piece.wantedBy === undefined ? '' : sayMoment(piece.wantedBy, manner)],
    ['', sayLateness(piece, look)],
  ];
}

/** `safe (90 %)` where one chance holds for all, else `safe`, and each says its own. */
function safeColumn(pieces: readonly PlannedPiece[]): string {
  const [chance, ...others] = new Set(pieces.flatMap((p) => handOver(p)?.chance ?? []));
  return chance === undefined || others.length > 0 ? 'safe' : `safe (${sayChance(chance)})`;
}

const tableColumns = 72;

/** When each piece can be handed over: usually, and safely; by when it is wanted; and whether it is late. */
export function readyLines(pieces: readonly PlannedPiece[], manner: Manner, look: Look, indent = 0): string[] {
  const { quiet, strong } = look.paint;
  const safeName = safeColumn(pieces);
  const all = pieces.map((piece) => ({ piece, dates: datesOf(piece, safeName, manner, look) }));
  if (look.columns < tableColumns)
    return all.flatMap(({ piece, dates }) => {
      const said = dates.filter(([, cell]) => cell !== '').map(([name, cell]) => [painted(quiet, name), cell]);
      return [...paragraph(piece.name, look, indent, strong), ...grid(said, [{}, {}], look, indent + 2)];
    });
  const names = ['hand over', 'usually', safeName, 'wanted by', ''].map((name) => painted(quiet, name));
  const rows = all.map(({ piece, dates }) => [painted(strong, piece.name), ...dates.map(([, cell]) => cell)]);
  const date: Column = { least: 14 };
  return grid([names, ...rows], [date, date, date, date, {}], look, indent);
}
