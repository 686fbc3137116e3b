import { describe, expect, test } from 'vitest';
import type { Plan, PlannedPiece, PlannedStep } from '../../src/model/plan.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { RuleName } from '../../src/verify/breach.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { verify } from '../../src/verify/verify.ts';
import { planWith, situation, steps, tasks } from './base.ts';
import { enamel, enamelWindows, evidenceOf, on, planOf, putty, shop, step, way, zone } from './fixture.ts';
import { airWith, asking, broken, moved } from './support.ts';

interface Case {
  readonly what: string;
  readonly plan?: Plan;
  readonly of?: Situation;
  readonly over?: Partial<Evidence>;
  /** Nothing: the plan keeps every rule. */
  readonly breaks?: RuleName;
}

const withShop = (change: Partial<typeof shop>): Situation => ({
  ...situation,
  book: { ...situation.book, shop: { ...shop, ...change } },
});
const withMaterial = (id: string, change: object, of = situation): Situation => {
  const known = of.book.materials;
  return { ...of, book: { ...of.book, materials: new Map([...known, [id, { ...known.get(id)!, ...change }]]) } };
};
const hand = (id: string, change: Partial<(typeof shop.hands)[number]>): Situation =>
  withShop({ hands: shop.hands.map((h) => (h.id === id ? { ...h, ...change } : h)) });

/** `inspect` left out, so that the second coat may come on Tuesday. */
const lateTasks = asking({ inspect: undefined });
const late = (at: string, over: Partial<PlannedStep> = {}): Partial<PlannedStep> =>
  moved('coat2', { at: on('tue', at), over });
const scuff = (at: string): PlannedStep => step(tasks.scuff, { at: on('tue', at), station: 'booth' });
const lateCoat = (coatAt: string, ...more: PlannedStep[]): Plan => {
  const plan = planWith({ coat2: late(coatAt), inspect: undefined });
  return { ...plan, steps: [...plan.steps, ...more] };
};

