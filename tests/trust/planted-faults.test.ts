import { afterEach, beforeAll, expect, test, vi } from 'vitest';
import type { Activity, Lag, Mode, Problem } from '../../src/engine/problem.ts';
import type { Material } from '../../src/model/material.ts';
import type { PlannedStep } from '../../src/model/plan.ts';
import type { Shop } from '../../src/model/shop.ts';
import type { Situation } from '../../src/model/situation.ts';
import { makePlan, type Made } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt } from '../../src/time/zone.ts';
import type { RuleName } from '../../src/verify/breach.ts';
import { demo } from '../trade/shipped.ts';

// Whatever the scheduler gets wrong, the verifier must see. Here the scheduler is wrong on purpose: its problem, what it
// takes for the shop, or what it reads back from a schedule is spoilt, and the rest goes its usual way. The plan that it
// then makes of the demo shop must be refused, for the rule that the fault breaks.

type Steps = readonly PlannedStep[];
interface Fault {
  readonly problem?: (problem: Problem) => Problem;
  readonly situation?: (situation: Situation) => Situation;
  readonly steps?: (steps: Steps) => Steps;
}
const planted = vi.hoisted((): { fault: Fault } => ({ fault: {} }));

vi.mock('../../src/schedule/compile.ts', async (original) => {
  const real = await original<typeof import('../../src/schedule/compile.ts')>();
  const compile: typeof real.compile = (...all) => {
    const compiled = real.compile(...all);
    return { ...compiled, problem: planted.fault.problem?.(compiled.problem) ?? compiled.problem };
  };
  return { ...real, compile };
});

vi.mock('../../src/schedule/plan-shop.ts', async (original) => {
  const real = await original<typeof import('../../src/schedule/plan-shop.ts')>();
  const planShop: typeof real.planShop = (situation, ...rest) =>
    real.planShop(planted.fault.situation?.(situation) ?? situation, ...rest);
  return { ...real, planShop };
});

vi.mock('../../src/schedule/decode.ts', async (original) => {
  const real = await original<typeof import('../../src/schedule/decode.ts')>();
  const decode: typeof real.decode = (...all) => {
    const steps = real.decode(...all);
    return planted.fault.steps === undefined ? steps : [...planted.fault.steps(steps)];
  };
  return { ...real, decode };
});

const lags = (change: (lag: Lag) => Lag | undefined): Fault => ({
  problem: (p) => ({ ...p, lags: p.lags.flatMap((lag) => change(lag) ?? []) }),
});
const activities = (change: (activity: Activity) => Activity): Fault => ({
  problem: (p) => ({ ...p, activities: p.activities.map(change) }),
});
const modes = (change: (mode: Mode) => Mode): Fault => activities((a) => ({ ...a, modes: a.modes.map(change) }));
const without = <T extends object, K extends keyof T>(of: T, ...keys: readonly K[]): Omit<T, K> =>
  Object.fromEntries(Object.entries(of).filter(([key]) => !(keys as readonly string[]).includes(key))) as Omit<T, K>;
const shop = (change: (shop: Shop) => Shop): Fault => ({
  situation: (s) => ({ ...s, book: { ...s.book, shop: change(s.book.shop) } }),
});
const materials = (change: (material: Material) => Material): Fault => ({
  situation: (s) => {
    const changed = new Map([...s.book.materials].map(([id, m]) => [id, change(m)]));
    return { ...s, book: { ...s.book, materials: changed } };
  },
});
const everyStep = (change: (step: PlannedStep) => PlannedStep): Fault => ({ steps: (steps) => steps.map(change) });

/** Only in the garage where that can be; modes keep their numbers. */
const inGarage = (activity: Activity): Activity => {
  const there = (mode: Mode) => mode.name.includes('in garage') && mode.starts?.length !== 0;
  if (!activity.modes.some(there)) return activity;
  return { ...activity, modes: activity.modes.map((m) => (there(m) ? m : { ...m, starts: [] })) };
};

const allDay = [{ from: 0, to: 1440 }];
const everyHour = {
  week: {
    monday: allDay,
    tuesday: allDay,
    wednesday: allDay,
    thursday: allDay,
    friday: allDay,
    saturday: allDay,
    sunday: allDay,
  },
  days: {},
};

