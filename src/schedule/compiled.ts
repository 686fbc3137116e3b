import type { Problem } from '../engine/problem.ts';
import type { Film } from '../model/material.ts';
import type { Piece } from '../model/piece.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { Task } from '../model/task.ts';
import type { Manner } from './manners.ts';
import type { Ground } from './ground.ts';

/** What an activity of the problem stands for; `manners[m]` and `choices[m]` go with its mode `m`. */
export type Meaning =
  | { readonly kind: 'task'; readonly task: Task; readonly manners: readonly Manner[] }
  /** A task that is over: nothing to choose. */
  | { readonly kind: 'done'; readonly task: Task }
  /** Which window of which film a coat goes into, and the preparation that this window asks for. */
  | { readonly kind: 'window'; readonly coat: Task; readonly film: string; readonly choices: readonly WindowMode[] }
  | { readonly kind: 'drying'; readonly task: Task }
  /** It stays as it is planned. */
  | { readonly kind: 'block'; readonly task: Task; readonly step: PlannedStep }
  /** From when the section may be moved after a task that was done on what could not be moved yet. */
  | { readonly kind: 'cleared'; readonly task: Task }
  | { readonly kind: 'ready'; readonly piece: Piece };

export interface WindowMode {
  readonly window: number;
  readonly prep?: { readonly task: Task; readonly manner: Manner };
}

/** The same film laid in one room: the modes of an activity that dry alike. */
export interface Variant {
  readonly room: string;
  readonly film: Film;
  /** Absent: all modes. */
  readonly modes?: readonly number[];
}

export interface Compiled {
  readonly problem: Problem;
  readonly meanings: readonly Meaning[];
  /** Task id (also of a preparation) -> activity index. */
  readonly activityOf: ReadonlyMap<string, number>;
  readonly ground: Ground;
}
