import { expandPiece } from '../../model/expand.ts';
import type { Book } from '../../model/book.ts';
import type { Piece } from '../../model/piece.ts';
import type { Task } from '../../model/task.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';
import { longestTogether } from './hours-together.ts';
import { worded } from '../../words/worded.ts';

/** Steps that wait for each other all round; undefined where the order has an end. */
function circleOf(tasks: readonly Task[]): readonly Task[] | undefined {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const state = new Map<string, 'open' | 'closed'>();
  const trail: Task[] = [];
  const visit = (task: Task): readonly Task[] | undefined => {
    if (state.get(task.id) === 'closed') return undefined;
    if (state.get(task.id) === 'open') return trail.slice(trail.indexOf(task));
    state.set(task.id, 'open');
    trail.push(task);
    for (const need of task.needs) {
      const other = byId.get(need.task);
      const circle = other && visit(other);
      if (circle !== undefined) return circle;
    }
    trail.pop();
    state.set(task.id, 'closed');
    return undefined;
  };
  for (const task of tasks) {
    const circle = visit(task);
    if (circle !== undefined) return circle;
  }
  return undefined;
}

function pathOf(piece: Piece, task: Task): Path {
  const join = piece.joins.findIndex((j) => j.section === task.section && j.id === task.step);
  if (join >= 0) return ['joins', join];
  return piece.sections.some((s) => s.id === task.section) ? ['sections', task.section] : ['whole'];
}

function minutesInWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = Math.round(minutes % 60);
  if (hours === 0) return worded`${rest} min`;
  return rest === 0 ? `${hours} h` : worded`${hours} h ${rest} min`;
}

function tooLong(book: Book, task: Task): string | undefined {
  if (task.mayPause) return undefined;
  const ways = task.ways.map((way) => ({ ...way, longest: longestTogether(book.shop, way.skill, task.people) }));
  const most = Math.max(...ways.map((way) => way.longest));
  if (most === 0 || ways.some((way) => way.workMinutes <= way.longest)) return undefined;
  const least = minutesInWords(Math.min(...ways.map((way) => way.workMinutes)));
  const whose = task.people === 1 ? worded`the shop never has` : worded`${task.people} hands are never in together for`;
  return worded`${task.step} takes ${least} in one go, and ${whose} more than ${minutesInWords(most)}`;
}

/** What shows only once a piece's recipes are laid onto its sections: the other checks must have found nothing. */
export function checkOrder(book: Book, piece: Piece): Complaint[] {
  const file = `pieces/${piece.id}.yaml`;
  const tasks = expandPiece(book, piece);
  const circle = circleOf(tasks);
  const [first] = circle ?? [];
  const circles =
    circle === undefined || first === undefined
      ? []
      : [
          {
            code: 'order-in-a-circle',
            severity: 'error' as const,
            file,
            path: pathOf(piece, circle.find((task) => piece.joins.some((j) => j.id === task.step)) ?? first),
            message: worded`steps wait for each other: ${[...circle, first].map((t) => `${t.section}/${t.step}`).join(worded` waits for `)}`,
            advice: worded`take out one of these waits`,
          },
        ];
  const lengths = tasks.flatMap((task) => {
    const message = tooLong(book, task);
    if (message === undefined) return [];
    const advice = worded`split the section, give longer hours, or let the step pause with may-pause: yes`;
    return [{ code: 'step-too-long', severity: 'error' as const, file, path: pathOf(piece, task), message, advice }];
  });
  return [...circles, ...lengths];
}
