import type { Book } from '../../src/model/book.ts';
import type { Material } from '../../src/model/material.ts';
import type { PlannedStep, Plan } from '../../src/model/plan.ts';
import type { ClockSpan, Hours } from '../../src/model/shop.ts';
import type { Task } from '../../src/model/task.ts';
import type { Look } from '../../src/reports/look.ts';
import type { Manner } from '../../src/reports/say-time.ts';
import { graphemes, widthOf } from '../../src/terminal/width.ts';
import { minuteAt } from '../../src/time/zone.ts';

export const zone = 'Europe/Dublin';

/** `on(11, '08:30')`: that time on 11 January 2027, a Monday. */
export function on(day: number, clock: string): number {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return minuteAt(`2027-01-${String(day).padStart(2, '0')}`, hour * 60 + minute, zone);
}

export const manner: Manner = { now: on(11, '07:30'), zone, clock: 24, units: 'metric', currency: 'EUR' };

const plainly = (text: string) => text;
export function look(columns: number, ascii = false): Look {
  const paint = { strong: plainly, quiet: plainly, good: plainly, warn: plainly, bad: plainly };
  return { columns, pictureColumns: columns, ascii, paint, widthOf, graphemes };
}

const open: readonly ClockSpan[] = [
  { from: 480, to: 750 },
  { from: 795, to: 1050 },
];
const opening: Hours = {
  week: {
    monday: open,
    tuesday: open,
    wednesday: open,
    thursday: open,
    friday: open,
    saturday: [{ from: 540, to: 780 }],
    sunday: [],
  },
  days: {},
};

function material(id: string, name: string): [string, Material] {
  return [
    id,
    {
      id,
      name,
      family: 'water-borne',
      mechanism: 'water',
      reference: { tempC: 23, rhPercent: 50 },
      marks: {},
      windows: [],
      stack: [],
      cautions: [],
      source: 'invented for this test',
    },
  ];
}

export const book: Book = {
  shop: {
    name: 'Mill Lane workshop',
    timeZone: zone,
    units: 'metric',
    clock: 24,
    weekStartsOn: 'monday',
    currency: 'EUR',
    opening,
    rooms: [
      { id: 'workshop', name: 'Workshop', air: { kind: 'constant', tempC: 19, rhPercent: 55 } },
      { id: 'garage', name: 'Garage', air: { kind: 'constant', tempC: 7, rhPercent: 85 } },
    ],
    stations: [
      { id: 'bench-1', name: 'Bench 1', room: 'workshop', kind: 'bench', slots: 1 },
      { id: 'corner', name: 'Spray corner', room: 'workshop', kind: 'spray', slots: 1 },
    ],
    tools: [{ id: 'sprayer', name: 'Sprayer', count: 1, setUpMinutes: 10, washUpMinutes: 15 }],
    hands: [{ id: 'owner', name: 'Owner', skills: [], hours: opening }],
    safeChance: 0.9,
  },
  materials: new Map([
    material('water-borne-acrylic-enamel', 'Water-borne acrylic enamel'),
    material('oil-wiping-stain', 'Oil wiping stain'),
  ]),
  recipes: new Map(),
  pieces: [
    {
      id: 'washstand',
      name: 'Pine washstand',
      kind: 'washstand',
      wantedBy: on(29, '12:00'),
      priceMinor: 32000,
      costMinor: 4500,
      mayCarryLead: true,
      sections: ['body', 'legs'].map((id) => ({
        id,
        name: id,
        recipe: 'painted-sprayed',
        areaM2: 2.4,
        items: 1,
        thicknessMm: 19,
        materials: {},
        without: [],
      })),
      joins: [],
    },
  ],
  journal: [],
};

const base = {
  piece: 'washstand',
  way: '',
  room: 'workshop',
  station: 'bench-1',
  hands: ['owner'],
  tools: [],
  after: [],
};
const body = 'washstand/body';
const times = (early: number, typical: number, late: number) => ({ early, typical, late });

