import type { SessionPart } from './session-part.ts';
import type { Way } from './task.ts';

/**
 * Coats of one material laid one after another with one set of tools, by the same hands in one place: mixed, strained
 * and set up for once before the first, washed up once after the last. Task ids in order, at least two.
 */
export type Session = readonly string[];

/** Longer than this from one coat to the next, and what is in the gun or brush begins to dry: common practice, no source. */
export const SESSION_GAP_MINUTES = 20;

/** The part that a task has in one of `sessions`; undefined where it stands by itself. */
export function partOf(sessions: readonly Session[], task: string): SessionPart | undefined {
  const session = sessions.find((s) => s.includes(task));
  if (session === undefined) return undefined;
  return session[0] === task ? 'first' : session.at(-1) === task ? 'last' : 'middle';
}

/** Coats share a session only where these are alike; undefined for work that has nothing to share. */
export function sessionKey(way: Way): string | undefined {
  if (way.inSession === undefined || way.film === undefined) return undefined;
  return [way.film.material, ...[...way.tools].sort()].join('\n');
}

/** Minutes of work as the given part of a session; by itself where there is none. */
export function minutesAs(way: Way, part: SessionPart | undefined): number {
  return part === undefined ? way.workMinutes : (way.inSession?.[part] ?? way.workMinutes);
}
