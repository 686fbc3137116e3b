import { staysAway } from '../model/away.ts';
import { openSpans } from '../model/hours.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { ClockSpan, Hand } from '../model/shop.ts';
import type { Task, Way } from '../model/task.ts';
import type { Minute, Span } from '../time/span.ts';
import { localDays, localTime } from '../time/zone.ts';
import type { Change } from './change.ts';
import type { Followed } from './come-forward.ts';
import { DRIER_TO_PERCENT, WARMER_BY_K } from './usual-changes.ts';
import type { WhyLink } from './why.ts';

/** Hours are told in quarters. */
const QUARTER = 15;
const DAY_MINUTES = 24 * 60;
/** Between these it may be asked that somebody comes in before or after the usual hours. */
const EARLIEST_CLOCK = 6 * 60;
const LATEST_CLOCK = 21 * 60;
/** A day that is not opened at all is thought to begin at eight. */
const USUAL_MORNING = 8 * 60;
const DAYS_TRIED = 3;
/** Thick work follows the air of its room by so much. */
const WARMED_AHEAD_MINUTES = 12 * 60;
const ARRIVES_SOONER_DAYS = [1, 3, 7];
const BACK_SOONER_DAYS = [1, 3, 7];
const ROOM_HAD_DAYS = [1, 2, 4, 7];

/** What trials are thought up from. */
export interface Desk {
  readonly followed: Followed;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly steps: ReadonlyMap<string, PlannedStep>;
}

/** Changes made together, to be tried. */
export type Trial = readonly Change[];

function wayOf({ tasks }: Desk, step: PlannedStep): Way | undefined {
  return tasks.get(step.id)?.ways.find((way) => way.name === step.way);
}

function inQuarters({ start, end }: Span, zone: string): { readonly date: string; readonly span: ClockSpan } {
  const from = localTime(start, zone);
  const minutes = Math.max(1, end - start);
  const to = Math.ceil((from.clock + minutes) / QUARTER) * QUARTER;
  return {
    date: from.date,
    span: { from: Math.floor(from.clock / QUARTER) * QUARTER, to: Math.min(DAY_MINUTES, to) },
  };
}

/** When the hand works, where the plan that was come to differs from that which is followed, by day. */
function newWork(desk: Desk, steps: readonly PlannedStep[], hand: string): Map<string, ClockSpan> {
  const { timeZone } = desk.followed.made.book.shop;
  const used = new Map<string, ClockSpan>();
  for (const step of steps) {
    const before = desk.steps.get(step.id);
    const same = before?.hands.includes(hand) === true && before.spans[0]?.start === step.spans[0]?.start;
    if (same || !step.hands.includes(hand)) continue;
    for (const work of step.spans) {
      const { date, span } = inQuarters(work, timeZone);
      const known = used.get(date) ?? span;
      used.set(date, { from: Math.min(span.from, known.from), to: Math.max(span.to, known.to) });
    }
  }
  return used;
}

/** Of the hours that a hand would be in for, those that the plan uses. */
export function trimmed(desk: Desk, steps: readonly PlannedStep[], changes: Trial): Trial {
  const known = new Set(desk.followed.made.book.shop.hands.map((h) => h.id));
  return changes.flatMap((change): Change[] => {
    if (change.kind !== 'in' && change.kind !== 'helper') return [change];
    const stranger = steps.flatMap((s) => s.hands).find((h) => !known.has(h));
    const hand = change.kind === 'in' ? change.hand : stranger;
    const used = hand === undefined ? undefined : newWork(desk, steps, hand).get(change.date);
    if (used === undefined) return [];
    const spans = change.spans
      .map(({ from, to }) => ({ from: Math.max(from, used.from), to: Math.min(to, used.to) }))
      .filter(({ from, to }) => from < to);
    return spans.length === 0 ? [] : [{ ...change, spans }];
  });
}

