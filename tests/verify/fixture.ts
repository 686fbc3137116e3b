import type { AirSeries } from '../../src/air/series.ts';
import type { Mark, Spread } from '../../src/model/mark.ts';
import type { Material } from '../../src/model/material.ts';
import type { Piece, Section } from '../../src/model/piece.ts';
import type { MarkTimes, Plan, PlannedStep, ReadyTime } from '../../src/model/plan.ts';
import type { Hours, Shop } from '../../src/model/shop.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { Task, Way } from '../../src/model/task.ts';
import type { Minute } from '../../src/time/span.ts';
import { minuteAt } from '../../src/time/zone.ts';
import type { Evidence } from '../../src/verify/facts.ts';

// A shop small enough to be checked by hand. Its figures are invented: they stand for no material. Both rooms have the
// reference air all week, so that each mark comes exactly its sheet's hours after the end of application.

export const zone = 'Europe/Dublin';
const dates = { mon: '2027-01-11', tue: '2027-01-12', wed: '2027-01-13' };

/** `on('mon', '08:30')` */
export function on(day: keyof typeof dates, clock: string): Minute {
  const [hour, minute] = clock.split(':').map(Number);
  return minuteAt(dates[day], hour! * 60 + minute!, zone);
}

const source = 'invented for the test';
const hours = (low: number, typical: number, high: number): Spread & { source: string } => ({
  low,
  typical,
  high,
  source,
});

const plain = {
  mechanism: 'two-part',
  activationKJPerMol: 50,
  reference: { tempC: 23, rhPercent: 50 },
  windows: [],
  stack: [],
  cautions: [],
  source,
} as const;

export const enamelWindows = {
  early: { opens: hours(3, 4, 5), shuts: hours(20, 24, 30) },
  late: { opens: hours(20, 24, 26), prep: 'scuff' },
} as const;

export const enamel: Material = {
  ...plain,
  id: 'enamel',
  name: 'Enamel',
  family: 'two-part',
  marks: { 'dust-free': hours(0.5, 1, 2), touch: hours(1, 2, 3), handle: hours(6, 8, 10) },
  windows: [enamelWindows.early, enamelWindows.late],
  limits: { minTempC: 10, maxTempC: 30, minRhPercent: 20, maxRhPercent: 80, dewMarginK: 3, source },
};
export const glue: Material = {
  ...plain,
  id: 'glue',
  name: 'Glue',
  family: 'glue',
  marks: { handle: hours(0.5, 1, 2) },
};
export const putty: Material = {
  ...plain,
  id: 'putty',
  name: 'Putty',
  family: 'filler',
  marks: { sand: hours(0.5, 1, 1.5) },
  potLife: hours(0.75, 1, 1.5),
};

const week = (spans: readonly { from: number; to: number }[]): Hours['week'] => ({
  monday: spans,
  tuesday: spans,
  wednesday: spans,
  thursday: spans,
  friday: spans,
  saturday: [],
  sunday: [],
});
const opening: Hours = {
  week: week([
    { from: 8 * 60, to: 12 * 60 },
    { from: 13 * 60, to: 17 * 60 },
  ]),
  days: {},
};

export const shop: Shop = {
  name: 'Small shop',
  timeZone: zone,
  units: 'metric',
  clock: 24,
  weekStartsOn: 'monday',
  currency: 'EUR',
  opening,
  rooms: ['workshop', 'spray-room'].map((id) => ({
    id,
    name: id === 'workshop' ? 'Workshop' : 'Spray room',
    air: { kind: 'constant', tempC: 23, rhPercent: 50 },
  })),
  stations: [
    { id: 'bench-1', name: 'Bench 1', room: 'workshop', kind: 'bench', slots: 1 },
    { id: 'bench-2', name: 'Bench 2', room: 'workshop', kind: 'bench', slots: 1 },
    { id: 'bench-3', name: 'Bench 3', room: 'workshop', kind: 'bench', slots: 1 },
    { id: 'rack', name: 'Rack', room: 'workshop', kind: 'rack', slots: 2 },
    { id: 'booth', name: 'Booth', room: 'spray-room', kind: 'spray', slots: 1 },
    { id: 'booth-2', name: 'Booth 2', room: 'spray-room', kind: 'spray', slots: 1 },
  ],
  tools: [
    { id: 'sprayer', name: 'Sprayer', count: 1, setUpMinutes: 0, washUpMinutes: 0 },
    { id: 'sander', name: 'Sander', count: 1, setUpMinutes: 0, washUpMinutes: 0 },
    { id: 'clamps', name: 'Clamps', count: 1, setUpMinutes: 0, washUpMinutes: 0 },
  ],
  hands: [
    { id: 'owner', name: 'Owner', skills: ['spray'], hours: opening },
    { id: 'helper', name: 'Helper', skills: [], hours: { week: week([{ from: 8 * 60, to: 12 * 60 }]), days: {} } },
    { id: 'friend', name: 'Friend', skills: ['spray'], hours: opening },
  ],
  safeChance: 0.9,
};

