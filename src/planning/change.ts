import { rhAfterHeating } from '../air/psychrometrics.ts';
import type { Book } from '../model/book.ts';
import { spansOn } from '../model/hours.ts';
import type { Piece, Section } from '../model/piece.ts';
import type { AirSource, ClockSpan, Hand, Hours, Room, Shop, StationKind } from '../model/shop.ts';
import { type Minute, type Span, subtract } from '../time/span.ts';
import { localDays, localTime, minuteAt } from '../time/zone.ts';
import { standingEntries } from '../model/standing-entries.ts';
import { worded } from '../words/worded.ts';

/** One thing that the shop might do otherwise. */
export type Change =
  /** `during`: only then; else always. */
  | { readonly kind: 'warmer'; readonly room: string; readonly byK: number; readonly during?: Span }
  | { readonly kind: 'drier'; readonly room: string; readonly toRhPercent: number; readonly during?: Span }
  | { readonly kind: 'slot'; readonly station: string; readonly more: number }
  | { readonly kind: 'station'; readonly room: string; readonly place: StationKind; readonly slots: number }
  | { readonly kind: 'open'; readonly date: string; readonly spans: readonly ClockSpan[] }
  /** `skills`: what else than plain work another pair of hands can do; absent: nothing. */
  | {
      readonly kind: 'helper';
      readonly date: string;
      readonly spans: readonly ClockSpan[];
      readonly skills?: readonly string[];
    }
  /** One of the shop's own hands is in then, too. */
  | { readonly kind: 'in'; readonly hand: string; readonly date: string; readonly spans: readonly ClockSpan[] }
  | { readonly kind: 'tool'; readonly tool: string; readonly more: number }
  | { readonly kind: 'arrives'; readonly piece: string; readonly at: Minute }
  /** A piece, or a part of it, that leaves at `left` is back by `at`; or, where these are the same, does not leave. */
  | { readonly kind: 'back'; readonly piece: string; readonly left: Minute; readonly at: Minute }
  /** A room that can be had only in some hours can be had then, too. */
  | { readonly kind: 'room'; readonly room: string; readonly during: Span }
  /** What the journal says of a step that was put off is taken back. */
  | { readonly kind: 'not-put-off'; readonly task: string }
  /** A step is left out. */
  | { readonly kind: 'skip'; readonly task: string }
  | { readonly kind: 'instead'; readonly piece: string; readonly section: string; readonly recipe: string }
  | {
      readonly kind: 'material';
      readonly piece: string;
      readonly section: string;
      readonly old: string;
      readonly now: string;
    }
  | { readonly kind: 'without'; readonly piece: string };

const DAY_MINUTES = 24 * 60;
const HELPER = 'helper-for-a-day';

interface AirOf {
  readonly tempC: number;
  readonly rhPercent: number;
}

/** Every temperature and humidity of a source, changed; of heated air what it is heated and dried to. */
function eachAir(source: AirSource, change: <A extends AirOf>(air: A) => A): AirSource {
  switch (source.kind) {
    case 'constant':
      return change(source);
    case 'monthly':
      return { ...source, months: source.months.map(change) };
    case 'daily':
      return { ...source, curve: source.curve.map(change) };
    case 'series':
      return { ...source, samples: source.samples.map(change) };
    case 'heated':
    case 'for-a-while':
      return source;
  }
}

/** The water in the air stays what it is. */
export function warmerAir(source: AirSource, byK: number): AirSource {
  if (source.kind === 'for-a-while') return { ...source, of: warmerAir(source.of, byK) };
  if (source.kind === 'heated')
    return { ...source, setPoints: source.setPoints.map((p) => ({ ...p, tempC: p.tempC + byK })) };
  return eachAir(source, (air) => ({
    ...air,
    tempC: air.tempC + byK,
    rhPercent: Math.min(100, rhAfterHeating(air.tempC, air.rhPercent, air.tempC + byK)),
  }));
}

/** Never damper than that, at the same temperature. */
export function drierAir(source: AirSource, toRhPercent: number): AirSource {
  if (source.kind === 'for-a-while') return { ...source, of: drierAir(source.of, toRhPercent) };
  if (source.kind === 'heated')
    return { ...source, driedToRhPercent: Math.min(source.driedToRhPercent ?? 100, toRhPercent) };
  return eachAir(source, (air) => ({ ...air, rhPercent: Math.min(air.rhPercent, toRhPercent) }));
}