/** The shop's open hours from when the step could go on to when it is planned, by day. */
function openDays(
  { followed }: Desk,
  { waited, start }: WhyLink,
): { readonly date: string; readonly span: ClockSpan }[] {
  const { shop } = followed.made.book;
  return openSpans(shop.opening, shop.timeZone, waited, start)
    .flatMap((open): Span[] => {
      const span = { start: Math.max(open.start, waited), end: open.end };
      return span.start < Math.min(span.end, start) ? [span] : [];
    })
    .map((span) => inQuarters(span, shop.timeZone));
}

/** Another hand beside the one who is busy: one of the shop's own, else a helper who can do it. */
function otherHands(desk: Desk, link: WhyLink): Trial[] {
  const { hands } = desk.followed.made.book.shop;
  const skill = wayOf(desk, link.step)?.skill;
  const alone = link.step.hands.length === 1;
  const days = openDays(desk, link);
  const own = hands.filter(
    (h) => !link.step.hands.includes(h.id) && (!alone || skill === undefined || h.skills.includes(skill)),
  );
  const skills = alone && skill !== undefined ? { skills: [skill] } : {};
  const perDay = (make: (date: string, spans: readonly ClockSpan[]) => Change): Trial =>
    days.map(({ date, span }) => make(date, [span]));
  return [
    ...own.map((h) => perDay((date, spans) => ({ kind: 'in', hand: h.id, date, spans }))),
    perDay((date, spans) => ({ kind: 'helper', date, spans, ...skills })),
  ].filter((changes) => changes.length > 0);
}

/** When a hand is in on a day, by the shop's wall clock. */
function handDay({ followed }: Desk, hand: Hand, day: Span): readonly Span[] {
  return openSpans(hand.hours, followed.made.book.shop.timeZone, day.start, day.end - 1).filter(
    (s) => s.start >= day.start && s.start < day.end,
  );
}

/** The hands of the step stay on for it, come in before the usual hours, or on a day on which nobody does. */
function longerHours(desk: Desk, { step, waited, start }: WhyLink): Trial[] {
  const { shop } = desk.followed.made.book;
  const minutes = wayOf(desk, step)?.workMinutes ?? 0;
  const long = Math.ceil(minutes / QUARTER) * QUARTER;
  const hands = shop.hands.filter((h) => step.hands.includes(h.id));
  const clockOf = (minute: Minute) => localTime(minute, shop.timeZone).clock;
  return localDays(waited, start, shop.timeZone)
    .slice(0, DAYS_TRIED + 1)
    .flatMap((day): Trial[] => {
      const spans = hands.flatMap((hand) => handDay(desk, hand, day)).sort((a, b) => a.start - b.start);
      const [first, last] = [spans[0], spans.at(-1)];
      const after = Math.ceil(clockOf(Math.max(waited, day.start)) / QUARTER) * QUARTER;
      const open = first === undefined ? USUAL_MORNING : clockOf(first.start);
      const shut = last === undefined ? USUAL_MORNING : Math.max(open, clockOf(last.end - 1) + 1);
      const breaks = spans.slice(1).flatMap((span, i): ClockSpan[] => {
        const before = spans[i];
        return before === undefined || before.end >= span.start
          ? []
          : [{ from: clockOf(before.end), to: clockOf(span.start) }];
      });
      const sooner = first === undefined ? [] : [{ from: open - long, to: open }];
      const later = { from: Math.max(shut, after), to: Math.max(shut, after) + long };
      return [...sooner, ...breaks, later]
        .filter(({ from, to }) => from >= EARLIEST_CLOCK && to <= LATEST_CLOCK && to > (waited > day.start ? after : 0))
        .map((span) => hands.map((hand): Change => ({ kind: 'in', hand: hand.id, date: day.date, spans: [span] })));
    });
}

const dampness: ReadonlySet<string> = new Set(['air-too-damp', 'near-dew-point', 'will-not-dry']);
const coldness: ReadonlySet<string> = new Set([
  'air-too-cold',
  'surface-too-cold',
  'near-dew-point',
  'film-does-not-form',
  'cold-ahead',
  'will-not-dry',
  'air-too-damp',
]);

function quarters(from: Minute, to: Minute): Span {
  return { start: Math.ceil(from / QUARTER) * QUARTER, end: Math.ceil(to / QUARTER) * QUARTER };
}

