import type { Book } from './book.ts';
import { stationKinds } from './shop.ts';
import type { DoneStep } from './situation.ts';
import type { Task } from './task.ts';
import { phrase, translated } from '../words/worded.ts';

/** Minutes to put the rags of one coat away: common practice, no source. */
export const RAG_MINUTES = 5;

/** For so long a coat's rags may still light themselves (two or three days, as quoted in `shared/safety/oily-rags.yaml`). */
const DANGER_MINUTES = 3 * 24 * 60;

/** In the words of the bench. */
const TITLE = phrase('Oily rags away: flat outdoors, or in a can under water');

function leavesOilyRags({ materials }: Pick<Book, 'materials'>, task: Task): boolean {
  return materials.get(task.material ?? '')?.oilyRags === true;
}

function ragsOf(coat: Task): Task {
  return {
    id: `${coat.id}-rags`,
    piece: coat.piece,
    section: coat.section,
    step: `${coat.step}-rags`,
    title: translated(TITLE),
    stage: 'clean',
    ways: [{ name: '', workMinutes: RAG_MINUTES, stations: stationKinds, tools: [] }],
    people: coat.people,
    dusty: false,
    mayPause: false,
    needs: [{ kind: 'order', task: coat.id, waitHours: 0 }],
    atOnceAfter: coat.id,
    gated: false,
    supplies: [],
    object: `${coat.id} rags`,
  };
}

/** Puts after each task whose material leaves rags that heat themselves the step that puts them away, where it lacks one. */
export function withOilyRags(book: Pick<Book, 'materials'>, tasks: readonly Task[]): readonly Task[] {
  const has = new Set(tasks.flatMap((t) => t.atOnceAfter ?? []));
  return tasks.flatMap((task) =>
    task.atOnceAfter === undefined && leavesOilyRags(book, task) && !has.has(task.id) ? [task, ragsOf(task)] : [task],
  );
}

/** The tasks without the rags of coats that were done so long ago that nobody need be told of them any more. */
export function withoutOldRags(
  tasks: readonly Task[],
  done: ReadonlyMap<string, DoneStep>,
  now: number,
): readonly Task[] {
  return tasks.filter(({ id, atOnceAfter }) => {
    const coat = done.get(atOnceAfter ?? '');
    return coat === undefined || done.has(id) || coat.to + DANGER_MINUTES > now;
  });
}
