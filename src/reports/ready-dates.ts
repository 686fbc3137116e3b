import type { PlannedPiece, ReadyTime } from '../model/plan.ts';
import { headed } from './headed.ts';
import { grid, painted, paragraph, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';
import { sayChance } from './say-quantity.ts';
import { sayDay, sayDeadline, sayLength, sayMoment, type Manner } from './say-time.ts';
import { worded } from '../words/worded.ts';

/** When a piece can go to its buyer; undefined while what is left of it cannot be planned, as before its lead test. */
export function handOver(piece: PlannedPiece): ReadyTime | undefined {
  return piece.ready.handedOver;
}

/** `in time`, `2 d 4 h late`; nothing if nobody waits for it. */
export function sayLateness(piece: PlannedPiece, look: Look): Cell {
  if (piece.lateHours > 0) return painted(look.paint.bad, worded`${sayLength(piece.lateHours * 60)} late`);
  return piece.wantedBy === undefined || handOver(piece) === undefined ? '' : painted(look.paint.good, worded`in time`);
}

interface Dates {
  readonly usually: string;
  readonly safe: string;
  readonly chance: string;
  readonly wanted: string;
  readonly verdict: Cell;
}

function datesOf(piece: PlannedPiece, withHours: boolean, manner: Manner, look: Look): Dates {
  const ready = handOver(piece);
  const say = withHours ? sayMoment : sayDay;
  const sayWanted = withHours ? sayDeadline : sayDay;
  return {
    usually: ready === undefined ? worded`not planned` : say(ready.typical, manner),
    safe: ready === undefined ? '' : sayMoment(ready.safe, manner),
    chance: ready === undefined ? '' : sayChance(ready.chance),
    wanted: piece.wantedBy === undefined ? '' : sayWanted(piece.wantedBy, manner),
    verdict: sayLateness(piece, look),
  };
}

const tableColumns = 72;
const fullColumns = 100;

/** When each piece can be handed over: usually, and safely; by when it is wanted; and whether it is late. */
export function readyLines(pieces: readonly PlannedPiece[], manner: Manner, look: Look, indent = 0): string[] {
  const { quiet, strong } = look.paint;
  const isFull = look.columns >= fullColumns || look.columns < tableColumns;
  // On a middling screen only the date that counts has its hour.
  const all = pieces.map((piece) => ({ piece, dates: datesOf(piece, isFull, manner, look) }));
  if (look.columns < tableColumns)
    return all.flatMap(({ piece, dates }) => {
      const { usually, safe, chance, wanted, verdict } = dates;
      const said: [string, Cell][] = [
        [worded`usually`, usually],
        [worded`safe`, chance === '' ? safe : `${safe} (${chance})`],
        [worded`wanted by`, wanted],
        ['', verdict],
      ];
      const rows = said.filter(([, cell]) => cell !== '').map(([name, cell]) => [painted(quiet, name), cell]);
      return [...paragraph(piece.name, look, indent, strong), ...grid(rows, [{}, {}], look, indent + 2)];
    });
  const names = [worded`hand over`, worded`usually`, worded`safe`, worded`chance`, worded`wanted by`, ''].map((name) =>
    painted(quiet, name),
  );
  const rows = all.map(({ piece, dates }) => [
    painted(strong, piece.name),
    dates.usually,
    dates.safe,
    dates.chance,
    dates.wanted,
    dates.verdict,
  ]);
  const whole: Column = { least: 16, align: 'right' };
  return headed(
    [names, ...rows],
    [{ least: 14 }, whole, whole, { align: 'right' }, whole, { whole: true }],
    look,
    indent,
  );
}