export const steps: readonly PlannedStep[] = [
  {
    ...base,
    id: `${body}/scuff`,
    section: 'body',
    step: 'scuff',
    title: 'Sand the old paint smooth',
    stage: 'sand',
    spans: [
      { start: on(11, '11:50'), end: on(11, '12:30') },
      { start: on(11, '13:15'), end: on(11, '13:40') },
    ],
    holdsStationUntil: on(11, '13:40'),
  },
  {
    ...base,
    id: 'washstand/legs/stain',
    section: 'legs',
    step: 'stain',
    title: 'Wipe the stain on, then off within ten minutes',
    stage: 'coat',
    material: 'oil-wiping-stain',
    spans: [{ start: on(11, '13:40'), end: on(11, '14:30') }],
    holdsStationUntil: on(12, '10:30'),
    dry: { handle: times(on(11, '23:00'), on(12, '04:00'), on(12, '10:30')) },
  },
  {
    ...base,
    id: `${body}/enamel-1`,
    section: 'body',
    step: 'enamel-1',
    title: 'Spray an even wet coat',
    stage: 'topcoat',
    coat: 1,
    way: 'spray',
    station: 'corner',
    tools: ['sprayer'],
    material: 'water-borne-acrylic-enamel',
    spans: [{ start: on(11, '14:30'), end: on(11, '15:20') }],
    holdsStationUntil: on(11, '20:00'),
    dry: { handle: times(on(11, '18:00'), on(11, '19:00'), on(11, '20:00')) },
  },
  {
    ...base,
    id: `${body}/enamel-2`,
    section: 'body',
    step: 'enamel-2',
    title: 'Spray an even wet coat',
    stage: 'topcoat',
    coat: 2,
    way: 'spray',
    station: 'corner',
    tools: ['sprayer'],
    material: 'water-borne-acrylic-enamel',
    spans: [{ start: on(12, '10:30'), end: on(12, '11:20') }],
    holdsStationUntil: on(12, '16:00'),
    window: { opens: on(12, '09:10'), shuts: on(15, '17:00'), prep: 'scuff', of: `${body}/enamel-1` },
    after: [{ step: `${body}/enamel-1`, notBefore: on(12, '09:10') }],
    dry: { handle: times(on(12, '14:00'), on(12, '15:00'), on(12, '16:00')) },
  },
];

export const tasks: readonly Task[] = [
  {
    id: `${body}/scuff`,
    piece: 'washstand',
    section: 'body',
    step: 'scuff',
    title: 'Sand the old paint smooth',
    stage: 'sand',
    ways: [],
    people: 1,
    dusty: true,
    mayPause: true,
    needs: [],
    gated: true,
    grit: 180,
    supplies: ['tack cloth'],
    caution: 'wear a dust mask; sand old paint only once the lead test is in.',
    object: body,
  },
];

export const plan: Plan = {
  madeAt: on(11, '07:30'),
  timeZone: zone,
  from: on(11, '07:30'),
  to: on(30, '00:00'),
  pieces: [
    {
      id: 'washstand',
      name: 'Pine washstand',
      wantedBy: on(29, '12:00'),
      lateHours: 0,
      ready: {
        handle: { typical: on(12, '15:00'), safe: on(12, '16:00'), chance: 0.9 },
        handedOver: { typical: on(19, '09:00'), safe: on(21, '10:00'), chance: 0.9 },
      },
    },
  ],
  steps,
  proof: {
    objective: [
      { name: 'late', value: 0, bound: 0 },
      { name: 'tied up', value: 47_520, bound: 46_660 },
    ],
    gapPercent: 1.85,
    proven: false,
    verified: true,
    steps: 5000,
  },
  warnings: [
    { code: 'oily-rags', text: 'Rags wet with stain can catch fire: hang them outdoors, or lay them in water.' },
  ],
};
