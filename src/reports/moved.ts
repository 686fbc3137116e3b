import type { Move, MoveCause } from '../planning/moved.ts';
import { sayStep, type Bench } from './bench.ts';
import { grouped } from './grouped.ts';
import { paragraph } from './layout.ts';
import { mostShown } from './look.ts';
import { sayLength, sayMoment } from './say-time.ts';
import { sayCause } from './why.ts';
import { counted, worded } from '../words/worded.ts';

type Desk = Pick<Bench, 'plan' | 'names' | 'look' | 'manner'>;

/** So many lines are short enough to stand on top of a week. */
const MOST_LINES = 6;

function sayOther(id: string, { plan, names }: Desk): string {
  const step = plan.steps.find((s) => s.id === id);
  if (step === undefined) return id;
  const section = names.section(step.piece, step.section);
  return `“${sayStep(step)}” (${names.piece(step.piece)}${section === '' ? '' : `, ${section}`})`;
}

/** Why, as the end of a sentence. */
export function sayMoveCause(cause: MoveCause, desk: Desk): string {
  switch (cause.kind) {
    case 'done-late':
      return worded`${sayOther(cause.step, desk)} was over ${sayLength(cause.minutes)} later than planned`;
    case 'done-early':
      return worded`${sayOther(cause.step, desk)} was over ${sayLength(cause.minutes)} sooner than planned`;
    case 'not-begun':
      return worded`${sayOther(cause.step, desk)} was not begun when it was planned`;
    case 'put-off':
      return worded`${sayOther(cause.step, desk)} was put off until ${sayMoment(cause.until, desk.manner)}`;
    case 'slower':
      return worded`${sayOther(cause.step, desk)} dries ${sayLength(cause.minutes)} longer than was thought`;
    case 'faster':
      return worded`${sayOther(cause.step, desk)} dries ${sayLength(cause.minutes)} faster than was thought`;
    case 'new':
      return worded`${sayOther(cause.step, desk)} has come in`;
    case 'gone':
      return worded`${cause.step} is left out`;
    case 'held':
      return sayCause(cause.cause, cause, desk);
    case 'room':
      return worded`there is room for it now`;
  }
}

function sayShift({ from, to }: Move): string {
  return to > from ? worded`${sayLength(to - from)} later` : worded`${sayLength(from - to)} sooner`;
}

/** The moves of one piece for one reason, by the largest. */
function lineOf(moves: readonly Move[], desk: Desk): string {
  const [first] = moves;
  if (first === undefined) return '';
  const { step, from, to } = first;
  const more = moves.length === 1 ? '' : worded` and ${moves.length - 1} more`;
  const when = `${sayMoment(from, desk.manner)} → ${sayMoment(to, desk.manner)}`;
  return worded`${desk.names.piece(step.piece)}: “${sayStep(step)}”${more}, ${sayShift(first)} (${when}), because ${sayMoveCause(first.cause, desk)}`;
}

/** What moved since the plan that the shop followed, by how much and why: a few lines, the largest first; none if nothing did. */
export function movedScreen(moves: readonly Move[], desk: Desk): string {
  if (moves.length === 0) return '';
  const { look } = desk;
  const groups = [...grouped(moves, (m) => `${m.step.piece} ${JSON.stringify(m.cause)}`).values()];
  const most = mostShown(MOST_LINES, look);
  const more = groups.slice(most).reduce((sum, g) => sum + g.length, 0);
  const lines = groups.slice(0, most).flatMap((group) => paragraph(lineOf(group, desk), look, 2, look.paint.warn, 4));
  const rest =
    more === 0
      ? []
      : paragraph(
          counted(
            more,
            'and {0} more step; week --days 60 shows where it is',
            'and {0} more steps; week --days 60 shows where they are',
          ),
          look,
          2,
          look.paint.quiet,
        );
  return [...paragraph(worded`Moved since the last plan`, look, 0, look.paint.strong), ...lines, ...rest, '', ''].join(
    '\n',
  );
}
