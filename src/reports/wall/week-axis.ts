import { openSpans } from '../../model/hours.ts';
import type { Shop } from '../../model/shop.ts';
import { subtract, unite, type Minute, type Span, type Spans } from '../../time/span.ts';
import { localTime, type LocalDay } from '../../time/zone.ts';

/** An hour at which nobody works is drawn this much narrower: nights would else fill the page. */
const CLOSED_SCALE = 1 / 9;

/** Where a minute lies on paper: straight between its knots, which never run backwards. */
export interface Axis {
  readonly days: readonly LocalDay[];
  readonly from: Minute;
  readonly to: Minute;
  readonly x: (minute: Minute) => number;
  /** Hours of work, each day as one stretch from the first to the last. */
  readonly working: Spans;
  /** All the rest, breaks included. */
  readonly closed: Spans;
}

interface Knot {
  readonly minute: Minute;
  readonly weight: number;
}

/** First to last minute of each day at which the shop is open or someone works. */
function workingDays(days: readonly LocalDay[], busy: Spans): Span[] {
  return days.flatMap((day) => {
    const parts = busy.filter((s) => s.start < day.end && s.end > day.start);
    const [first] = parts;
    const last = parts.at(-1);
    if (first === undefined || last === undefined) return [];
    return [{ start: Math.max(first.start, day.start), end: Math.min(last.end, day.end) }];
  });
}

function knotsOf(from: Minute, to: Minute, working: Spans): Knot[] {
  const edges = [...new Set([from, ...working.flatMap((s) => [s.start, s.end]), to])].sort((a, b) => a - b);
  let weight = 0;
  return edges.map((minute, i) => {
    const before = edges[i - 1] ?? minute;
    const isWork = working.some((s) => s.start <= before && minute <= s.end && before < minute);
    weight += (minute - before) * (isWork ? 1 : CLOSED_SCALE);
    return { minute, weight };
  });
}

/** The axis of `days`, laid over `width` from `left` on. `work`: all hands-on work, also outside the opening hours. */
export function weekAxis(shop: Shop, days: readonly LocalDay[], work: Spans, left: number, width: number): Axis {
  const from = days[0]?.start ?? 0;
  const to = days.at(-1)?.end ?? from + 1;
  const open = openSpans(shop.opening, shop.timeZone, from, to);
  const working = unite(workingDays(days, unite([...open, ...work])));
  const knots = knotsOf(from, to, working);
  const whole = knots.at(-1)?.weight ?? 1;
  const x = (minute: Minute): number => {
    const here = Math.min(to, Math.max(from, minute));
    const i = Math.max(
      1,
      knots.findIndex((k) => k.minute >= here),
    );
    const a = knots[i - 1] ?? { minute: from, weight: 0 };
    const b = knots[i] ?? a;
    const part = b.minute === a.minute ? 0 : (here - a.minute) / (b.minute - a.minute);
    return left + ((a.weight + part * (b.weight - a.weight)) / whole) * width;
  };
  return { days, from, to, x, working, closed: subtract([{ start: from, end: to }], unite([...open, ...work])) };
}

export interface Tick {
  readonly minute: Minute;
  readonly label: string;
}

/** Full hours inside the hours of work, at least `room` mm apart. */
export function hourTicks(axis: Axis, zone: string, clock: 12 | 24, room: number): Tick[] {
  const ticks: Tick[] = [];
  for (const { start, end } of axis.working) {
    let last = -Infinity;
    const first = start + ((60 - (localTime(start, zone).clock % 60)) % 60);
    for (let minute = first; minute <= end - 20; minute += 60) {
      const hour = Math.floor(localTime(minute, zone).clock / 60);
      if (hour % 2 === 1 || axis.x(minute) - last < room) continue;
      last = axis.x(minute);
      const label =
        clock === 24 ? String(hour).padStart(2, '0') : `${hour % 12 === 0 ? 12 : hour % 12}${hour < 12 ? 'a' : 'p'}`;
      ticks.push({ minute, label });
    }
  }
  return ticks;
}
