import type { Book } from '../../../src/model/book.ts';
import type { Material } from '../../../src/model/material.ts';
import type { Piece } from '../../../src/model/piece.ts';
import type { Plan, PlannedPiece, PlannedStep } from '../../../src/model/plan.ts';
import type { ClockSpan, Hours } from '../../../src/model/shop.ts';
import type { Minute, Span } from '../../../src/time/span.ts';
import { readTime } from '../../../src/time/zone.ts';

/** A made-up shop, and plans written by hand: what a calendar or a picture is drawn from, without a search. */
export const ZONE = 'America/New_York';

/** `2027-03-12T10:00` on the made-up shop's wall clock. */
export function when(written: string): Minute {
  const read = readTime(written, ZONE);
  if (!read.ok) throw new Error(`${written}: ${read.why}`);
  return read.minute;
}

export const span = (from: string, to: string): Span => ({ start: when(from), end: when(to) });

const day: readonly ClockSpan[] = [
  { from: 8 * 60, to: 12 * 60 + 30 },
  { from: 13 * 60, to: 17 * 60 + 30 },
];
export const hours: Hours = {
  week: {
    monday: day,
    tuesday: day,
    wednesday: day,
    thursday: day,
    friday: day,
    saturday: [{ from: 9 * 60, to: 13 * 60 }],
    sunday: [],
  },
  days: {},
};

const source = 'made up for this test';
const enamel: Material = {
  id: 'water-borne-enamel',
  name: 'Water-borne enamel',
  family: 'water-borne',
  mechanism: 'water',
  reference: { tempC: 23, rhPercent: 50 },
  marks: {},
  windows: [],
  stack: [],
  cautions: ['Keep it from freezing'],
  source,
};

export function pieceOf(id: string, name: string, sections: readonly string[], more: Partial<Piece> = {}): Piece {
  return {
    id,
    name,
    kind: 'table',
    priceMinor: 0,
    costMinor: 0,
    mayCarryLead: false,
    joins: [],
    sections: sections.map((section) => ({
      id: section,
      name: section,
      recipe: 'painted',
      areaM2: 1,
      items: section === 'drawers' ? 3 : 1,
      thicknessMm: 19,
      materials: {},
      without: [],
    })),
    ...more,
  };
}

export const pieces: readonly Piece[] = [
  pieceOf('oak-table', 'Oak table', ['top', 'legs'], { wantedBy: when('2027-03-19T12:00') }),
  pieceOf('pine-washstand', 'Pine washstand', ['body', 'drawers']),
  pieceOf('stool', 'Stool', ['whole-stool']),
];

export function bookOf(list: readonly Piece[] = pieces, more: Partial<Book['shop']> = {}): Book {
  return {
    shop: {
      name: 'Mill Lane workshop',
      timeZone: ZONE,
      units: 'us',
      clock: 24,
      weekStartsOn: 'monday',
      currency: 'USD',
      opening: hours,
      rooms: [{ id: 'workshop', name: 'Workshop', air: { kind: 'constant', tempC: 20, rhPercent: 50 } }],
      stations: [{ id: 'bench-1', name: 'Bench 1', room: 'workshop', kind: 'bench', slots: 1 }],
      tools: [],
      hands: [
        { id: 'owner', name: 'Owner', skills: [], hours },
        { id: 'helper', name: 'Helper', skills: [], hours },
      ],
      safeChance: 0.9,
      ...more,
    },
    materials: new Map([[enamel.id, enamel]]),
    recipes: new Map(),
    pieces: list,
    journal: [],
  };
}

/** `PIECE/SECTION/STEP` with its hands-on spans. */
export function stepOf(id: string, spans: readonly Span[], more: Partial<PlannedStep> = {}): PlannedStep {
  const [piece = '', section = '', step = ''] = id.split('/');
  return {
    id,
    piece,
    section,
    step,
    title: `Do ${step}`,
    stage: 'sand',
    way: '',
    room: 'workshop',
    station: 'bench-1',
    hands: ['owner'],
    tools: [],
    spans,
    holdsStationUntil: spans.at(-1)!.end,
    after: [],
    ...more,
  };
}

