import type { AirSeries } from '../air/series.ts';
import { dryMap } from '../drying/dry-marks.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import type { Mark, Pace } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import { endOf, type PlannedStep } from '../model/plan.ts';
import type { SessionPart } from '../model/session-part.ts';
import type { Station } from '../model/shop.ts';
import { shownLate } from '../model/shown-late.ts';
import type { Task, Way } from '../model/task.ts';
import type { Minute } from '../time/span.ts';

/** A film where it dries: what it is, how thick, and the air around it. */
export interface LaidFilm {
  readonly material: Material;
  readonly film: Film;
  readonly air: AirSeries;
  /** What was seen of it makes its hours longer or shorter; 1 is the sheet's. */
  readonly factor: number;
}

/** A planned step beside what the task asks for. */
export interface Fact {
  readonly id: string;
  readonly step: PlannedStep;
  readonly task: Task;
  readonly way: Way;
  readonly station: Station;
  readonly start: Minute;
  readonly end: Minute;
  /** Its part in the session that the plan puts it into; absent where it stands by itself. */
  readonly part?: SessionPart;
  /** Done or at work: the past, which nothing reproaches. */
  readonly settled: boolean;
  readonly laid?: LaidFilm;
  /** What it shows of its film up to then is so: all about it was the same in a plan that has passed. */
  readonly sureUntil: Minute;
  /** Dust-free, at the slow end; the end where nothing has to dry. */
  readonly wetUntil: Minute;
  /** Safe to move, at the slow end; the end where nothing has to dry. */
  readonly movableFrom: Minute;
}

/** Does it put the rags of a coat away? It is beside the work, and takes no slot. */
export function isRags({ task }: Fact): boolean {
  return task.atOnceAfter !== undefined;
}

/** When the film of a step reaches `mark` or what stands in for it, at the slow end; the step's end where nothing has to dry. */
export function lateMark(fact: Pick<Fact, 'laid' | 'end' | 'step' | 'sureUntil'>, mark: Mark): Minute {
  const { laid, end, step, sureUntil } = fact;
  const shown = shownLate(step, laid?.material, mark);
  return shown !== undefined && shown <= sureUntil ? shown : (reached(laid, end, mark, 'late') ?? end);
}

/** The last that is shown of a step: its end, or the last mark of its film. */
function lastShown(step: PlannedStep): Minute {
  return Math.max(endOf(step), ...Object.values(step.dry ?? {}).map(({ late }) => late));
}

/** Is all that it shows of its film so? */
export function isSure({ step, sureUntil }: Pick<Fact, 'step' | 'sureUntil'>): boolean {
  return lastShown(step) <= sureUntil;
}

/** When `laid`, finished at `end`, reaches `mark` or what stands in for it; undefined where nothing has to dry. */
export function reached(laid: LaidFilm | undefined, end: Minute, mark: Mark, pace: Pace): Minute | undefined {
  if (laid === undefined) return undefined;
  const { material, film, air, factor } = laid;
  const answering = effectiveMark(material, mark);
  return answering === undefined ? undefined : dryMap(material, answering, pace, film, air, factor).at(end);
}