const cases: Readonly<Record<string, readonly Case[]>> = {
  complete: [
    { what: 'a step is missing', plan: planWith({ inspect: undefined }), breaks: 'complete' },
    { what: 'a step comes twice', plan: planOf([...planWith().steps, steps.inspect]), breaks: 'complete' },
    {
      what: 'a step that nobody asked for',
      plan: planOf([...planWith().steps, { ...steps.inspect, id: 'desk/top/polish' }]),
      breaks: 'complete',
    },
    { what: 'an unknown way', plan: planWith({ inspect: { way: 'by magic' } }), breaks: 'complete' },
    { what: 'an unknown station', plan: planWith({ inspect: { station: 'moon' } }), breaks: 'complete' },
    { what: 'no span', plan: planWith({ inspect: { spans: [] } }), breaks: 'complete' },
    {
      what: 'an empty span',
      plan: planWith({ inspect: { spans: [{ start: on('tue', '08:00'), end: on('tue', '08:00') }] } }),
      breaks: 'complete',
    },
    {
      what: 'a span that ends before it starts',
      plan: planWith({ inspect: { spans: [{ start: on('tue', '08:10'), end: on('tue', '08:00') }] } }),
      breaks: 'complete',
    },
    {
      what: 'half minutes at the start',
      plan: planWith({ inspect: { spans: [{ start: on('tue', '08:00') + 0.5, end: on('tue', '08:10') }] } }),
      breaks: 'complete',
    },
    {
      what: 'half minutes at the end',
      plan: planWith({ inspect: { spans: [{ start: on('tue', '08:00'), end: on('tue', '08:10') + 0.5 }] } }),
      breaks: 'complete',
    },
    {
      what: 'spans one inside the other',
      plan: planWith({
        inspect: {
          spans: [
            { start: on('tue', '08:00'), end: on('tue', '08:10') },
            { start: on('tue', '08:09'), end: on('tue', '08:20') },
          ],
        },
      }),
      breaks: 'complete',
    },
    {
      what: 'steps behind a closed gate may be missing',
      plan: planWith({ sand: undefined, coat1: undefined, coat2: undefined, inspect: undefined }),
      of: { ...situation, leadTests: new Map() },
    },
    {
      what: 'steps that no gate holds may not',
      plan: planWith({ sand: undefined, coat1: undefined, coat2: undefined, inspect: undefined, glue: undefined }),
      of: { ...situation, leadTests: new Map() },
      breaks: 'complete',
    },
  ],
  order: [
    {
      what: 'a wait in the recipe that is just over',
      of: asking({
        inspect: { needs: [{ kind: 'order', task: 'desk/top/coat-2', waitHours: 17 }] },
      }),
    },
    {
      what: 'a wait in the recipe that lacks a minute',
      of: asking({
        inspect: { needs: [{ kind: 'order', task: 'desk/top/coat-2', waitHours: 17 + 1 / 60 }] },
      }),
      breaks: 'order',
    },
    {
      what: 'a step before the one of another section that it needs',
      of: asking({ glue: { needs: [{ kind: 'order', task: 'desk/legs/mask', waitHours: 0 }] } }),
      breaks: 'order',
    },
    {
      what: 'a step of another section begins as the one it needs ends',
      of: asking({ glue: { needs: [{ kind: 'order', task: 'desk/top/sand', waitHours: 0 }] } }),
    },
    {
      what: 'a step that nothing planned comes before',
      of: asking({ glue: { needs: [{ kind: 'order', task: 'desk/top/none', waitHours: 0 }] } }),
    },
    { what: 'begun this very minute', of: { ...situation, now: on('mon', '08:00') } },
    { what: 'begun a minute ago', of: { ...situation, now: on('mon', '08:01') }, breaks: 'order' },
    {
      what: 'just put off to then',
      of: { ...situation, notBefore: new Map([[tasks.unmask.id, on('tue', '08:30')]]) },
    },
    {
      what: 'put off to later',
      of: { ...situation, notBefore: new Map([[tasks.unmask.id, on('tue', '08:31')]]) },
      breaks: 'order',
    },
    ...(['13:00', '13:01'] as const).map((clock) => ({
      what: `the piece arrives at ${clock}`,
      of: {
        ...situation,
        book: {
          ...situation.book,
          pieces: situation.book.pieces.map((p) => (p.id === 'chair' ? { ...p, arrives: on('mon', clock) } : p)),
        },
      },
      ...(clock === '13:01' && { breaks: 'order' as const }),
    })),
  ],
  wait: [
    {
      what: 'a minute before the mark',
      plan: planWith({ fill: moved('fill', { at: on('mon', '11:14') }) }),
      breaks: 'wait',
    },
    {
      what: 'what was seen of the film makes it slower, and the mark comes just in time',
      plan: planWith({ inspect: moved('inspect', { station: 'booth' }) }),
      over: { factors: new Map([[tasks.coat2.id, 1.7]]) },
    },
    {
      what: 'what was seen of the film makes it too slow',
      plan: planWith({ inspect: moved('inspect', { station: 'booth' }) }),
      over: { factors: new Map([[tasks.coat2.id, 1.702]]) },
      breaks: 'wait',
    },
    {
      what: 'a film of nothing that dries lets the next step begin at its end',
      of: asking({ unmask: { needs: [{ kind: 'mark', task: tasks.mask.id, mark: 'cure' }] } }),
    },
    {
      what: 'a step before the end of one that lays no film',
      of: asking({ mask: { needs: [{ kind: 'mark', task: tasks.unmask.id, mark: 'cure' }] } }),
      breaks: 'wait',
    },
  ],
  window: [
    {
      what: 'a minute before the window opens',
      plan: planWith({ coat2: moved('coat2', { at: on('mon', '14:29') }) }),
      breaks: 'window',
    },
    ...([5, 4.98] as const).map((low) => ({
      what: `the window shuts ${low} hours after the coat`,
      of: asking({
        coat2: {
          needs: [
            {
              kind: 'window' as const,
              task: tasks.coat1.id,
              windows: [{ ...enamelWindows.early, shuts: { low, typical: 24, high: 30 } }],
            },
          ],
        },
      }),
      ...(low < 5 && { breaks: 'window' as const }),
    })),
    { what: 'prepared, in the late window', plan: lateCoat('13:20', scuff('13:00')), of: lateTasks },
    { what: 'in the late window without its preparation', plan: lateCoat('13:20'), of: lateTasks, breaks: 'window' },
    {
      what: 'the recipe prepares anyway',
      plan: lateCoat('13:20'),
      of: asking({
        inspect: undefined,
        coat2: {
          needs: [{ kind: 'window', task: tasks.coat1.id, windows: [enamelWindows.early, enamelWindows.late] }],
        },
      }),
    },
    {
      what: 'a preparation that no window asks for',
      plan: {
        ...planWith({ inspect: undefined }),
        steps: [...planWith({ inspect: undefined }).steps, scuff('13:00')],
      },
      of: lateTasks,
      breaks: 'window',
    },
    { what: 'between the two windows', plan: lateCoat('08:00'), of: lateTasks, breaks: 'window' },
    {
      what: 'a film without a window of its own may be coated from its end',
      of: asking({
        unmask: { needs: [{ kind: 'window', task: tasks.mask.id, windows: [enamelWindows.late] }] },
      }),
    },
  ],
  within: [
    {
      what: 'a minute late',
      plan: planWith({ unmask: moved('unmask', { at: on('tue', '08:31'), hands: ['helper'] }) }),
      breaks: 'within',
    },
  ],
  means: [
    {
      what: 'the wrong kind of station',
      plan: planWith({ mask: moved('mask', { station: 'rack' }) }),
      breaks: 'means',
    },
    { what: 'nobody with the skill', of: hand('owner', { skills: [] }), breaks: 'means' },
    { what: 'another skill', of: hand('owner', { skills: ['lift'] }), breaks: 'means' },
    {
      what: 'one of two has the skill',
      of: asking(
        { carve: { ways: [{ ...tasks.carve.ways[0]!, skill: 'lift' }] } },
        hand('friend', { skills: ['lift'] }),
      ),
    },
    { what: 'too few people', plan: planWith({ carve: { hands: ['owner'] } }), breaks: 'means' },
    { what: 'one person counted twice', plan: planWith({ carve: { hands: ['owner', 'owner'] } }), breaks: 'means' },
    {
      what: 'a second entry of the only hand',
      plan: planWith({ mask: { hands: ['owner', 'owner'] } }),
      breaks: 'means',
    },
    { what: 'nobody', plan: planWith({ mask: { hands: [] } }), breaks: 'means' },
    { what: 'too many people', plan: planWith({ unmask: { hands: ['owner', 'helper'] } }), breaks: 'means' },
    { what: 'somebody unknown', plan: planWith({ mask: { hands: ['ghost'] } }), breaks: 'means' },
    { what: 'no tool', plan: planWith({ sand: { tools: [] } }), breaks: 'means' },
    { what: 'another tool', plan: planWith({ sand: { tools: ['sprayer'] } }), breaks: 'means' },
    { what: 'an unknown tool', of: withShop({ tools: shop.tools.slice(0, 2) }), breaks: 'means' },
    { what: 'another room than its station', plan: planWith({ mask: { room: 'spray-room' } }), breaks: 'means' },
  ],
  capacity: [
    {
      what: 'a hand goes straight on',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '08:20'), station: 'booth' }) }),
    },
    {
      what: 'a hand in two places for a minute',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '08:21'), station: 'booth' }) }),
      breaks: 'capacity',
    },
    {
      what: 'clamps taken off as the glue is dry',
      plan: planWith({ clamp: moved('clamp', { at: on('mon', '11:15') }) }),
    },
    {
      what: 'clamps taken off a minute before the glue is dry',
      plan: planWith({ clamp: moved('clamp', { at: on('mon', '11:14') }) }),
      breaks: 'capacity',
    },
    {
      what: 'two pairs of clamps',
      plan: planWith({ clamp: moved('clamp', { at: on('mon', '11:14') }) }),
      of: withShop({ tools: shop.tools.map((t) => (t.id === 'clamps' ? { ...t, count: 2 } : t)) }),
    },
    {
      what: 'one tool for two steps at once',
      of: asking({ glue: { ways: [way(15, { tools: ['sprayer'], film: { material: 'glue', thickness: 1 } })] } }),
      plan: planWith({ glue: { tools: ['sprayer'] } }),
      breaks: 'capacity',
    },
    {
      what: 'a slot taken as it falls free',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '08:20'), hands: ['helper'] }) }),
    },
    {
      what: 'a slot taken a minute early',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '08:21'), hands: ['helper'] }) }),
      breaks: 'capacity',
    },
    {
      what: 'a slot where something dries',
      plan: planWith({ clamp: moved('clamp', { station: 'bench-2' }) }),
      breaks: 'capacity',
    },
    {
      what: 'a bench with two slots',
      plan: planWith({ clamp: moved('clamp', { station: 'bench-2' }) }),
      of: withShop({ stations: shop.stations.map((s) => (s.id === 'bench-2' ? { ...s, slots: 2 } : s)) }),
    },
    {
      what: 'moved as soon as it is safe',
      plan: planWith({ fill: moved('fill', { station: 'bench-1' }) }),
    },
    {
      what: 'moved while it is not safe to',
      plan: planWith({ coat2: moved('coat2', { station: 'booth-2' }) }),
      breaks: 'capacity',
    },
    {
      what: 'sections of one object one after the other',
      of: asking({ unmask: { object: 'desk/top' } }),
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '08:20'), station: 'bench-2', hands: ['helper'] }) }),
    },
    {
      what: 'sections of one object at once',
      of: asking({ unmask: { object: 'desk/top' } }),
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '08:21'), station: 'bench-2', hands: ['helper'] }) }),
      breaks: 'capacity',
    },
    {
      what: 'the same bench for two sections of one object that dry there',
      of: asking({ clamp: { object: 'desk/legs' } }),
      plan: planWith({
        clamp: moved('clamp', { station: 'bench-2' }),
        mask: moved('mask', { station: 'bench-2', at: on('mon', '13:30') }),
      }),
    },
  ],
  hours: [
    {
      what: 'before the shop opens',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '07:59') }) }),
      breaks: 'hours',
    },
    { what: 'until the shop closes', plan: planWith({ inspect: moved('inspect', { at: on('tue', '16:50') }) }) },
    {
      what: 'past closing',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '16:51') }) }),
      breaks: 'hours',
    },
    {
      what: 'the hand has gone home',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '13:00'), hands: ['helper'] }) }),
      breaks: 'hours',
    },
    {
      what: 'a hand that would work while the shop is closed',
      plan: planWith({ inspect: moved('inspect', { at: on('tue', '07:59'), hands: ['helper'] }) }),
      of: hand('helper', {
        hours: { ...shop.opening, week: { ...shop.opening.week, tuesday: [{ from: 0, to: 1440 }] } },
      }),
      breaks: 'hours',
    },
    {
      what: 'a minute too little work',
      plan: planWith({
        carve: { spans: [steps.carve.spans[0]!, { start: on('tue', '09:00'), end: on('tue', '11:14') }] },
      }),
      breaks: 'hours',
    },
    {
      what: 'a minute too much work',
      plan: planWith({
        carve: { spans: [steps.carve.spans[0]!, { start: on('tue', '09:00'), end: on('tue', '11:16') }] },
      }),
      breaks: 'hours',
    },
    {
      what: 'a pause in what must be done in one go',
      plan: planWith({
        inspect: {
          spans: [
            { start: on('tue', '08:00'), end: on('tue', '08:05') },
            { start: on('tue', '08:10'), end: on('tue', '08:15') },
          ],
        },
      }),
      breaks: 'hours',
    },
    {
      what: 'work through the night',
      plan: planWith({ carve: { spans: [{ start: on('mon', '15:15'), end: on('mon', '19:15') }] } }),
      breaks: 'hours',
    },
    {
      what: 'a day on which the shop is closed',
      of: withShop({ opening: { ...shop.opening, days: { '2027-01-12': [] } } }),
      breaks: 'hours',
    },
  ],
  air: [
    // The first coat minds the air from 09:00 to 11:30, the second from 14:30 to 17:00.
    ...[
      { from: '11:30', to: '14:30' },
      { from: '17:00', to: '17:30' },
    ].map(({ from, to }) => ({
      what: `damp from ${from} to ${to}, when nothing minds`,
      over: { air: airWith('spray-room', on('mon', from), on('mon', to), { rhPercent: 81 }) },
    })),
    ...[
      { from: '08:00', to: '09:01', rhPercent: 81 },
      { from: '11:29', to: '11:30', rhPercent: 81 },
      { from: '14:00', to: '14:31', rhPercent: 81 },
      { from: '16:59', to: '17:30', rhPercent: 81 },
      { from: '16:59', to: '17:30', rhPercent: 19 },
      { from: '16:59', to: '17:00', tempC: 30.1 },
      { from: '16:59', to: '17:00', tempC: 9.9 },
    ].map(({ from, to, ...air }) => ({
      what: `${air.tempC ?? 23} °C and ${air.rhPercent ?? 50} % from ${from} to ${to}`,
      over: { air: airWith('spray-room', on('mon', from), on('mon', to), air) },
      breaks: 'air' as const,
    })),
    ...[{ rhPercent: 80 }, { rhPercent: 20 }, { tempC: 30 }, { tempC: 10 }].map((air) => ({
      what: `just inside the limits at ${air.tempC ?? 23} °C and ${air.rhPercent ?? 50} %`,
      over: { air: airWith('spray-room', on('mon', '16:59'), on('mon', '17:00'), air) },
    })),
    {
      what: 'the other room does not matter',
      over: { air: airWith('workshop', on('mon', '08:00'), on('mon', '17:00'), { rhPercent: 99 }) },
    },
    // Dew point at 23 °C by the Magnus formula: 19.97 °C at 83 % humidity, 20.16 °C at 84 %.
    ...[83, 84].map((rhPercent) => ({
      what: `dew point near at ${rhPercent} %`,
      of: withMaterial('enamel', { limits: { ...enamel.limits!, maxRhPercent: 100 } }),
      over: { air: airWith('spray-room', on('mon', '15:00'), on('mon', '15:10'), { rhPercent }) },
      ...(rhPercent === 84 && { breaks: 'air' as const }),
    })),
    ...[
      { minFilmTempC: 22.9, what: 'just warm enough for the film to form' },
      { minFilmTempC: 23.001, what: 'too cold for the film to form', breaks: 'air' as const },
    ].map(({ minFilmTempC, ...rest }) => ({ ...rest, of: withMaterial('enamel', { minFilmTempC }) })),
  ],
  dust: [
    {
      what: 'wet a minute before the dust has settled',
      plan: planWith({ glue: moved('glue', { at: on('mon', '08:59') }) }),
      breaks: 'dust',
    },
    {
      what: 'dust from the minute in which all is dust-free',
      plan: planWith({ clamp: moved('clamp', { at: on('mon', '11:15') }) }),
      of: asking({ mask: { dusty: true } }),
    },
    {
      what: 'dust a minute before all is dust-free',
      plan: planWith({ clamp: moved('clamp', { at: on('mon', '11:16') }) }),
      of: asking({ mask: { dusty: true } }),
      breaks: 'dust',
    },
    { what: 'a coat begun in the middle of dusty work', of: asking({ clamp: { dusty: true } }), breaks: 'dust' },
    { what: 'dust from the film itself', of: asking({ coat1: { dusty: true } }) },
  ],
  'pot-life': [
    {
      what: 'used up a minute late',
      of: withMaterial('putty', { potLife: { ...putty.potLife!, low: 44 / 60 } }),
      breaks: 'pot-life',
    },
    { what: 'no pot life', of: withMaterial('putty', { potLife: undefined }) },
  ],
  journal: [
    {
      what: 'done as planned',
      plan: planWith({ sand: { done: true } }),
      of: { ...situation, done: new Map([[tasks.sand.id, { from: on('mon', '08:00'), to: on('mon', '09:00') }]]) },
    },
    ...[
      { from: '07:59', to: '09:00' },
      { from: '08:00', to: '08:59' },
      { from: '08:00', to: '09:00', station: 'bench-2' },
      { from: '08:00', to: '09:00', way: 'by hand' },
    ].map(({ from, to, ...rest }) => ({
      what: `done otherwise: ${JSON.stringify({ from, to, ...rest })}`,
      plan: planWith({ sand: { done: true } }),
      of: { ...situation, done: new Map([[tasks.sand.id, { from: on('mon', from), to: on('mon', to), ...rest }]]) },
      breaks: 'journal' as const,
    })),
    {
      what: 'done there, in that way',
      plan: planWith({ sand: { done: true } }),
      of: {
        ...situation,
        done: new Map([
          [tasks.sand.id, { from: on('mon', '08:00'), to: on('mon', '09:00'), station: 'bench-1', way: '' }],
        ]),
      },
    },
    {
      what: 'done, but not shown so',
      of: { ...situation, done: new Map([[tasks.sand.id, { from: on('mon', '08:00'), to: on('mon', '09:00') }]]) },
      breaks: 'journal',
    },
    { what: 'shown as done', plan: planWith({ sand: { done: true } }), breaks: 'journal' },
    {
      what: 'begun as planned',
      plan: planWith({ sand: { atWork: true } }),
      of: { ...situation, atWork: new Map([[tasks.sand.id, on('mon', '08:00')]]) },
    },
    {
      what: 'begun at another time',
      plan: planWith({ sand: { atWork: true } }),
      of: { ...situation, atWork: new Map([[tasks.sand.id, on('mon', '08:01')]]) },
      breaks: 'journal',
    },
    {
      what: 'begun, but not shown so',
      of: { ...situation, atWork: new Map([[tasks.sand.id, on('mon', '08:00')]]) },
      breaks: 'journal',
    },
    { what: 'shown as begun', plan: planWith({ sand: { atWork: true } }), breaks: 'journal' },
  ],
  gate: [
    { what: 'no test on record', of: { ...situation, leadTests: new Map() }, breaks: 'gate' },
    {
      what: 'on record a minute too late',
      of: { ...situation, leadTests: new Map([['desk', { at: on('mon', '08:01'), found: false }]]) },
      breaks: 'gate',
    },
    {
      what: 'lead was found',
      of: { ...situation, leadTests: new Map([['desk', { at: on('mon', '07:00'), found: true }]]) },
      breaks: 'gate',
    },
    { what: 'nothing that disturbs old paint', of: asking({ sand: { gated: false } }, { leadTests: new Map() }) },
  ],
};

