import type { Book } from './book.ts';
import { coatFaultWork, dustOffWork } from './coat-fault-work.ts';
import { roundUp } from './round-up.ts';
import { filmNeeds, isFullCoat, type LaidFilm } from './film-needs.ts';
import type { CoatFault } from './journal.ts';
import { preparationWork } from './preparation.ts';
import { filmOf, isInLine, sameSection, sectionOf } from './section-tasks.ts';
import type { DoneStep } from './situation.ts';
import type { Need, Task } from './task.ts';
import { translated } from '../words/worded.ts';

/** What is over already, and when. */
type Done = ReadonlyMap<string, DoneStep>;

function after(task: string): Need {
  return { kind: 'order', task, waitHours: 0 };
}

/** `STEP` of the same section, under a name of its own. */
function asStep(task: Task, suffix: string): Pick<Task, 'id' | 'step'> {
  return { id: `${task.id}-${suffix}`, step: `${task.step}-${suffix}` };
}

/** The films of the section that are laid already, in the order in which they were finished. */
function laidFilms(book: Book, tasks: readonly Task[], task: Task, done: Done): LaidFilm[] {
  const laid = tasks.filter((t) => sameSection(t, task) && done.has(t.id));
  const finished = (t: Task): number => done.get(t.id)?.to ?? 0;
  return laid.sort((a, b) => finished(a) - finished(b)).flatMap((t) => filmOf(book, t) ?? []);
}

/**
 * Puts the new steps in after all that is over of their section, and lets what is still to come wait for the last: what
 * waited for `task`, a coat that was to lie on the film that the last now covers, and in any case the next step.
 */
function insert(
  tasks: readonly Task[],
  task: Task,
  added: readonly Task[],
  { last, covers }: { readonly last: Task; readonly covers: string | undefined },
  done: Done,
): readonly Task[] {
  const position = tasks.reduce(
    (most, t, i) => (t.id === task.id || (sameSection(t, task) && done.has(t.id)) ? i : most),
    0,
  );
  const meant = (n: Need): Need =>
    n.task === task.id || (n.kind === 'window' && n.task === covers) ? { ...n, task: last.id } : n;
  const stays = (t: Task) => done.has(t.id) || t.id === task.id || t.atOnceAfter === task.id;
  const waiting = (t: Task): Task => (stays(t) ? t : { ...t, needs: t.needs.map(meant) });
  const later = tasks.slice(position + 1).map(waiting);
  const next = later.findIndex((t) => sameSection(t, task) && isInLine(t));
  return [
    ...tasks.slice(0, position + 1).map(waiting),
    ...added,
    ...later.map((t, i) =>
      i === next && !t.needs.some((n) => n.task === last.id) ? { ...t, needs: [...t.needs, after(last.id)] } : t,
    ),
  ];
}

/** The film that a coat laid now covers, so that no later coat lies on it. */
function covered(coat: LaidFilm | undefined, films: readonly LaidFilm[]): string | undefined {
  return coat !== undefined && isFullCoat(coat.material) ? films.at(-1)?.task : undefined;
}

/** The step once more, after itself and upon whatever lies on the section by then. */
export function withRepeat(book: Book, tasks: readonly Task[], task: Task, done: Done): readonly Task[] {
  const own = filmOf(book, task);
  const over = done.has(task.id);
  const films = over ? laidFilms(book, tasks, task, done) : own === undefined ? [] : [own];
  const ids = asStep(task, 'again');
  const inherited = over ? [] : task.needs.filter((n) => n.kind === 'order' || n.kind === 'mark');
  const again: Task = {
    ...task,
    ...ids,
    needs: [...inherited, after(task.id), ...filmNeeds(ids.id, { stage: task.stage }, own?.material, films, () => [])],
  };
  return insert(tasks, task, [again], { last: again, covers: covered(own, films) }, done);
}

/** A plain job at a bench on the task's section, that any one hand can do. */
function job(task: Task, suffix: string, minutes: number, stations: Task['ways'][number]['stations']) {
  const { piece, section, object } = task;
  return {
    ...asStep(task, suffix),
    piece,
    section,
    object,
    ways: [{ name: '', workMinutes: roundUp(minutes), stations, tools: [] }],
    people: 1,
    gated: false,
    supplies: [],
  };
}

/** Sanding back, dusting off and laying the coat again, upon whatever lies on the section by now. */
export function withRedo(
  book: Book,
  tasks: readonly Task[],
  task: Task,
  fault: CoatFault,
  done: Done,
): readonly Task[] {
  const { areaM2 } = sectionOf(book, task);
  const films = laidFilms(book, tasks, task, done);
  const { title, like } = coatFaultWork[fault];
  const work = preparationWork[like];
  const back: Task = {
    ...job(task, 'sand-back', work.fixedMinutes + work.minutesPerM2 * areaM2, work.stations),
    title: translated(title),
    stage: 'sand',
    dusty: true,
    mayPause: true,
    needs: [after(task.id), ...filmNeeds('', { stage: 'sand' }, undefined, films, () => [])],
    ...(work.grit !== undefined && { grit: work.grit }),
  };
  const off: Task = {
    ...job(task, 'dust-off', dustOffWork.fixedMinutes + dustOffWork.minutesPerM2 * areaM2, dustOffWork.stations),
    title: translated(dustOffWork.title),
    stage: 'clean',
    dusty: false,
    mayPause: false,
    needs: [after(back.id)],
  };
  const ids = asStep(task, 'redo');
  const own = filmOf(book, task);
  const redo: Task = {
    ...task,
    ...ids,
    needs: [after(off.id), ...filmNeeds(ids.id, { stage: task.stage }, own?.material, films, () => [back, off])],
  };
  return insert(tasks, task, [back, off, redo], { last: redo, covers: covered(own, films) }, done);
}