function warmer(room: string, during: Span): Trial[] {
  return during.start < during.end ? WARMER_BY_K.map((byK): Trial => [{ kind: 'warmer', room, byK, during }]) : [];
}

function drier(room: string, during: Span): Trial[] {
  return during.start < during.end
    ? DRIER_TO_PERCENT.map((toRhPercent): Trial => [{ kind: 'drier', room, toRhPercent, during }])
    : [];
}

/** What of the piece is away then is back some days sooner, or does not leave. */
function backSooner({ followed }: Desk, { step, waited, start }: WhyLink): Trial[] {
  const piece = followed.made.book.pieces.find((p) => p.id === step.piece);
  const stays = piece === undefined ? [] : staysAway(piece).map(({ away }) => away);
  return stays
    .filter((stay) => stay.start < start && stay.end > waited)
    .flatMap((stay) => {
      const least = Math.max(stay.start, followed.now);
      const ends = BACK_SOONER_DAYS.map((days) => Math.max(least, stay.end - days * DAY_MINUTES));
      return [...new Set([...ends, least])].map((at): Trial => [
        { kind: 'back', piece: step.piece, left: stay.start, at },
      ]);
    });
}

/** What might move what holds the step of `link`, the least of each kind first. */
export function trialsFor(desk: Desk, link: WhyLink): Trial[] {
  const { then } = link;
  const afterwards = then === undefined ? [] : trialsBy(desk, { ...link, cause: then, waited: then.since });
  return [...trialsBy(desk, link), ...afterwards];
}

function trialsBy(desk: Desk, link: WhyLink): Trial[] {
  const { shop } = desk.followed.made.book;
  const { step, cause, waited, start } = link;
  switch (cause.kind) {
    case 'hand':
      return otherHands(desk, link);
    case 'hours':
      return longerHours(desk, link);
    case 'tool':
      return [[{ kind: 'tool', tool: cause.id, more: 1 }]];
    case 'place':
      return [[{ kind: 'slot', station: cause.id, more: 1 }]];
    case 'dust': {
      const place = shop.stations.find((s) => s.id === step.station)?.kind;
      const rooms = shop.rooms.filter((r) => r.id !== step.room);
      return place === undefined ? [] : rooms.map((r): Trial => [{ kind: 'station', room: r.id, place, slots: 1 }]);
    }
    case 'dry':
    case 'window': {
      const film = desk.steps.get(cause.by);
      const end = film?.spans.at(-1)?.end;
      if (film === undefined || end === undefined) return [];
      const during = quarters(Math.max(end, desk.followed.now), cause.until);
      return [...warmer(film.room, during), ...drier(film.room, during)];
    }
    case 'air': {
      const codes = cause.breaches.map((b) => b.code);
      const during = quarters(waited, start);
      return [
        ...(codes.some((c) => coldness.has(c)) ? warmer(cause.room, during) : []),
        ...(codes.some((c) => dampness.has(c)) ? drier(cause.room, during) : []),
      ];
    }
    case 'cold-work':
      return warmer(
        cause.from,
        quarters(Math.max(desk.followed.now, cause.carried - WARMED_AHEAD_MINUTES), cause.carried),
      );
    case 'arrival': {
      const sooner = ARRIVES_SOONER_DAYS.map((days) => Math.max(desk.followed.now, cause.until - days * DAY_MINUTES));
      return [...new Set(sooner)].map((at): Trial => [{ kind: 'arrives', piece: step.piece, at }]);
    }
    case 'away':
      return backSooner(desk, link);
    case 'room':
      return ROOM_HAD_DAYS.map((days): Trial => {
        const during = quarters(waited, Math.min(start, waited + days * DAY_MINUTES));
        return [{ kind: 'room', room: cause.room, during }];
      });
    case 'put-off':
      return [[{ kind: 'not-put-off', task: step.id }]];
    case 'done':
    case 'at-work':
    case 'now':
    case 'order':
    case 'object':
    case 'keeps-window':
    case 'session':
    case 'session-waits':
    case 'better-so':
      return [];
  }
}

export function changesAir(trial: Trial): boolean {
  return trial.some(({ kind }) => kind === 'warmer' || kind === 'drier');
}