export function planOf(steps: readonly PlannedStep[], planned: readonly PlannedPiece[] = []): Plan {
  return {
    madeAt: when('2027-03-12T10:00'),
    timeZone: ZONE,
    from: when('2027-03-12T10:00'),
    to: when('2027-03-20T10:00'),
    pieces: planned,
    steps,
    proof: { objective: [], gapPercent: 0, proven: true, verified: true, steps: 0 },
    warnings: [],
  };
}

const wet = (end: string): NonNullable<PlannedStep['dry']> => ({
  handle: { early: when(end), typical: when(end), late: when(end) },
});

/** Three pieces, twelve steps, over the night in which New York's clocks go forward. */
export const twelveSteps: readonly PlannedStep[] = [
  stepOf('oak-table/top/sand', [
    span('2027-03-12T10:00', '2027-03-12T12:30'),
    span('2027-03-12T13:00', '2027-03-12T13:45'),
  ]),
  stepOf('oak-table/top/coat-1', [span('2027-03-12T14:00', '2027-03-12T14:45')], {
    stage: 'coat',
    material: 'water-borne-enamel',
    coat: 1,
    dry: wet('2027-03-12T18:00'),
  }),
  stepOf('oak-table/top/coat-2', [span('2027-03-13T10:00', '2027-03-13T10:45')], {
    stage: 'coat',
    material: 'water-borne-enamel',
    coat: 2,
    dry: wet('2027-03-14T21:00'),
    window: { opens: when('2027-03-13T09:00'), shuts: when('2027-03-13T12:15'), of: 'oak-table/top/coat-1' },
    after: [{ step: 'oak-table/top/coat-1', mark: 'recoat', notBefore: when('2027-03-13T09:00') }],
  }),
  stepOf('oak-table/legs/sand', [span('2027-03-12T15:00', '2027-03-12T15:40')], { hands: ['helper'] }),
  stepOf('oak-table/legs/oil', [span('2027-03-13T11:00', '2027-03-13T11:30')], { hands: ['helper'], stage: 'coat' }),
  stepOf('oak-table/whole/inspect', [span('2027-03-16T09:00', '2027-03-16T09:20')], { stage: 'inspect' }),
  stepOf('pine-washstand/body/clean', [span('2027-03-12T15:45', '2027-03-12T16:15')], { stage: 'clean' }),
  stepOf('pine-washstand/body/prime', [span('2027-03-15T08:00', '2027-03-15T08:50')], {
    stage: 'prime',
    material: 'water-borne-enamel',
    dry: wet('2027-03-15T12:00'),
  }),
  stepOf('pine-washstand/body/coat-1', [span('2027-03-15T13:05', '2027-03-15T13:50')], {
    stage: 'coat',
    material: 'water-borne-enamel',
    dry: wet('2027-03-15T17:00'),
    window: {
      opens: when('2027-03-15T13:00'),
      shuts: when('2027-03-15T13:20'),
      prep: 'scuff',
      of: 'pine-washstand/body/prime',
    },
  }),
  stepOf('pine-washstand/drawers/sand', [span('2027-03-15T09:00', '2027-03-15T09:40')]),
  stepOf('stool/whole-stool/clean', [span('2027-03-16T10:00', '2027-03-16T10:30')], { stage: 'clean' }),
  stepOf('stool/whole-stool/wax', [span('2027-03-17T10:00', '2027-03-17T10:30')], {
    stage: 'topcoat',
    window: { opens: when('2027-03-16T20:00'), of: 'stool/whole-stool/clean' },
  }),
];

export const threePieces: readonly PlannedPiece[] = [
  {
    id: 'oak-table',
    name: 'Oak table',
    wantedBy: when('2027-03-19T12:00'),
    lateHours: 0,
    ready: {
      handedOver: { typical: when('2027-03-17T12:00'), safe: when('2027-03-18T16:00'), chance: 0.9 },
      cure: { typical: when('2027-03-30T12:00'), safe: when('2027-04-02T16:00'), chance: 0.9 },
    },
  },
  { id: 'pine-washstand', name: 'Pine washstand', lateHours: 0, ready: {} },
  { id: 'stool', name: 'Stool', lateHours: 0, ready: {} },
];

export const plan = planOf(twelveSteps, threePieces);