function withRoom(shop: Shop, id: string, change: (air: AirSource) => AirSource): Shop {
  return { ...shop, rooms: shop.rooms.map((r): Room => (r.id === id ? { ...r, air: change(r.air) } : r)) };
}

function onDay(hours: Hours, date: string, spans: readonly ClockSpan[]): Hours {
  return { ...hours, days: { ...hours.days, [date]: spans } };
}

function spansOnDate(hours: Hours, date: string): readonly ClockSpan[] {
  return spansOn(hours, { date, weekday: new Date(`${date}T00:00:00Z`).getUTCDay() || 7 });
}

function united(spans: readonly ClockSpan[]): ClockSpan[] {
  const joined: ClockSpan[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last !== undefined && span.from <= last.to)
      joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
    else joined.push(span);
  }
  return joined;
}

/** The day's hours are those; with them come the hands who keep the shop's hours, or the first hand where none does. */
function openOn(shop: Shop, date: string, spans: readonly ClockSpan[]): Shop {
  const own = JSON.stringify(shop.opening);
  const follows = shop.hands.map((h) => JSON.stringify(h.hours) === own);
  const comes = (i: number) => (follows.includes(true) ? follows[i] === true : i === 0);
  return {
    ...shop,
    opening: onDay(shop.opening, date, spans),
    hands: shop.hands.map((h, i) => (comes(i) ? { ...h, hours: onDay(h.hours, date, spans) } : h)),
  };
}

/** A hand is in then, too, and the shop opened for it if it is not; nobody else comes in more. */
function withIn(shop: Shop, hand: Hand, date: string, spans: readonly ClockSpan[]): Shop {
  const before = spansOnDate(shop.opening, date);
  const hours = onDay(hand.hours, date, united([...spansOnDate(hand.hours, date), ...spans]));
  const there = spans.map((s) => ({
    start: minuteAt(date, s.from, shop.timeZone),
    end: minuteAt(date, s.to, shop.timeZone),
  }));
  const comes: Hand = { ...hand, hours, ...(hand.off && { off: subtract(hand.off, there) }) };
  const others = shop.hands.map((h) =>
    h.id === hand.id ? comes : { ...h, hours: onDay(h.hours, date, within(spansOnDate(h.hours, date), before)) },
  );
  return {
    ...shop,
    opening: onDay(shop.opening, date, united([...before, ...spans])),
    hands: shop.hands.some((h) => h.id === hand.id) ? others : [...others, comes],
  };
}

/** Another pair of hands for a day. */
function helperOf(shop: Shop, skills: readonly string[]): Hand {
  const never = { monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] };
  const known = shop.hands.find((h) => h.id === HELPER);
  return known ?? { id: HELPER, name: worded`Helper for a day`, skills, hours: { week: never, days: {} } };
}

function within(spans: readonly ClockSpan[], limits: readonly ClockSpan[]): ClockSpan[] {
  return spans.flatMap((s) =>
    limits.flatMap((l) => {
      const span = { from: Math.max(s.from, l.from), to: Math.min(s.to, l.to) };
      return span.from < span.to ? [span] : [];
    }),
  );
}

function withSection(book: Book, piece: string, section: string, change: (s: Section) => Section): Book {
  const pieces = book.pieces.map((p): Piece => {
    if (p.id !== piece) return p;
    return { ...p, sections: p.sections.map((s) => (s.id === section ? change(s) : s)) };
  });
  return { ...book, pieces };
}

/** One more place of a kind in a room, by an id that no other has. */
function withStation(shop: Shop, { room, place, slots }: Change & { kind: 'station' }): Shop {
  const taken = new Set(shop.stations.map((s) => s.id));
  let id = `new-${place}`;
  while (taken.has(id)) id = `${id}-more`;
  return { ...shop, stations: [...shop.stations, { id, name: worded`New ${place}`, room, kind: place, slots }] };
}

/** The journal as it is once the entries that put the step off are taken back. */
function notPutOff(journal: Book['journal'], task: string): Book['journal'] {
  const standing = standingEntries(journal).entries;
  const last = journal.at(-1);
  return [
    ...journal,
    ...standing
      .filter(({ deed }) => deed.kind === 'slipped' && deed.task === task)
      .map(({ number }, k) => ({
        number: (last?.number ?? 0) + k + 1,
        at: last?.at ?? 0,
        deed: { kind: 'undo', entry: number } as const,
      })),
  ];
}

/** The journal with one more entry: that the step is left out. */
function skipping(journal: Book['journal'], task: string): Book['journal'] {
  const last = journal.at(-1);
  return [...journal, { number: (last?.number ?? 0) + 1, at: last?.at ?? 0, deed: { kind: 'skipped', task } }];
}

