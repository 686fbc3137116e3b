import { staysAway } from '../model/away.ts';
import { openSpans } from '../model/hours.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
import type { ClockSpan, Hand } from '../model/shop.ts';
import type { Task, Way } from '../model/task.ts';
import type { Minute, Span } from '../time/span.ts';
import { localDays, localTime } from '../time/zone.ts';
import type { Change } from './change.ts';
import { comingForward, driesInTime, type Followed } from './come-forward.ts';
import type { FilmWait } from './other-air.ts';
import { DRIER_TO_PERCENT, WARMER_BY_K } from './usual-changes.ts';
import type { Cause, WhyLink } from './why.ts';

/** What would let a step begin sooner, everything else lying as planned. Each was tried, and its `plan` has passed the verifier. */
export type Nearest =
  /** Nothing has to change: all by itself it could begin then, but the plan as a whole is better so. */
  | { readonly kind: 'as-it-is'; readonly start: Minute; readonly plan: Plan }
  | {
      readonly kind: 'change';
      /** Made together. */
      readonly changes: readonly Change[];
      readonly start: Minute;
      /** Ids of the other steps that come forward with it. */
      readonly along: readonly string[];
      readonly plan: Plan;
    }
  /** None of so many that were tried helps. */
  | { readonly kind: 'none'; readonly tried: number };

type Without<T, Key extends string> = T extends unknown ? Omit<T, Key> : never;

/** What there is to tell of it: all but the plan as it would be then. */
export type ToldNearest = Without<Nearest, 'plan'>;

export function toldOf(nearest: Nearest): ToldNearest {
  const { kind } = nearest;
  switch (kind) {
    case 'none':
      return nearest;
    case 'as-it-is':
      return { kind, start: nearest.start };
    case 'change':
      return { kind, changes: nearest.changes, start: nearest.start, along: nearest.along };
  }
}

/** Less than this is not worth a change. */
const LEAST_GAIN_MINUTES = 15;
/** So many are tried at most. */
const MOST_TRIES = 8;
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

interface Desk {
  readonly followed: Followed;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly steps: ReadonlyMap<string, PlannedStep>;
}

