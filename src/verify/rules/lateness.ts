import { heldTasks } from '../../model/gates.ts';
import { backFrom } from '../../model/away.ts';
import type { Piece } from '../../model/piece.ts';
import type { PlannedPiece } from '../../model/plan.ts';
import type { Minute } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import { lateMark, type Fact } from '../fact.ts';
import { groups, type Ground } from '../ground.ts';
import { lasting } from '../say.ts';

/** All work done, all of it back, and every film fit to be wrapped and stacked, at the slow end: no sooner can a piece be handed over. */
function allOver(facts: readonly Fact[], back: Minute): Minute {
  return Math.max(back, ...facts.map((f) => lateMark(f, 'stack')));
}

function faults(piece: PlannedPiece, facts: readonly Fact[], asked: Piece, { say }: Ground): string[] {
  const found: string[] = [];
  const { wantedBy } = asked;
  const over = allOver(facts, backFrom(asked) ?? 0);
  const handedOver = piece.ready.handedOver?.safe;
  if (piece.wantedBy !== wantedBy) found.push('is shown with another date than the one it is wanted by');
  if (handedOver === undefined) return [...found, 'is not shown when it can be handed over'];
  if (handedOver < over)
    found.push(`is shown to be handed over ${say.when(handedOver)}, but is not over and dry before ${say.when(over)}`);
  const late = wantedBy === undefined ? 0 : Math.max(0, handedOver - wantedBy);
  if (Math.round(piece.lateHours * 60) !== late)
    found.push(`is shown ${lasting(Math.round(piece.lateHours * 60))} late, but is ${lasting(late)} late`);
  return found;
}

/** Each piece is in the plan once, handed over no sooner than it can be, and as late as that makes it. */
export function latenessShown(ground: Ground): Breach[] {
  const { facts, plan, say, situation } = ground;
  const byPiece = groups(facts, (f) => [f.task.piece]);
  const held = heldTasks(situation);
  const waiting = new Set(situation.tasks.filter((t) => held.has(t.id)).map((t) => t.piece));
  return situation.book.pieces.flatMap((piece) => {
    const own = byPiece.get(piece.id);
    if (own === undefined || waiting.has(piece.id)) return [];
    const shown = plan.pieces.filter((p) => p.id === piece.id);
    const [only] = shown;
    const wrong =
      only === undefined || shown.length > 1
        ? [`is shown ${shown.length} times among the pieces`]
        : faults(only, own, piece, ground);
    return wrong.map((fault): Breach => ({
      rule: 'shown',
      steps: [],
      at: piece.wantedBy ?? plan.to,
      text: `${say.piece(piece.id)} ${fault}`,
    }));
  });
}