const faults: readonly (readonly [string, Fault, RuleName])[] = [
  ['waits for dry marks are left out', lags((l) => (typeof l.least === 'object' ? undefined : l)), 'wait'],
  ['the order of steps is left out', lags((l) => (typeof l.least === 'number' ? undefined : l)), 'order'],
  ['windows that shut and tapes that must be off are left out', lags((l) => ({ ...without(l, 'most') })), 'window'],
  ['lags that hang on a choice are left out', lags((l) => (l.when === undefined ? l : undefined)), 'wait'],
  ['all lags are left out', { problem: (p) => ({ ...p, lags: [] }) }, 'window'],
  [
    'places, hands and tools have no end',
    { problem: (p) => ({ ...p, resources: p.resources.map((r) => ({ ...r, capacity: 99 })) }) },
    'capacity',
  ],
  ['what is wet gives its place up', modes((m) => ({ ...m, uses: m.uses.map((u) => without(u, 'hold')) })), 'capacity'],
  ['nothing uses anything', modes((m) => ({ ...m, uses: [] })), 'capacity'],
  ['dust and wet films go together', modes((m) => without(m, 'presences')), 'dust'],
  [
    'a film is dust-free at once',
    modes((m) => ({ ...m, presences: (m.presences ?? []).map((p) => without(p, 'until')) })),
    'dust',
  ],
  ['work starts at any hour', modes((m) => without(m, 'starts', 'calendar')), 'hours'],
  ['work is over in half the time', modes((m) => ({ ...m, duration: Math.floor(m.duration / 2) })), 'hours'],
  [
    'it is planned from the day before yesterday on',
    { problem: (p) => ({ ...modes((m) => without(m, 'starts', 'calendar')).problem!(p), from: p.from - 2880 }) },
    'order',
  ],
  [
    'the shop never shuts',
    shop((s) => ({ ...s, opening: everyHour, hands: s.hands.map((h) => ({ ...h, hours: everyHour })) })),
    'hours',
  ],
  ['the clock is one of another zone', shop((s) => ({ ...s, timeZone: 'America/Chicago' })), 'hours'],
  [
    'the helper does all that the owner should',
    everyStep((s) => ({ ...s, hands: s.hands.map(() => 'helper') })),
    'capacity',
  ],
  [
    'every station has more slots than it has',
    shop((s) => ({ ...s, stations: s.stations.map((each) => ({ ...each, slots: 9 })) })),
    'capacity',
  ],
  [
    'there are more sanders and sprayers',
    shop((s) => ({ ...s, tools: s.tools.map((t) => ({ ...t, count: 9 })) })),
    'capacity',
  ],
  [
    'the limits of the air are left out, and first coats go on in the cold garage',
    {
      ...materials((m) => without(m, 'limits', 'minFilmTempC')),
      ...activities((a) => (/(prime|paint-1|stain|oil-1)$/.test(a.name) ? inGarage(a) : a)),
    },
    'air',
  ],
  [
    'a film dries in half the time',
    materials((m) => ({
      ...m,
      marks: Object.fromEntries(
        Object.entries(m.marks).map(([k, h]) => [
          k,
          { ...h, typical: h.typical / 2, low: h.low / 2, high: h.high / 2 },
        ]),
      ),
    })),
    'wait',
  ],
  [
    'the lead gate stands open',
    {
      situation: (s) => ({
        ...s,
        leadTests: new Map(s.book.pieces.map((p) => [p.id, { at: s.now, found: false }])),
      }),
    },
    'gate',
  ],
  [
    'pieces come before they arrive',
    { situation: (s) => ({ ...s, book: { ...s.book, pieces: s.book.pieces.map((p) => without(p, 'arrives')) } }) },
    'order',
  ],
  ['a step is forgotten', { steps: (steps) => steps.slice(1) }, 'complete'],
  ['a step is laid twice', { steps: (steps) => [...steps, ...steps.slice(0, 1)] }, 'complete'],
  ['nobody does the work', everyStep((s) => ({ ...s, hands: [] })), 'means'],
  ['all is done at one bench', everyStep((s) => ({ ...s, station: 'bench-1', room: 'workshop' })), 'capacity'],
  ['the room that is shown is another', everyStep((s) => ({ ...s, room: 'garage' })), 'means'],
  ['no tool is taken', everyStep((s) => ({ ...s, tools: [] })), 'means'],
  [
    'every step is an hour later than it is',
    everyStep((s) => ({ ...s, spans: s.spans.map(({ start, end }) => ({ start: start + 60, end: end + 60 })) })),
    'hours',
  ],
  [
    'dry marks are shown an hour too early',
    everyStep((s) => ({
      ...s,
      ...(s.dry && {
        dry: Object.fromEntries(
          Object.entries(s.dry).map(([k, t]) => [
            k,
            { early: t.early - 60, typical: t.typical - 60, late: t.late - 60 },
          ]),
        ),
      }),
    })),
    'shown',
  ],
  ['a place is shown free too early', everyStep((s) => ({ ...s, holdsStationUntil: s.spans[0]!.end })), 'shown'],
];

/** Enough of the demo shop for every fault to tell. */
const chosen = ['pine-washstand', 'china-cabinet', 'kitchen-chairs', 'piano-stool', 'oak-table'];
let situation: Situation;
beforeAll(() => {
  const book = { ...demo(), pieces: demo().pieces.filter((p) => chosen.includes(p.id)) };
  situation = situationOf(book, minuteAt('2027-01-11', 7 * 60 + 30, book.shop.timeZone));
});
afterEach(() => void (planted.fault = {}));

/** The scheduler sees no lead tests but those that a fault gives it: none has been made. */
const make = (): Made => makePlan({ ...situation, leadTests: new Map() }, { seed: 1, steps: 1 });

test('without a fault the demo shop has a plan', () => {
  expect(make().kind).toBe('plan');
}, 300_000);

test.each(faults)(
  'where %s, the plan is refused',
  (_, fault, rule) => {
    planted.fault = fault;
    const made = make();
    expect(made.kind).toBe('broken');
    if (made.kind === 'broken') expect(made.breaches.map((b) => b.rule)).toContain(rule);
  },
  300_000,
);
