import type { Activity, Hold, Presence, Use } from '../engine/problem.ts';
import type { Material } from '../model/material.ts';
import { endOf, startOf, type PlannedStep } from '../model/plan.ts';
import { shownLate } from '../model/shown-late.ts';
import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { fixedMap } from '../time/time-map.ts';
import type { Ground } from './ground.ts';
import { DUSTY, WET } from './task-activity.ts';

/** A step of a piece of which nothing moves: just what it keeps, and until when. */
export interface Block {
  readonly step: PlannedStep;
  readonly task: Task;
  readonly toolsUntil: Minute;
  /** Dust-free by then; absent where it lays nothing that dries. */
  readonly wetUntil?: Minute;
}

/** @param next the coat that is laid after it in one go */
export function blockOf(
  step: PlannedStep,
  task: Task,
  material: Material | undefined,
  next: PlannedStep | undefined,
): Block {
  const clamped = material?.family === 'glue' ? shownLate(step, material, 'handle') : undefined;
  const wetUntil = shownLate(step, material, 'dust-free');
  return {
    step,
    task,
    toolsUntil: Math.max(endOf(step), clamped ?? 0, next === undefined ? 0 : startOf(next)),
    ...(wetUntil !== undefined && { wetUntil }),
  };
}

/** It stays where and when it is planned. */
export function blockActivity(ground: Ground, { step, task, toolsUntil, wetUntil }: Block): Activity {
  const [start, end] = [startOf(step), endOf(step)];
  const until = (uses: readonly Use[], minute: Minute): Use[] => {
    const hold: Hold = { kind: 'map', map: fixedMap(minute) };
    return uses.map((use) => (minute > end ? { ...use, hold } : use));
  };
  const place = step.atOnceAfter === undefined ? ground.placeOfStation(step.station) : undefined;
  const exclusion = ground.book.shop.rooms.findIndex((room) => room.id === step.room);
  const presences: Presence[] = [
    ...(wetUntil === undefined ? [] : [{ exclusion, side: WET, until: fixedMap(wetUntil) } as const]),
    ...(task.dusty ? [{ exclusion, side: DUSTY } as const] : []),
  ];
  const mode = {
    name: 'as planned',
    duration: end - start,
    starts: [{ start, end: start + 1 }],
    uses: [
      ...until(place === undefined ? [] : [ground.placeUse(place)], step.holdsStationUntil),
      ...ground.handUses(step.hands),
      ...until(ground.toolUses(step.tools), toolsUntil),
    ],
    presences,
  };
  return { name: step.id, modes: [mode] };
}
