import type { Book } from '../../src/model/book.ts';
import type { Entry } from '../../src/model/journal.ts';
import type { Material, SheetHours } from '../../src/model/material.ts';
import type { RecipeStep } from '../../src/model/recipe.ts';
import type { ClockSpan } from '../../src/model/shop.ts';
import { minuteAt } from '../../src/time/zone.ts';

const source = 'invented for the test';
export const COAT_1 = 'stool/seat/paint-1';
export const COAT_2 = 'stool/seat/paint-2';
/** A Monday morning. */
export const start = minuteAt('2027-01-11', 8 * 60, 'UTC');

function hours(low: number, typical: number, high: number): SheetHours {
  return { low, typical, high, source };
}

const always: readonly ClockSpan[] = [{ from: 6 * 60, to: 22 * 60 }];

/** One stool that gets two coats of a paint whose only window, from 4 h to 48 h, shuts; air as on its sheet. */
export function filmBook(options: {
  readonly journal?: readonly Entry[];
  readonly cures?: boolean;
  readonly withinHours?: number;
}): Book {
  const { journal = [], cures = true, withinHours } = options;
  const paint: Material = {
    id: 'paint',
    name: 'Paint',
    family: 'alkyd',
    mechanism: 'oxidation',
    reference: { tempC: 23, rhPercent: 50 },
    marks: {
      touch: hours(1, 2, 4),
      handle: hours(4, 6, 8),
      ...(cures && { cure: hours(60, 80, 100) }),
    },
    windows: [{ opens: hours(2, 3, 4), shuts: hours(48, 48, 48) }],
    stack: [],
    cautions: [],
    source,
  };
  const step: RecipeStep = {
    id: 'paint-1',
    title: 'Paint',
    stage: 'coat',
    ways: [
      {
        name: '',
        time: { fixedMinutes: 60, minutesPerM2: 0, minutesPerItem: 0 },
        stations: ['bench'],
        tools: [],
        thickness: 1,
        transferEfficiency: 1,
      },
    ],
    material: 'paint',
    supplies: [],
    people: 1,
    dusty: false,
    mayPause: false,
    coats: 1,
    between: [],
    disturbsOldPaint: false,
    source,
  };
  const second: RecipeStep = {
    ...step,
    id: 'paint-2',
    ...(withinHours !== undefined && { after: [{ step: 'paint-1', waitHours: 0, atMostHours: withinHours }] }),
  };
  const days = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
  const opening = {
    week: Object.fromEntries(days.map((d) => [d, always])) as Book['shop']['opening']['week'],
    days: {},
  };
  return {
    shop: {
      name: 'Shop',
      timeZone: 'UTC',
      units: 'metric',
      clock: 24,
      weekStartsOn: 'monday',
      currency: 'EUR',
      opening,
      rooms: [{ id: 'room', name: 'Room', air: { kind: 'constant', tempC: 23, rhPercent: 50 } }],
      stations: [{ id: 'bench', name: 'Bench', room: 'room', kind: 'bench', slots: 1 }],
      tools: [],
      hands: [{ id: 'owner', name: 'Owner', skills: [], hours: opening }],
      safeChance: 0.9,
    },
    materials: new Map([['paint', paint]]),
    recipes: new Map([['painted', { id: 'painted', name: 'Painted', about: '', steps: [step, second] }]]),
    pieces: [
      {
        id: 'stool',
        name: 'Stool',
        kind: 'stool',
        priceMinor: 0,
        costMinor: 0,
        mayCarryLead: false,
        joins: [],
        sections: [
          {
            id: 'seat',
            name: 'Seat',
            recipe: 'painted',
            areaM2: 0.3,
            items: 1,
            thicknessMm: 19,
            materials: {},
            without: [],
          },
        ],
      },
    ],
    journal,
  };
}
