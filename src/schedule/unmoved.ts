import { filmFactor } from '../drying/film-factor.ts';
import { rateLaw } from '../drying/rate-law.ts';
import { moveMark } from '../model/effective-mark.ts';
import type { Film } from '../model/material.ts';
import type { Task } from '../model/task.ts';
import type { Ground } from './ground.ts';

/** How slowly a film gets safe to move: films of one law compare by their hours. */
interface Slowness {
  readonly law: string;
  readonly hours: number;
}

function slownessOf(ground: Ground, task: Task, film: Film): Slowness | undefined {
  const material = ground.drying.material(film);
  const mark = moveMark(material);
  const sheet = mark === undefined ? undefined : material.marks[mark];
  if (mark === undefined || sheet === undefined) return undefined;
  return {
    law: rateLaw(material, mark).key,
    hours: sheet.high * filmFactor(material, film) * ground.factorOf(task.id),
  };
}

function slownesses(ground: Ground, task: Task): readonly Slowness[] {
  return ground.once(`slownesses of ${task.id}`, () =>
    task.ways.flatMap((way) => {
      const slowness = way.film && slownessOf(ground, task, way.film);
      return slowness === undefined ? [] : [slowness];
    }),
  );
}

/**
 * Is `earlier` safe to move whenever `later`, laid after it on the same section, is? Either the section was moved in
 * between, which it only may be when `earlier` was safe; or both lie in the same air, and then hours decide.
 */
function outlasts(ground: Ground, later: Task, earlier: Task): boolean {
  if (later.ways.some((way) => way.film === undefined)) return false;
  const late = slownesses(ground, later);
  return slownesses(ground, earlier).every((e) => late.every((l) => l.law === e.law && l.hours >= e.hours));
}

function waitsUntilMovable(ground: Ground, task: Task, film: Task): boolean {
  return task.needs.some(
    (need) =>
      need.kind === 'mark' &&
      need.task === film.id &&
      film.ways.every((way) => way.film !== undefined && need.mark === moveMark(ground.drying.material(way.film))),
  );
}

/**
 * Films of the section that may not be safe to move yet when `task` begins, given what all steps before waited for. A
 * preparation stands just before its coat.
 */
export function unmovedBefore(ground: Ground, task: Task): readonly Task[] {
  return ground.once(`unmoved before ${task.id}`, () => unmoved(ground, task));
}

function unmoved(ground: Ground, task: Task): readonly Task[] {
  const section = ground.sectionTasks(task);
  const before = section.slice(
    0,
    section.findIndex((t) => t === task || t.id === task.onlyFor),
  );
  // What was done may have been done too early: only what is still to come can be relied on to have waited.
  const { done, atWork } = ground.situation;
  return before.filter((film, k) => {
    if (slownesses(ground, film).length === 0) return false;
    const since = before.slice(k + 1).filter((t) => !done.has(t.id) && !atWork.has(t.id));
    return (
      ![...since, task].some((t) => waitsUntilMovable(ground, t, film)) &&
      !since.some((later) => outlasts(ground, later, film))
    );
  });
}

/** May the task begin in place, on what cannot be moved yet, without a film of its own that keeps the place as long? */
export function mayBeInPlace(ground: Ground, task: Task): boolean {
  if (task.onlyFor !== undefined) return false;
  const unmoved = unmovedBefore(ground, task);
  return unmoved.length > 0 && !outlastsAll(ground, task, unmoved);
}

/** Does the task's own film keep the place at least as long as all that is not yet safe to move beneath it? */
export function outlastsAll(ground: Ground, task: Task, unmoved: readonly Task[]): boolean {
  return unmoved.every((film) => outlasts(ground, task, film));
}