for (const [rule, all] of Object.entries(cases))
  describe(rule, () => {
    test.each(all)('$what', ({ plan = planWith(), of = situation, over = {}, breaks }) => {
      expect(broken(plan, of, over)).toEqual(breaks === undefined ? [] : [breaks]);
    });
  });

test('a plan that keeps every rule has no breach at all', () => {
  expect(verify(evidenceOf(situation), planWith())).toEqual([]);
});

test('a preparation after its coat is none', () => {
  // The dust of it falls on the wet coat, too.
  expect(broken(lateCoat('13:20', scuff('14:00')), lateTasks)).toEqual(['dust', 'window']);
});

test('a preparation before the coat beneath is none', () => {
  const early = step(tasks.scuff, { at: on('mon', '08:40'), station: 'booth', hands: ['friend'] });
  expect(broken(lateCoat('13:20', early), lateTasks)).toEqual(['capacity', 'order', 'wait', 'window']);
});

test('an empty plan of an empty shop has no breach', () => {
  expect(verify(evidenceOf({ ...situation, tasks: [] }), planOf([]))).toEqual([]);
});

describe('what is done is not reproached', () => {
  const from = on('mon', '05:00');
  const before = (name: keyof typeof steps, over: Partial<PlannedStep> = {}) =>
    ({
      ...moved(name, { at: from, hands: ['helper'], ...('station' in over && { station: over.station }) }),
      ...over,
      done: true,
    }) as const;

  test('not for its hour, hand, station, tools, length, gate or order', () => {
    const plan = planWith({ sand: before('sand', { tools: [], station: 'booth', room: 'moon', hands: [] }) });
    const of: Situation = {
      ...situation,
      leadTests: new Map([['desk', { at: on('mon', '07:00'), found: false }]]),
      done: new Map([[tasks.sand.id, { from, to: from + 60 }]]),
    };
    expect(broken(plan, of)).toEqual([]);
  });

  test('but what comes is reproached for what it does to it', () => {
    const plan = planWith({ glue: { ...moved('glue', { at: on('mon', '08:30') }), done: true } });
    const of: Situation = {
      ...situation,
      done: new Map([[tasks.glue.id, { from: on('mon', '08:30'), to: on('mon', '08:45') }]]),
    };
    expect(broken(plan, of)).toEqual(['dust']);
  });

  test('not even for each other', () => {
    const plan = planWith({
      glue: { ...moved('glue', { at: on('mon', '08:30'), station: 'bench-1', hands: ['owner'] }), done: true },
      sand: { done: true },
    });
    const of: Situation = {
      ...situation,
      done: new Map([
        [tasks.glue.id, { from: on('mon', '08:30'), to: on('mon', '08:45') }],
        [tasks.sand.id, { from: on('mon', '08:00'), to: on('mon', '09:00') }],
      ]),
    };
    // The legs are still drying on the bench when the next step moves them to another.
    expect(broken(plan, of)).toEqual([]);
  });

  test('done in no time at all', () => {
    const at = on('mon', '09:00');
    const plan = planWith({ sand: { spans: [{ start: at, end: at }], done: true } });
    expect(broken(plan, { ...situation, done: new Map([[tasks.sand.id, { from: at, to: at }]]) })).toEqual([]);
    expect(broken(planWith({ sand: { spans: [{ start: at, end: at }] } }))).toEqual(['complete']);
  });
});

