import { marks, type Mark } from '../model/mark.ts';
import type { Piece } from '../model/piece.ts';
import type { PlannedPiece, PlannedStep, ReadyTime } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';

const MINUTES_PER_HOUR = 60;

function endOf(step: PlannedStep): Minute {
  return step.spans.at(-1)?.end ?? 0;
}

function latest(minutes: readonly Minute[]): Minute {
  return Math.max(...minutes);
}

function ofMark(steps: readonly PlannedStep[], mark: Mark): ReadyTime | undefined {
  const films = steps.flatMap((s) => s.dry?.[mark] ?? []);
  if (films.length === 0) return undefined;
  return { typical: latest(films.map((f) => f.typical)), safe: latest(films.map((f) => f.late)), chance: 0.9 };
}

/** What can be said of a piece: when it reaches each mark, can be listed and handed over, and how late it is. */
export function plannedPiece(piece: Piece, steps: readonly PlannedStep[], handOver: Minute | undefined): PlannedPiece {
  const own = steps.filter((s) => s.piece === piece.id);
  const ready: Partial<Record<Mark | 'listed' | 'handedOver', ReadyTime>> = {};
  for (const mark of marks) {
    const time = ofMark(own, mark);
    if (time !== undefined) ready[mark] = time;
  }
  if (handOver !== undefined && own.length > 0) {
    const worked = latest(own.map(endOf));
    const stacked = latest([worked, ...own.flatMap((s) => s.dry?.stack?.typical ?? [])]);
    ready.listed = { typical: worked, safe: worked, chance: 0.9 };
    ready.handedOver = { typical: Math.min(stacked, handOver), safe: handOver, chance: 0.9 };
  }
  const lateMinutes =
    piece.wantedBy === undefined || handOver === undefined ? 0 : Math.max(0, handOver - piece.wantedBy);
  return {
    id: piece.id,
    name: piece.name,
    ...(piece.wantedBy !== undefined && { wantedBy: piece.wantedBy }),
    lateHours: lateMinutes / MINUTES_PER_HOUR,
    ready,
  };
}