/** Changes made together, to be tried. */
type Trial = readonly Change[];

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
function trimmed(desk: Desk, steps: readonly PlannedStep[], changes: Trial): Trial {
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
function trialsFor(desk: Desk, link: WhyLink): Trial[] {
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

function changesAir(trial: Trial): boolean {
  return trial.some(({ kind }) => kind === 'warmer' || kind === 'drier');
}

/** Trials, and a stronger one before them: where that does not help, none of them does. */
interface Group {
  readonly trials: readonly Trial[];
  readonly strongest?: Trial;
}

/** The first `alone` of the trials, each by itself, and then the rest. */
function grouped(trials: readonly Trial[], alone: number, strongestOf: (rest: readonly Trial[]) => Trial): Group[] {
  const rest = trials.slice(alone);
  const single = (trial: Trial): Group => ({ trials: [trial] });
  return [
    ...trials.slice(0, alone).map(single),
    ...(rest.length > 1 ? [{ trials: rest, strongest: strongestOf(rest) }] : rest.map(single)),
  ];
}

/**
 * Of other air the last is the strongest; of what gives more hands, hours or room, it is all of it together. The first of all is
 * likely to help and is tried by itself, and so is the least of other air, unless what it does is seen from how a film dries.
 */
function groupsOf(trials: readonly Trial[], isFirst: boolean, waitsForFilm: boolean): Group[] {
  const last = (rest: readonly Trial[]): Trial => rest.at(-1) ?? [];
  const ofKind = (kind: Change['kind']) => trials.filter((trial) => trial[0]?.kind === kind);
  const plain = trials.filter((trial) => !changesAir(trial));
  return [
    ...grouped(plain, isFirst ? 1 : 0, (rest) => rest.flat()),
    ...grouped(ofKind('warmer'), waitsForFilm ? 0 : 1, last),
    ...grouped(ofKind('drier'), waitsForFilm ? 0 : 1, last),
  ];
}

/** May nothing that was tried help, since what holds it is a fact, or nothing at all? */
function isSettled({ kind }: Cause): boolean {
  return kind === 'done' || kind === 'at-work';
}

/** The steps that come forward together: those of the chain up to its link `k`, and coats that are laid in one go with them. */
function movingUpTo({ followed }: Desk, chain: readonly WhyLink[], k: number): Set<string> {
  const { plan } = followed.standing;
  const linked = chain.slice(0, k + 1).flatMap(({ step, cause }) => (isSettled(cause) ? [] : [step]));
  // Oily rags go with their coat.
  const ids = linked.flatMap(({ id, atOnceAfter }) => (atOnceAfter === undefined ? [id] : [atOnceAfter, id]));
  const mates = (plan.sessions ?? []).filter((s) => s.steps.some((id) => ids.includes(id))).flatMap((s) => s.steps);
  return new Set([...ids, ...mates]);
}

/** The wait for a film that holds the step of `link`, which must let it begin by `by`, or at least sooner. */
function waitFor({ step, cause }: WhyLink, by: Minute | undefined): FilmWait | undefined {
  if (cause.kind !== 'dry' && cause.kind !== 'window') return undefined;
  return { step, cause, minutes: by === undefined ? 1 : Math.max(1, cause.until - by) };
}

/** Worked out when first asked for. */
function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | undefined;
  return () => (known ??= { value: work() }).value;
}

/**
 * The nearest change that would let the first step of `chain` begin sooner: of what holds it, or else of what holds that,
 * back along the chain; the least of each kind first. Everything that is not on the way there stays as planned.
 * @param onTry told before each try
 */
export function nearestChange(
  followed: Followed,
  chain: readonly WhyLink[],
  onTry: () => void = () => undefined,
): Nearest {
  const [first] = chain;
  const { plan } = followed.standing;
  const desk: Desk = {
    followed,
    tasks: new Map(followed.made.tasks.map((t) => [t.id, t])),
    steps: new Map(plan.steps.map((s) => [s.id, s])),
  };
  let tried = 0;
  if (first === undefined || isSettled(first.cause)) return { kind: 'none', tried };
  const { id } = first.step;
  const by = first.start - LEAST_GAIN_MINUTES;
  const forward = (changes: Trial, moving: ReadonlySet<string>, wait?: FilmWait) => {
    onTry();
    tried += 1;
    return comingForward(followed, changes, moving, { step: id, by, ...(wait && { wait }) });
  };
  for (const [k, link] of chain.entries()) {
    if (isSettled(link.cause)) break;
    const moving = movingUpTo(desk, chain, k);
    const wait = waitFor(link, k === 0 ? by : undefined);
    const asItIs = once((): Nearest | undefined => {
      const held = forward([], moving)?.held();
      return held && { kind: 'as-it-is', ...held };
    });
    if (link.cause.kind === 'better-so') {
      const found = asItIs();
      if (found !== undefined) return found;
    }
    const helps = ({ strongest }: Group): boolean => {
      if (strongest === undefined) return true;
      return wait !== undefined && changesAir(strongest)
        ? driesInTime(followed, strongest, wait)
        : forward(strongest, moving) !== undefined;
    };
    for (const group of groupsOf(trialsFor(desk, link), k === 0, wait !== undefined)) {
      if (tried < MOST_TRIES && !helps(group)) continue;
      for (const asked of group.trials) {
        if (tried >= MOST_TRIES) return { kind: 'none', tried };
        const found = forward(asked, moving, wait);
        if (found === undefined) continue;
        // What helps with no change at all is no change's merit.
        const anyway = asItIs();
        if (anyway !== undefined) return anyway;
        const least = trimmed(desk, found.steps, asked);
        const same = JSON.stringify(least) === JSON.stringify(asked);
        const enough = same ? undefined : forward(least, moving)?.held();
        const then = enough ?? found.held();
        // What the verifier turns down would be turned down all the more of what is stronger.
        if (then === undefined) break;
        const along = then.plan.steps.flatMap((step) =>
          step.id === id || step.spans[0]?.start === desk.steps.get(step.id)?.spans[0]?.start ? [] : [step.id],
        );
        return { kind: 'change', changes: enough === undefined ? asked : least, along, ...then };
      }
    }
  }
  return { kind: 'none', tried };
}
