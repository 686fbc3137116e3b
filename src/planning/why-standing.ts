import type { ShopAir } from '../air/shop-air.ts';
import { dryMap } from '../drying/dry-marks.ts';
import { staysAway } from '../model/away.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { roomSpans, standingSpans, startsWithin, type Stay } from '../schedule/standing.ts';
import { intersect, type Minute, type Span, type Spans } from '../time/span.ts';

/** The piece is away, or the room cannot be had until it is safe to move; it could else have gone on from `since`. */
export type StandingCause =
  | { readonly kind: 'away'; readonly at: string; readonly since: Minute; readonly until: Minute }
  | { readonly kind: 'room'; readonly room: string; readonly since: Minute; readonly until: Minute };

export interface StandingScene {
  readonly situation: Situation;
  readonly air: ShopAir;
}

function movable({ situation, air }: StandingScene, step: PlannedStep, task: Task): Stay['movable'] {
  const film = task.ways.find((w) => w.name === step.way)?.film;
  const material = film && situation.book.materials.get(film.material);
  const series = air.get(step.room);
  const mark = material && effectiveMark(material, 'handle');
  if (film === undefined || material === undefined || series === undefined || mark === undefined) return undefined;
  return dryMap(material, mark, 'late', film, series);
}

/** Why none of `starts`, which suit hands and air, suits the place; undefined where one does. */
export function standingCause(
  scene: StandingScene,
  step: PlannedStep,
  task: Task | undefined,
  starts: Spans,
  work: { readonly minutes: number; readonly hours: Spans },
  around: Span,
): StandingCause | undefined {
  const { shop, pieces } = scene.situation.book;
  const piece = pieces.find((p) => p.id === step.piece);
  const room = shop.rooms.find((r) => r.id === step.room);
  const last = starts.at(-1);
  if (task === undefined || piece === undefined || room === undefined || last === undefined) return undefined;
  const safe = movable(scene, step, task);
  const stay: Stay = {
    minutes: work.minutes,
    ...(task.mayPause && { pausesOutside: work.hours }),
    ...(safe && { movable: safe }),
  };
  const suits = (standing: Spans | undefined) =>
    standing === undefined || intersect(starts, startsWithin(standing, stay)).length > 0;
  const open = roomSpans(room, shop, around.start, around.end);
  if (suits(standingSpans(piece, task.object, open))) return undefined;
  const since = last.end - 1;
  if (!suits(open)) return { kind: 'room', room: room.id, since, until: around.end };
  const away = staysAway(piece).filter((s) => s.away.start < around.end && s.away.end > around.start);
  const at = [...new Set(away.map((s) => s.away.at))].join(', ');
  return { kind: 'away', at, since, until: around.end };
}
