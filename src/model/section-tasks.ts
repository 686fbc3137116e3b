import type { Book } from './book.ts';
import { wholeSection, WHOLE } from './expand.ts';
import type { LaidFilm } from './film-needs.ts';
import type { Section } from './piece.ts';
import type { Task } from './task.ts';

/** Do the two belong to the same section of the same piece? */
export function sameSection(a: Task, b: Task): boolean {
  return a.piece === b.piece && a.section === b.section;
}

/** Is it one of the steps that a section goes through one after another: not a preparation for a case, nor beside the work? */
export function isInLine({ onlyFor, atOnceAfter }: Task): boolean {
  return onlyFor === undefined && atOnceAfter === undefined;
}

/** The section that a task is about; the whole piece for its joining steps. */
export function sectionOf(book: Book, task: Task): Section {
  const piece = book.pieces.find((p) => p.id === task.piece);
  const section = piece?.sections.find((s) => s.id === task.section);
  if (section !== undefined) return section;
  if (piece === undefined || task.section !== WHOLE) throw new Error(`${task.id} is of a section that nobody knows`);
  return wholeSection(piece);
}

/** The film that a task lays down, whichever way it is done. */
export function filmOf(book: Book, task: Task | undefined): LaidFilm | undefined {
  const film = task?.ways.find((w) => w.film !== undefined)?.film;
  const material = film && book.materials.get(film.material);
  return task === undefined || material === undefined ? undefined : { task: task.id, material };
}