function backBy(piece: Piece, left: Minute, at: Minute): Piece {
  const sooner = <Of extends Pick<Piece, 'away'>>(of: Of): Of =>
    of.away === undefined
      ? of
      : {
          ...of,
          away: of.away.flatMap((stay) => (stay.start !== left ? [stay] : at > left ? [{ ...stay, end: at }] : [])),
        };
  return { ...sooner(piece), sections: piece.sections.map(sooner) };
}

/** The room can be had in its hours and from the start to the end of `during`. */
function withRoomHad(shop: Shop, id: string, during: Span): Shop {
  const longer = (open: Hours): Hours =>
    localDays(during.start, during.end, shop.timeZone).reduce((hours, { date, start }) => {
      const clockAt = (minute: Minute) => localTime(minute, shop.timeZone).clock;
      const from = during.start <= start ? 0 : clockAt(during.start);
      const isLast = localTime(during.end, shop.timeZone).date === date;
      const span = { from, to: isLast ? clockAt(during.end) : DAY_MINUTES };
      return span.from < span.to ? onDay(hours, date, united([...spansOnDate(hours, date), span])) : hours;
    }, open);
  return {
    ...shop,
    rooms: shop.rooms.map((r): Room => (r.id === id && r.open !== undefined ? { ...r, open: longer(r.open) } : r)),
  };
}

/** The same shop with one change. What the change names must be there. */
export function changed(book: Book, change: Change): Book {
  const { shop } = book;
  switch (change.kind) {
    case 'warmer': {
      const { byK, during } = change;
      const warmer = (of: AirSource): AirSource =>
        during === undefined ? warmerAir(of, byK) : { kind: 'for-a-while', of, during, byK };
      return { ...book, shop: withRoom(shop, change.room, warmer) };
    }
    case 'drier': {
      const { toRhPercent, during } = change;
      const drier = (of: AirSource): AirSource =>
        during === undefined ? drierAir(of, toRhPercent) : { kind: 'for-a-while', of, during, toRhPercent };
      return { ...book, shop: withRoom(shop, change.room, drier) };
    }
    case 'slot': {
      const stations = shop.stations.map((s) =>
        s.id === change.station ? { ...s, slots: Math.max(0, s.slots + change.more) } : s,
      );
      return { ...book, shop: { ...shop, stations } };
    }
    case 'station':
      return { ...book, shop: withStation(shop, change) };
    case 'open':
      return { ...book, shop: openOn(shop, change.date, change.spans) };
    case 'helper':
      return { ...book, shop: withIn(shop, helperOf(shop, change.skills ?? []), change.date, change.spans) };
    case 'in': {
      const hand = shop.hands.find((h) => h.id === change.hand);
      return hand === undefined ? book : { ...book, shop: withIn(shop, hand, change.date, change.spans) };
    }
    case 'tool': {
      const tools = shop.tools.map((t) =>
        t.id === change.tool ? { ...t, count: Math.max(0, t.count + change.more) } : t,
      );
      return { ...book, shop: { ...shop, tools } };
    }
    case 'arrives':
      return { ...book, pieces: book.pieces.map((p) => (p.id === change.piece ? { ...p, arrives: change.at } : p)) };
    case 'back':
      return {
        ...book,
        pieces: book.pieces.map((p) => (p.id === change.piece ? backBy(p, change.left, change.at) : p)),
      };
    case 'room':
      return { ...book, shop: withRoomHad(shop, change.room, change.during) };
    case 'not-put-off':
      return { ...book, journal: notPutOff(book.journal, change.task) };
    case 'skip':
      return { ...book, journal: skipping(book.journal, change.task) };
    case 'instead':
      return withSection(book, change.piece, change.section, (s) => ({ ...s, recipe: change.recipe, without: [] }));
    case 'material':
      return withSection(book, change.piece, change.section, (s) => ({
        ...s,
        materials: { ...s.materials, [change.old]: change.now },
      }));
    case 'without':
      return { ...book, pieces: book.pieces.filter((p) => p.id !== change.piece) };
  }
}

/** Hours of work or of opening that a change asks for; 0 for one that asks for none. */
export function hoursAskedFor(change: Change): number {
  return change.kind === 'open' || change.kind === 'helper' || change.kind === 'in'
    ? change.spans.reduce((sum, s) => sum + s.to - s.from, 0) / 60
    : 0;
}
