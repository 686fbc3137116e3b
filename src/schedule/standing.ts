import { awaySpans } from '../model/away.ts';
import { openSpans } from '../model/hours.ts';
import type { Piece } from '../model/piece.ts';
import type { Room, Shop } from '../model/shop.ts';
import { intersect, subtract, type Minute, type Span, type Spans } from '../time/span.ts';
import { ALWAYS, NEVER, type TimeMap } from '../time/time-map.ts';
import { latestStart } from './work-hours.ts';

const ALL_TIME: Spans = [{ start: ALWAYS, end: NEVER }];
/** What is laid down in the last hours of the plan is safe to move by then. */
const LOOK_AHEAD_MINUTES = 60 * 1440;

/** When a room can be had at all; undefined: always. */
export function roomSpans(room: Room, { timeZone }: Shop, from: Minute, to: Minute): Spans | undefined {
  return room.open && openSpans(room.open, timeZone, from, to + LOOK_AHEAD_MINUTES);
}

/** When an object of the piece can stand in a room: while it is not away, and the room can be had; undefined: always. */
export function standingSpans(piece: Piece, object: string, roomOpen: Spans | undefined): Spans | undefined {
  const away = awaySpans(piece, object);
  if (away.length === 0) return roomOpen;
  return intersect(roomOpen ?? ALL_TIME, subtract(ALL_TIME, away));
}

export interface Stay {
  readonly minutes: number;
  /** Hours in which the work goes on, for work that may pause; absent: it is done in one go. */
  readonly pausesOutside?: Spans;
  /** From the end of the work to when its film is safe to move. */
  readonly movable?: TimeMap;
}

/** The starts from which the work is over, and what it lays down safe to move, before a span of `standing` ends. */
export function startsWithin(standing: Spans, { minutes, pausesOutside, movable }: Stay): Spans {
  return standing.flatMap(({ start, end }): Span[] => {
    if (end >= NEVER) return [{ start, end }];
    const over = Math.min(end, movable?.latest(end) ?? end);
    const last = pausesOutside === undefined ? over - minutes : latestStart(pausesOutside, over, minutes);
    return last >= start ? [{ start, end: last + 1 }] : [];
  });
}