describe('what the plan shows', () => {
  const shownWrong = (change: Parameters<typeof planWith>[0]) =>
    expect(broken(planWith(change), situation, {}, true)).toEqual(['shown']);
  const dry = steps.coat2.dry!;
  const window = steps.coat2.window!;

  test.each(['early', 'typical', 'late'] as const)('a dry mark a minute off at the %s end', (pace) => {
    shownWrong({ coat2: { dry: { ...dry, touch: { ...dry.touch!, [pace]: dry.touch![pace] + 1 } } } });
  });
  test('a dry mark missing, one too many, or marks of what does not dry', () => {
    const { touch, ...rest } = dry;
    shownWrong({ coat2: { dry: rest } });
    shownWrong({ coat2: { dry: { ...dry, cure: touch! } } });
    shownWrong({ mask: { dry: { touch: touch! } } });
  });
  test('another window than it has', () => {
    shownWrong({ coat2: { window: { ...window, opens: window.opens - 1 } } });
    shownWrong({ coat2: { window: { ...window, shuts: window.shuts! + 1 } } });
    shownWrong({ coat2: { window: { opens: window.opens, of: window.of } } });
    shownWrong({ coat2: { window: { ...window, prep: 'scuff' } } });
    shownWrong({ coat2: { window: { ...window, of: tasks.sand.id } } });
    shownWrong({ mask: { window } });
    const { window: gone, ...without } = steps.coat2;
    expect(gone).toBe(window);
    const plan = planOf(planWith().steps.map((s) => (s.id === without.id ? without : s)));
    expect(broken(plan, situation, {}, true)).toEqual(['shown']);
  });
  test('a window in which the step does not lie', () => {
    const plan = lateCoat('13:20', scuff('13:00'));
    const showing = (shown: PlannedStep['window']): Plan =>
      planOf(
        plan.steps.map((s) => (s.id === tasks.coat2.id ? { ...s, ...(shown && { window: shown }), after: [] } : s)),
      );
    const right = { opens: on('tue', '11:30'), prep: 'scuff', of: tasks.coat1.id } as const;
    const first = showing(right);
    const holds = planOf(
      first.steps.map((s) => (s.id === tasks.coat1.id ? { ...s, holdsStationUntil: on('mon', '19:30') } : s)),
    );
    expect(broken(holds, lateTasks, {}, true)).toEqual([]);
    const wrong = planOf(holds.steps.map((s) => (s.id === tasks.coat2.id ? { ...s, window } : s)));
    expect(broken(wrong, lateTasks, {}, true)).toEqual(['shown']);
  });
  test('a wait that is not so', () => {
    shownWrong({ inspect: { after: [{ step: tasks.coat2.id, mark: 'handle', notBefore: on('tue', '01:01') }] } });
    shownWrong({ inspect: { after: [{ step: tasks.coat2.id, mark: 'sand', notBefore: on('tue', '01:00') }] } });
    shownWrong({ inspect: { after: [{ step: tasks.coat1.id, mark: 'handle', notBefore: on('tue', '01:00') }] } });
    shownWrong({ coat2: { after: [{ step: tasks.coat1.id, notBefore: on('mon', '09:31') }] } });
    shownWrong({ unmask: { after: [{ step: tasks.mask.id, notBefore: on('tue', '09:00') }] } });
  });
  test('waits that are so', () => {
    const change = {
      inspect: { after: [{ step: tasks.coat2.id, notBefore: on('mon', '16:00') }] },
      coat2: { after: [{ step: tasks.coat1.id, mark: 'recoat', notBefore: on('tue', '11:30') }] },
    } as const;
    expect(broken(planWith(change), situation, {}, true)).toEqual([]);
  });
  test('a place kept too long, too short, or handed over to nobody', () => {
    shownWrong({ glue: { holdsStationUntil: on('mon', '11:16') } });
    shownWrong({ glue: { holdsStationUntil: on('mon', '09:15') } });
    shownWrong({ coat1: { holdsStationUntil: on('mon', '14:29') } });
    shownWrong({ coat1: { holdsStationUntil: on('mon', '09:00') } });
    shownWrong({ sand: { holdsStationUntil: on('mon', '08:00') } });
    expect(broken(planWith({ coat1: { holdsStationUntil: on('mon', '19:30') } }), situation, {}, true)).toEqual([]);
  });
  test('the name of something else', () => {
    shownWrong({ coat2: { piece: 'chair' } });
    shownWrong({ coat2: { section: 'legs' } });
    shownWrong({ coat2: { step: 'coat-1' } });
    shownWrong({ coat2: { title: 'Varnish' } });
    shownWrong({ coat2: { stage: 'prime' } });
    shownWrong({ coat2: { coat: 1 } });
    shownWrong({ coat2: { material: 'glue' } });
    shownWrong({ mask: { material: 'glue' } });
  });
  test.each([
    { what: 'a bound above its value', proof: { objective: [{ name: 'late', value: 4, bound: 5 }] } },
    { what: 'a bound that is no number', proof: { objective: [{ name: 'late', value: 4, bound: Number.NaN }] } },
    { what: 'a gap below nothing', proof: { gapPercent: -1, proven: false } },
    { what: 'proven with a gap', proof: { gapPercent: 1, proven: true } },
  ])('a proof with $what', ({ proof }) => {
    const plan = planWith();
    expect(broken({ ...plan, proof: { ...plan.proof, ...proof } }, situation, {}, true)).toEqual(['shown']);
  });
  describe('of a piece', () => {
    const wanted = (by: number): Situation => ({
      ...situation,
      book: {
        ...situation.book,
        pieces: situation.book.pieces.map((p) => (p.id === 'desk' ? { ...p, wantedBy: by } : p)),
      },
    });
    const plan = planWith();
    const over = plan.pieces.find((p) => p.id === 'desk')!.ready.handedOver!;
    const showing = (change: Partial<PlannedPiece>): Plan => ({
      ...plan,
      pieces: plan.pieces.map((p) => (p.id === 'desk' ? { ...p, ...change } : p)),
    });
    const shown = (p: Plan, of: Situation) => broken(p, of, {}, true);
    test('the desk is over at Tue 09:00', () => {
      expect(over.safe).toBe(on('tue', '09:00'));
    });
    test('on time, to the minute', () => {
      expect(shown(showing({ wantedBy: over.safe }), wanted(over.safe))).toEqual([]);
      expect(shown(showing({ wantedBy: over.safe, lateHours: 1 / 60 }), wanted(over.safe))).toEqual(['shown']);
    });
    test('late', () => {
      const of = wanted(over.safe - 90);
      expect(shown(showing({ wantedBy: over.safe - 90, lateHours: 1.5 }), of)).toEqual([]);
      expect(shown(showing({ wantedBy: over.safe - 90, lateHours: 1 }), of)).toEqual(['shown']);
      expect(shown(showing({ wantedBy: over.safe - 90 }), of)).toEqual(['shown']);
      expect(shown(showing({ lateHours: 1.5 }), of)).toEqual(['shown']);
    });
    test('handed over before it is over, or never', () => {
      const safe = over.safe;
      expect(shown(showing({ ready: { handedOver: { ...over, safe: safe - 1 } } }), situation)).toEqual(['shown']);
      expect(shown(showing({ ready: { handedOver: { ...over, safe: safe + 1 } } }), situation)).toEqual([]);
      expect(shown(showing({ ready: {} }), situation)).toEqual(['shown']);
    });
    test('twice, or not at all', () => {
      expect(shown({ ...plan, pieces: [...plan.pieces, ...plan.pieces] }, situation)).toEqual(['shown']);
      expect(shown({ ...plan, pieces: [] }, situation)).toEqual(['shown']);
      expect(shown({ ...planOf([]), pieces: [] }, { ...situation, tasks: [] })).toEqual([]);
    });
    test('nothing while a gate holds it', () => {
      const left = planWith({ sand: undefined, coat1: undefined, coat2: undefined, inspect: undefined });
      const pieces = left.pieces.map((p) => ({ ...p, ...(p.id === 'desk' && { ready: {} }) }));
      expect(shown({ ...left, pieces }, { ...situation, leadTests: new Map() })).toEqual([]);
    });
  });
  test('a proof with a gap that says so', () => {
    const plan = planWith();
    const proof = { ...plan.proof, objective: [{ name: 'late', value: 5, bound: 5 }], gapPercent: 3, proven: false };
    expect(broken({ ...plan, proof }, situation, {}, true)).toEqual([]);
  });
});

test('the fixture lies in the zone that it says', () => {
  expect(situation.book.shop.timeZone).toBe(zone);
});