const section = (id: string, name: string): Section => ({
  id,
  name,
  recipe: 'by-hand',
  areaM2: 1,
  items: 1,
  thicknessMm: 19,
  materials: {},
  without: [],
});
const piece = (id: string, name: string, sections: readonly Section[]): Piece => ({
  id,
  name,
  kind: 'desk',
  priceMinor: 0,
  costMinor: 0,
  mayCarryLead: true,
  sections,
  joins: [],
});

/** A way that needs nothing but a bench. */
export function way(workMinutes: number, over: Partial<Way> = {}): Way {
  return { name: '', workMinutes, stations: ['bench'], tools: [], ...over };
}

export function task(id: string, ways: readonly Way[], over: Partial<Task> = {}): Task {
  const [pieceId = '', sectionId = '', step = ''] = id.split('/');
  return {
    id,
    piece: pieceId,
    section: sectionId,
    step,
    title: step,
    stage: 'sand',
    ways,
    people: 1,
    dusty: false,
    mayPause: false,
    needs: [],
    gated: false,
    supplies: [],
    object: `${pieceId}/${sectionId}`,
    ...over,
  };
}

/** When each mark of `material` comes in the reference air, by the sheet alone. */
export function sheetTimes(material: Material, end: Minute): Partial<Record<Mark, MarkTimes>> {
  const times: Partial<Record<Mark, MarkTimes>> = {};
  for (const [mark, { low, typical, high }] of Object.entries(material.marks))
    times[mark as Mark] = { early: end + low * 60, typical: end + typical * 60, late: end + high * 60 };
  return times;
}

export interface Placed {
  readonly at: Minute;
  readonly station: string;
  readonly hands?: readonly string[];
  readonly over?: Partial<PlannedStep>;
}

const materials = new Map([enamel, glue, putty].map((m) => [m.id, m]));

/** The step of a plan that does `of` in its first way, in one go from `at`. */
export function step(of: Task, { at, station, hands = ['owner'], over = {} }: Placed): PlannedStep {
  const [first] = of.ways;
  const end = at + first!.workMinutes;
  const material = first!.film && materials.get(first!.film.material);
  return {
    id: of.id,
    piece: of.piece,
    section: of.section,
    step: of.step,
    title: of.title,
    stage: of.stage,
    ...(of.coat !== undefined && { coat: of.coat }),
    ...(material && { material: material.id, dry: sheetTimes(material, end) }),
    way: first!.name,
    room: shop.stations.find((s) => s.id === station)!.room,
    station,
    hands,
    tools: first!.tools,
    spans: [{ start: at, end }],
    holdsStationUntil: end + ((material?.marks.handle ?? material?.marks.sand)?.high ?? 0) * 60,
    after: [],
    ...over,
  };
}

/** When all steps of a piece are over and its films are as hard as their sheets tell. */
function handedOver(piece: string, steps: readonly PlannedStep[]): ReadyTime {
  const own = steps.filter((s) => s.piece === piece);
  const ends = own.flatMap((s) => [s.spans.at(-1)?.end ?? 0, s.dry?.handle?.late ?? s.dry?.sand?.late ?? 0]);
  const safe = Math.max(0, ...ends);
  return { typical: safe, safe, chance: 0.9 };
}

export function planOf(steps: readonly PlannedStep[], over: Partial<Plan> = {}): Plan {
  return {
    madeAt: on('mon', '07:30'),
    timeZone: zone,
    from: on('mon', '00:00'),
    to: on('wed', '00:00'),
    pieces: ['chair', 'desk'].map((id) => ({
      id,
      name: id,
      lateHours: 0,
      ready: { handedOver: handedOver(id, steps) },
    })),
    steps,
    proof: { objective: [], gapPercent: 0, proven: true, verified: true, steps: 0 },
    warnings: [],
    ...over,
  };
}

const constantAir = (tempC: number, rhPercent: number): AirSeries => ({
  from: on('mon', '00:00'),
  stepMinutes: 60,
  tempC: new Float64Array(24 * 7).fill(tempC),
  rhPercent: new Float64Array(24 * 7).fill(rhPercent),
  notes: [],
});

const referenceAir = new Map(shop.rooms.map((r) => [r.id, constantAir(23, 50)]));

export function situationOf(tasks: readonly Task[], over: Partial<Situation> = {}): Situation {
  const pieces = [
    piece('chair', 'Chair', [section('seat', 'seat')]),
    piece('desk', 'Desk', [section('top', 'top'), section('legs', 'legs')]),
  ];
  return {
    book: { shop, materials, recipes: new Map(), pieces, journal: [] },
    now: on('mon', '07:30'),
    tasks,
    done: new Map(),
    atWork: new Map(),
    notBefore: new Map(),
    sightings: new Map(),
    paces: new Map(),
    leadTests: new Map(),
    ...over,
  };
}

export function evidenceOf(situation: Situation, over: Partial<Evidence> = {}): Evidence {
  return { situation, air: referenceAir, factors: new Map(), ...over };
}
