import { openSpans } from '../../src/model/hours.ts';
import type { Piece } from '../../src/model/piece.ts';
import type { Task } from '../../src/model/task.ts';
import { lateWeight, MOVED_ONCE, MOVED_WEIGHT, tieUpWeight, WORK_WEIGHT } from '../../src/schedule/weights.ts';
import type { Minute } from '../../src/time/span.ts';
import { sessionsHold } from './trial-sessions.ts';
import { mayBe } from './trial-rules.ts';
import { triesOf, type Trial, type Tried } from './trial-steps.ts';

/** The cheapest of all plans, or undefined where there is none. */
export type Cheapest = { readonly value: number; readonly steps: readonly Tried[] } | undefined;

/** Step id -> when the plan that the shop follows has it begin. */
export type Kept = ReadonlyMap<string, Minute>;

interface Board {
  readonly trial: Trial;
  readonly pieces: readonly Piece[];
  readonly tasksOf: ReadonlyMap<string, readonly Task[]>;
  readonly tries: ReadonlyMap<string, readonly Tried[]>;
  /** Task id -> the fewest minutes in which it can be done. */
  readonly least: ReadonlyMap<string, number>;
  readonly handOver: (over: Minute) => Minute | undefined;
  readonly kept: Kept;
}

function boardOf(trial: Trial, kept: Kept): Board {
  const { book, tasks, now } = trial.situation;
  const opening = openSpans(book.shop.opening, book.shop.timeZone, now, trial.to);
  const tries = new Map(tasks.map((t) => [t.id, triesOf(trial, t)]));
  return {
    trial,
    pieces: book.pieces,
    tasksOf: new Map(book.pieces.map((p) => [p.id, tasks.filter((t) => t.piece === p.id)])),
    tries,
    least: new Map([...tries].map(([task, own]) => [task, Math.min(...own.map((t) => t.minutes))])),
    handOver: (over) => {
      const span = opening.find((s) => over < s.end);
      const at = span && Math.max(over, span.start, now);
      return at === undefined || at >= trial.to ? undefined : at;
    },
    kept,
  };
}

/** What the step costs by itself: work that it need not be, and being off its place in the plan that is followed. */
function ownCost({ kept, least }: Board, { task, start, minutes }: Tried): number {
  // A late coat's preparation is all of it work that an earlier coat would not need.
  const spared = task.onlyFor === undefined ? (least.get(task.id) ?? 0) : 0;
  const extra = WORK_WEIGHT * task.people * (minutes - spared);
  const at = kept.get(task.id);
  return at === undefined || at === start ? extra : extra + MOVED_ONCE + MOVED_WEIGHT * Math.abs(start - at);
}

/** What it costs that a piece is handed over at `ready`: room and money while it stands there, and every minute late. */
function readyCost({ trial }: Board, piece: Piece, ready: Minute): number {
  const late = piece.wantedBy === undefined ? 0 : Math.max(0, ready - piece.wantedBy);
  return tieUpWeight(piece) * (ready - trial.situation.now) + lateWeight(piece) * late;
}

/**
 * Tries every way of doing each step of `pieces`, piece by piece. A branch is left only once it costs as much as the
 * best found: each piece costs at least what it costs alone in the shop (`alone`), free to share with whom it likes
 * (`freely`: coats take any part in sessions that nobody else has to be in).
 */
function tryPieces(
  board: Board,
  pieces: readonly Piece[],
  alone: ReadonlyMap<string, number>,
  freely = false,
): Cheapest {
  let best: Cheapest;
  const tooDear = (cost: number) => best !== undefined && cost >= best.value;
  const restAlone = pieces.map((_, k) => pieces.slice(k).reduce((sum, p) => sum + (alone.get(p.id) ?? 0), 0));
  const steps: Tried[] = [];

  const tryPiece = (k: number, spent: number): void => {
    const piece = pieces[k];
    if (piece === undefined) {
      if (!freely && !sessionsHold(steps)) return;
      best = { value: spent, steps: [...steps] };
      return;
    }
    const tasks = board.tasksOf.get(piece.id) ?? [];
    const rest = restAlone[k + 1] ?? 0;
    const finish = (over: Minute, own: number): void => {
      const ready = board.handOver(over);
      if (ready === undefined) return;
      const cost = spent + own + readyCost(board, piece, ready);
      if (!tooDear(cost + rest)) tryPiece(k + 1, cost);
    };
    const tryTask = (i: number, over: Minute, own: number): void => {
      const task = tasks[i];
      if (task === undefined) {
        finish(over, own);
        return;
      }
      if (task.onlyFor !== undefined) tryTask(i + 1, over, own);
      for (const step of board.tries.get(task.id) ?? []) {
        const nowOver = Math.max(over, step.end, step.stackable);
        const nowOwn = own + ownCost(board, step);
        const least = Math.max(nowOwn + readyCost(board, piece, nowOver), alone.get(piece.id) ?? 0);
        if (tooDear(spent + least + rest) || !mayBe(step, steps)) continue;
        steps.push(step);
        tryTask(i + 1, nowOver, nowOwn);
        steps.pop();
      }
    };
    tryTask(0, board.trial.situation.now, 0);
  };
  tryPiece(0, 0);
  return best;
}

/** The cheapest plan of a small shop by trying all there are, knowing nothing of how the planner searches. */
export function tryAll(trial: Trial, kept: Kept = new Map()): Cheapest {
  const board = boardOf(trial, kept);
  const alone = new Map<string, number>();
  for (const piece of board.pieces) {
    const own = tryPieces(board, [piece], new Map(), true);
    if (own === undefined) return undefined;
    alone.set(piece.id, own.value);
  }
  return tryPieces(board, board.pieces, board.pieces.length === 1 ? new Map() : alone);
}
