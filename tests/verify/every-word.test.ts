import { describe, expect, test } from 'vitest';
import { mechanisms } from '../../src/model/material.ts';
import type { Material } from '../../src/model/material.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { WindowChoice } from '../../src/model/task.ts';
import type { Breach } from '../../src/verify/breach.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { verify } from '../../src/verify/verify.ts';
import { planWith, situation, steps, tasks } from './base.ts';
import { enamel, enamelWindows, evidenceOf, on, planOf, putty, shop, step, way } from './fixture.ts';
import { airWith, asking, moved } from './support.ts';

// What words.test.ts leaves: each way in which a rule can be broken, with its words, the steps it names and its minute.

type Told = [steps: readonly string[], at: number, text: string];
const told = (rule: Breach['rule'], plan: Plan = planWith(), of: Situation = situation, over: Partial<Evidence> = {}) =>
  verify(evidenceOf(of, over), plan)
    .filter((b) => b.rule === rule)
    .map((b): Told => [b.steps, b.at, b.text]);

const withShop = (change: Partial<typeof shop>): Situation => ({
  ...situation,
  book: { ...situation.book, shop: { ...shop, ...change } },
});
const withEnamel = (change: Partial<Material>): Situation => ({
  ...situation,
  book: { ...situation.book, materials: new Map([...situation.book.materials, ['enamel', { ...enamel, ...change }]]) },
});

test('the air: each limit with what is and what may be', () => {
  const limits = enamel.limits!;
  const why = (air: Parameters<typeof airWith>[3], change: Partial<Material> = {}, from = '14:31', to = '14:32') => {
    const [first] = told('air', planWith(), withEnamel(change), {
      air: airWith('spray-room', on('mon', from), on('mon', to), air),
    });
    expect(first?.slice(0, 2)).toEqual([[tasks.coat2.id], on('mon', '14:31')]);
    return first![2].slice(first![2].indexOf('14:31 ') + '14:31 '.length);
  };
  expect(why({ tempC: 9.9 })).toBe('9.9 °C is below 10 °C');
  expect(why({ tempC: 30.1 })).toBe('30.1 °C is above 30 °C');
  expect(why({ rhPercent: 19 })).toBe('19.0 % humidity is below 20 %');
  expect(why({ rhPercent: 81 })).toBe('81.0 % humidity is above 80 %');
  // Dew point at 23 °C and 84 % by the Magnus formula: 20.16 °C.
  expect(why({ rhPercent: 84 }, { limits: { ...limits, maxRhPercent: 100 } })).toBe(
    'the surface at 23.0 °C is only 2.8 K above the dew point, not 3 K',
  );
  expect(why({ tempC: 12 }, { minFilmTempC: 15 })).toBe(
    'the surface at 12.0 °C is below the film-forming temperature of 15 °C',
  );
  const cool = airWith('spray-room', on('mon', '14:31'), on('mon', '14:32'), { tempC: 12 });
  expect(told('air', planWith(), withEnamel({ minFilmTempC: 12 }), { air: cool })).toEqual([]);
  // Saturated vapour at 23 °C has 2811 Pa (Magnus formula): at 95 % it lacks 141 Pa, at 94 % 169 Pa.
  const water = {
    mechanism: mechanisms.find((m) => m === 'water')!,
    limits: { ...limits, maxRhPercent: 100, dewMarginK: 0 },
  };
  expect(why({ rhPercent: 95 }, water)).toBe('at 23.0 °C and 95.0 % humidity water hardly leaves the film');
  const air = airWith('spray-room', on('mon', '14:31'), on('mon', '14:32'), { rhPercent: 94 });
  expect(told('air', planWith(), withEnamel(water), { air })).toEqual([]);
});

test('the air: a surface that is still as cold, or as warm, as the room was before', () => {
  const slow = asking({ coat2: { thicknessMm: 40 } });
  const why = (tempC: number) =>
    told('air', planWith(), slow, { air: airWith('spray-room', on('mon', '12:00'), on('mon', '14:30'), { tempC }) });
  expect(why(2)).toEqual([
    [[tasks.coat2.id], on('mon', '14:30'), expect.stringMatching(/14:30 the surface at \d\.\d °C is below 10 °C$/)],
  ]);
  expect(why(50)).toEqual([
    [[tasks.coat2.id], on('mon', '14:30'), expect.stringMatching(/14:30 the surface at 4\d\.\d °C is above 30 °C$/)],
  ]);
});

test('the air: of a coat that is done, or that has no mark of its own, or only touch', () => {
  const damp = airWith('spray-room', on('mon', '16:59'), on('mon', '17:30'), { rhPercent: 81 });
  const done = new Map([[tasks.coat2.id, { from: on('mon', '14:30'), to: on('mon', '15:00') }]]);
  expect(told('air', planWith(), { ...situation, done }, { air: damp })).toEqual([]);
  // Without a dust-free mark it minds the air until it can be touched, at 18:00; without either, until it is laid.
  const late = airWith('spray-room', on('mon', '17:59'), on('mon', '19:00'), { rhPercent: 81 });
  const { touch } = enamel.marks;
  expect(told('air', planWith(), withEnamel({ marks: {} }), { air: damp })).toEqual([]);
  expect(told('air', planWith(), withEnamel({ marks: { touch: touch! } }), { air: late }).map(([, at]) => at)).toEqual([
    on('mon', '17:59'),
  ]);
});

test('hours: too short, too long, in pieces', () => {
  const [first] = steps.carve.spans;
  expect(
    told('hours', planWith({ carve: { spans: [first!, { start: on('tue', '09:00'), end: on('tue', '11:14') }] } })),
  ).toEqual([
    [
      [tasks.carve.id],
      on('mon', '15:15'),
      'Chair, seat, carve at Mon 2027-01-11 15:15 is given 3 h 59 min of work, but takes 4 h',
    ],
  ]);
  const halves = [
    { start: on('tue', '08:00'), end: on('tue', '08:05') },
    { start: on('tue', '08:10'), end: on('tue', '08:15') },
  ];
  expect(told('hours', planWith({ inspect: { spans: halves } }))).toEqual([
    [
      [tasks.inspect.id],
      on('tue', '08:00'),
      'Desk, top, inspect at Tue 2027-01-12 08:00 pauses, but must be done in one go',
    ],
  ]);
});

test('hours: off, or at an appointment', () => {
  const off = { start: on('mon', '08:30'), end: on('mon', '08:31') };
  const [owner, ...others] = shop.hands;
  expect(told('hours', planWith(), withShop({ hands: [{ ...owner!, off: [off] }, ...others] }))).toEqual([
    [
      [tasks.sand.id],
      on('mon', '08:00'),
      'Desk, top, sand goes from Mon 2027-01-11 08:00 to Mon 2027-01-11 09:00, ' +
        'but Owner is off from Mon 2027-01-11 08:30 to Mon 2027-01-11 08:31',
    ],
  ]);
  const appointment = { ...off, what: 'delivery', hands: ['owner'], brings: [], takes: [] };
  expect(told('hours', planWith(), withShop({ appointments: [appointment] }))[0]?.[2]).toMatch(
    /09:00, but Owner has an appointment \(delivery\) from Mon 2027-01-11 08:30 to/,
  );
});

test('what is not as it was asked for', () => {
  const inspect = (change: Partial<PlannedStep>) => told('complete', planWith({ inspect: change }));
  const at = on('tue', '08:00');
  const id = tasks.inspect.id;
  expect(told('complete', planOf([...planWith().steps, steps.inspect]))).toEqual([
    [[id], on('mon', '00:00'), 'Desk, top, inspect is planned 2 times'],
  ]);
  expect(inspect({ id: 'desk/top/polish' })).toEqual([
    [[id], on('mon', '00:00'), 'Desk, top, inspect is not in the plan'],
    [['desk/top/polish'], at, 'desk/top/polish is planned, but no piece asks for it'],
  ]);
  expect(inspect({ way: 'by magic' })).toEqual([
    [[id], at, 'Desk, top, inspect is done in the unknown way "by magic"'],
  ]);
  expect(inspect({ station: 'moon' })).toEqual([[[id], at, 'Desk, top, inspect is at the unknown station "moon"']]);
  expect(inspect({ spans: [] })).toEqual([
    [[id], on('mon', '00:00'), 'Desk, top, inspect has spans that overlap or hold no time'],
  ]);
});

test('done and begun', () => {
  const id = tasks.sand.id;
  const at = on('mon', '08:00');
  const done = (over: object) => ({
    ...situation,
    done: new Map([[id, { from: at, to: on('mon', '09:00'), ...over }]]),
  });
  const atWork = (begun: number) => ({ ...situation, atWork: new Map([[id, begun]]) });
  const sand = (change: Partial<PlannedStep>, of?: Situation) => told('journal', planWith({ sand: change }), of);
  const says = (text: string) => [[[id], at, `Desk, top, sand ${text}`]];
  expect(sand({ done: true })).toEqual(says('is shown as done, but the journal does not say so'));
  expect(sand({ done: true }, done({ way: 'by hand' }))).toEqual(
    says('is planned in the way "", but was done in the way "by hand"'),
  );
  expect(sand({ atWork: true })).toEqual(says('is shown as begun, but the journal does not say so'));
  expect(sand({}, atWork(at))).toEqual(says('is not shown as begun, but the journal says so'));
  expect(sand({ atWork: true }, atWork(at + 1))).toEqual(
    says('is planned from Mon 2027-01-11 08:00, but was begun Mon 2027-01-11 08:01'),
  );
});

test('the gate of old paint', () => {
  const gate = (test?: { at: number; found: boolean }) =>
    told('gate', planWith(), { ...situation, leadTests: new Map(test && [['desk', test]]) });
  const at = on('mon', '08:00');
  expect(gate()).toEqual([[[tasks.sand.id], at, expect.stringMatching(/finds none: none is on record$/)]]);
  expect(gate({ at: at + 1, found: false })).toEqual([
    [[tasks.sand.id], at, expect.stringMatching(/finds none: it is on record only from Mon 2027-01-11 08:01$/)],
  ]);
});

test('the means', () => {
  const mask = (change: Partial<PlannedStep>, of?: Situation) => told('means', planWith({ mask: change }), of);
  const says = (text: string) => [
    [[tasks.mask.id], on('mon', '13:30'), `Desk, legs, mask at Mon 2027-01-11 13:30 ${text}`],
  ];
  expect(mask({ room: 'spray-room' })).toEqual(says('is shown in the room spray-room, but Bench 1 is in workshop'));
  const either = asking({ mask: { ways: [way(30, { stations: ['floor', 'rack'] })] } });
  expect(mask({}, either)).toEqual(says('is at Bench 1, a bench, but needs floor or rack'));
  const oneCan = asking({ mask: { ways: [way(30, { skill: 'spray' })], people: 2 } });
  expect(mask({ hands: ['owner', 'helper'] }, oneCan)).toEqual([]);
  const skilled = asking({ mask: { ways: [way(30, { skill: 'carve' })], people: 2 } });
  expect(mask({ hands: ['owner', 'friend'] }, skilled)).toEqual(
    says('is given to Owner and Friend, but needs the skill carve'),
  );
});

test('past the pot life', () => {
  const potLife = { ...putty.potLife!, low: 40 / 60 };
  const materials = new Map([...situation.book.materials, ['putty', { ...putty, potLife }] as const]);
  expect(told('pot-life', planWith(), { ...situation, book: { ...situation.book, materials } })).toEqual([
    [
      [tasks.fill.id],
      on('mon', '11:55'),
      'Desk, legs, fill mixes at Mon 2027-01-11 11:15 what can be worked only until Mon 2027-01-11 11:55, ' +
        'but ends Mon 2027-01-11 12:00: 5 min too late',
    ],
  ]);
});

test('where it cannot stay', () => {
  const pieces = (section: boolean) => {
    const away = [{ start: on('tue', '00:00'), end: on('tue', '08:00'), at: 'Upholsterer' }];
    return situation.book.pieces.map((p) =>
      p.id !== 'desk'
        ? p
        : section
          ? { ...p, sections: p.sections.map((s) => (s.id === 'top' ? { ...s, away } : s)) }
          : { ...p, away },
    );
  };
  const awayText =
    'Desk, top, coat 2 starts Mon 2027-01-11 14:30 and keeps it here until Tue 2027-01-12 01:00, ' +
    'but it is away at Upholsterer from Tue 2027-01-12 00:00 to Tue 2027-01-12 08:00';
  for (const section of [true, false])
    expect(told('stay', planWith(), { ...situation, book: { ...situation.book, pieces: pieces(section) } })).toEqual([
      [[tasks.coat2.id], on('mon', '14:30'), awayText],
    ]);
  // What is done on the whole piece needs each of its sections.
  const whole = asking({ coat2: { section: 'whole' } }, { book: { ...situation.book, pieces: pieces(true) } });
  expect(told('stay', planWith({ coat2: { section: 'whole' } }), whole)).toHaveLength(1);
  // The legs are another matter, unless they are of one object with the top.
  const legs = { ...situation, book: { ...situation.book, pieces: pieces(true) } };
  const late = planWith({ unmask: moved('unmask', { at: on('tue', '07:00') }) });
  expect(told('stay', late, legs).map(([ids]) => ids[0])).toEqual([tasks.coat2.id]);
  const joined = asking({ unmask: { object: 'desk/top' } }, { book: legs.book });
  expect(told('stay', late, joined).map(([ids]) => ids[0])).toContain(tasks.unmask.id);
  const week = { monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] };
  const days = { '2027-01-11': [{ from: 9 * 60, to: 24 * 60 }] };
  const rooms = shop.rooms.map((r) => (r.id === 'spray-room' ? { ...r, open: { week, days } } : r));
  expect(told('stay', planWith(), withShop({ rooms }))[0]?.[2]).toBe(
    'Desk, top, coat 2 starts Mon 2027-01-11 14:30 and stands in Spray room until Tue 2027-01-12 01:00, ' +
      'but the room cannot be had for all of that',
  );
});

describe('windows', () => {
  const lateTasks = asking({ inspect: undefined });
  const late = (at: string, ...more: PlannedStep[]): Plan => {
    const plan = planWith({ coat2: moved('coat2', { at: on('tue', at) }), inspect: undefined });
    return { ...plan, steps: [...plan.steps, ...more] };
  };
  const scuff = (at: string) => step(tasks.scuff, { at: on('tue', at), station: 'booth' });

  test('the preparation is missing', () => {
    expect(told('window', late('13:20'), lateTasks)).toEqual([
      [
        [tasks.coat2.id, tasks.coat1.id],
        on('tue', '13:20'),
        'Desk, top, coat 2 starts Tue 2027-01-12 13:20, so late after Desk, top, coat 1 that it needs the preparation scuff ' +
          'between the two, which is not planned there',
      ],
    ]);
  });

  test('any of several preparations, each by its name', () => {
    const late = { ...enamelWindows.late };
    const { prep, ...bare } = late;
    expect(prep).toBe('scuff');
    const windows = [
      { ...late, prepTask: 'desk/top/a' },
      { ...bare, prepTask: 'desk/top/b' },
      { ...late, prep: 'abrade' as const, prepTask: 'desk/top/c' },
    ];
    const of = asking({ inspect: undefined, coat2: { needs: [{ kind: 'window', task: tasks.coat1.id, windows }] } });
    const plan = planWith({ coat2: moved('coat2', { at: on('tue', '13:20') }), inspect: undefined });
    expect(told('window', plan, of)[0]?.[2]).toMatch(/it needs the preparation scuff or abrade between the two, which/);
  });

  test('by how much it is too early for the next to open, in whatever order they stand; by nothing after the last', () => {
    const needs = (windows: readonly WindowChoice[]) =>
      asking({ inspect: undefined, coat2: { needs: [{ kind: 'window', task: tasks.coat1.id, windows }] } });
    const { early, late } = enamelWindows;
    const text = (at: number, windows: readonly WindowChoice[]) => {
      const plan = planWith({ coat2: moved('coat2', { at }), inspect: undefined });
      return told('window', plan, needs(windows))[0]?.[2].split(' may be recoated only ')[1];
    };
    const first = 'from Mon 2027-01-11 14:30 until Tue 2027-01-12 05:30';
    const second = 'from Tue 2027-01-12 11:30 after the preparation scuff';
    expect(text(on('mon', '14:10'), [early, late])).toBe(`${first}, or ${second}: 20 min too early`);
    expect(text(on('mon', '14:10'), [late, early])).toBe(`${second}, or ${first}: 20 min too early`);
    expect(text(on('tue', '08:00'), [early, late])).toBe(`${first}, or ${second}: 3 h 30 min too early`);
    expect(text(on('tue', '08:00'), [late, early])).toBe(`${second}, or ${first}: 3 h 30 min too early`);
    expect(text(on('tue', '08:00'), [early])).toBe(first);
  });

  test('a preparation for nothing', () => {
    const needless: Told = [
      [tasks.scuff.id, tasks.coat2.id],
      on('tue', '08:20'),
      'Desk, top, coat 2 scuff is planned, but Desk, top, coat 2 is in no window that asks for it',
    ];
    const plan = planWith();
    const more = step(tasks.scuff, { at: on('tue', '08:20'), station: 'bench-3' });
    expect(told('window', { ...plan, steps: [...plan.steps, more] })).toEqual([needless]);
    // Without its coat, or the coat beneath, it is for nothing as well.
    expect(
      told('window', planOf([steps.coat1, more]), { ...situation, tasks: [tasks.coat1, tasks.coat2, tasks.scuff] }),
    ).toEqual([needless]);
    const alone = { ...situation, tasks: [tasks.coat2, tasks.scuff] };
    expect(told('window', planOf([steps.coat2, more]), alone)).toEqual([needless]);
  });

  test('the preparation may begin as the coat beneath ends, and end as the coat begins', () => {
    expect(told('window', late('13:20', scuff('13:00')), lateTasks)).toEqual([]);
    const dry = {
      ...lateTasks,
      tasks: lateTasks.tasks.map((t) => (t.id === tasks.scuff.id ? { ...t, needs: [] } : t)),
    };
    const early = step(tasks.scuff, { at: on('mon', '09:30'), station: 'booth' });
    expect(told('window', late('13:20', early), dry)).toEqual([]);
    expect(
      told('window', late('13:20', { ...early, spans: [{ start: on('mon', '09:29'), end: on('mon', '09:49') }] }), dry),
    ).toHaveLength(1);
  });
});

describe('what the plan shows', () => {
  const shown = (change: Parameters<typeof planWith>[0]) => told('shown', planWith(change)).map(([, , text]) => text);
  test('of a step', () => {
    const { touch, ...rest } = steps.coat2.dry!;
    expect(shown({ coat2: { dry: rest } })).toEqual(['Desk, top, coat 2 is not shown to reach the mark touch']);
    expect(shown({ mask: { dry: { touch: touch! } } })).toEqual([
      'Desk, legs, mask is shown to reach the mark touch, which it does not have',
    ]);
    expect(shown({ coat2: { title: 'Varnish' } })).toEqual([
      'Desk, top, coat 2 is shown under the name, stage, coat or material of something else',
    ]);
    const { window, ...bare } = steps.coat2;
    expect(window).toBeDefined();
    const plan = planOf(planWith().steps.map((s) => (s.id === bare.id ? bare : s)));
    expect(told('shown', plan)).toEqual([
      [[bare.id], on('mon', '14:30'), 'Desk, top, coat 2 is shown without its recoat window'],
    ]);
  });
  test('of a step: times, windows, waits and places that are not so', () => {
    const dry = steps.coat2.dry!;
    const late = { ...dry, touch: { ...dry.touch!, late: dry.touch!.late + 1 } };
    expect(shown({ coat2: { dry: late } })).toEqual([
      'Desk, top, coat 2 is shown to reach the mark touch (late) Mon 2027-01-11 18:01, but that is Mon 2027-01-11 18:00',
    ]);
    const window = { ...steps.coat2.window!, opens: on('mon', '14:29') };
    expect(shown({ coat2: { window } })).toEqual([
      'Desk, top, coat 2 is shown in a window from Mon 2027-01-11 14:29 that Desk, top, coat 1 does not offer it',
    ]);
    expect(shown({ unmask: { after: [{ step: tasks.mask.id, notBefore: on('tue', '09:00') }] } })).toEqual([
      'Desk, legs, unmask is shown to wait for Desk, legs, mask until Tue 2027-01-12 09:00, which is not so',
    ]);
    expect(shown({ glue: { holdsStationUntil: on('mon', '11:16') } })).toEqual([
      'Desk, legs, glue is shown to keep its place until Mon 2027-01-11 11:16, but keeps it until Mon 2027-01-11 11:15',
    ]);
  });
  test('a place is kept by what lies beneath, of the same section and laid before', () => {
    // The second coat is over at 15:00, and may be moved from 01:00 on Tuesday.
    const kept = (name: 'inspect' | 'mask', clock: string, until: number) => {
      const station = name === 'inspect' ? 'booth' : 'bench-1';
      const change = moved(name, { at: on('mon', clock), station, over: { holdsStationUntil: until, after: [] } });
      return told('shown', planWith({ [name]: change })).filter(([, , text]) => text.includes('keep its place')).length;
    };
    expect(kept('inspect', '15:00', on('tue', '01:00'))).toBe(0);
    expect(kept('inspect', '15:00', on('mon', '15:10'))).toBe(0);
    expect(kept('inspect', '15:00', on('tue', '00:59'))).toBe(1);
    // Begun before the coat was over it has only the first coat beneath, which may be moved from 19:30.
    expect(kept('inspect', '14:59', on('tue', '01:00'))).toBe(1);
    expect(kept('inspect', '14:59', on('mon', '19:30'))).toBe(0);
    expect(kept('mask', '15:00', on('tue', '01:00'))).toBe(1);
  });
  test('a place is kept until the end at least, is not taken over by itself, nor kept by another section', () => {
    const places = (change: Parameters<typeof planWith>[0], of = situation) =>
      told('shown', planWith(change), of).filter(([, , text]) => text.includes('keep its place'));
    // The first coat took the place over, but long before the second ended.
    expect(places({ coat2: { holdsStationUntil: on('mon', '09:00') } })).toHaveLength(1);
    const atOnce = moved('inspect', { at: on('mon', '15:00'), station: 'booth', over: { after: [] } });
    expect(places({ coat2: { holdsStationUntil: on('mon', '15:00') }, inspect: atOnce })).toEqual([]);
    const laid = moved('glue', { over: { spans: [{ start: on('mon', '09:00'), end: on('mon', '09:00') }] } });
    const done = new Map([[tasks.glue.id, { from: on('mon', '09:00'), to: on('mon', '09:00') }]]);
    expect(
      places({ glue: { ...laid, done: true, holdsStationUntil: on('mon', '09:00') } }, { ...situation, done }),
    ).toHaveLength(1);
    const joined = asking({ mask: { object: 'desk/top' } });
    const mask = moved('mask', { at: on('mon', '15:00'), over: { holdsStationUntil: on('tue', '01:00'), after: [] } });
    expect(places({ mask }, joined)).toHaveLength(1);
  });
  test('of a piece', () => {
    const plan = planWith();
    const desk = (change: object): Plan => ({
      ...plan,
      pieces: plan.pieces.map((p) => (p.id === 'desk' ? { ...p, ...change } : p)),
    });
    const says = (p: Plan, text: string) =>
      expect(told('shown', p)).toEqual([[[], on('wed', '00:00'), `Desk ${text}`]]);
    says(desk({ wantedBy: on('tue', '09:00') }), 'is shown with another date than the one it is wanted by');
    says(desk({ ready: {} }), 'is not shown when it can be handed over');
    says(desk({ lateHours: 1.5 }), 'is shown 1 h 30 min late, but is 0 min late');
    says(
      { ...plan, pieces: [...plan.pieces, ...plan.pieces.filter((p) => p.id === 'desk')] },
      'is shown 2 times among the pieces',
    );
  });
  test('of the proof', () => {
    const proof = (change: object) => {
      const plan = planWith();
      return told('shown', { ...plan, proof: { ...plan.proof, ...change } });
    };
    const says = (text: string) => [[[], on('mon', '07:30'), `the proof says ${text}`]];
    expect(proof({ objective: [{ name: 'late', value: 4, bound: 5 }] })).toEqual(
      says('that late is 4, below its own bound 5'),
    );
    expect(proof({ gapPercent: 1, proven: true })).toEqual(says('"proven" with a gap of 1 %'));
    expect(proof({ gapPercent: -1, proven: false })).toEqual(says('"not proven" with a gap of -1 %'));
  });
});

test('what is done is not reproached with a wait, a window, a limit or a stay', () => {
  const done = (id: string, from: number, to: number) => ({ done: new Map([[id, { from, to }]]) });
  const early = planWith({ fill: moved('fill', { at: on('mon', '11:10') }) });
  expect(told('wait', early).map(([ids]) => ids)).toEqual([[tasks.fill.id, tasks.glue.id]]);
  expect(told('wait', early, { ...situation, ...done(tasks.fill.id, on('mon', '11:10'), on('mon', '11:55')) })).toEqual(
    [],
  );
  const soon = planWith({ coat2: moved('coat2', { at: on('mon', '14:10') }) });
  expect(told('window', soon)).toHaveLength(1);
  expect(
    told('window', soon, { ...situation, ...done(tasks.coat2.id, on('mon', '14:10'), on('mon', '14:40')) }),
  ).toEqual([]);
  const late = planWith({ unmask: moved('unmask', { at: on('tue', '08:40') }) });
  expect(told('within', late).map(([ids]) => ids)).toEqual([[tasks.unmask.id, tasks.mask.id]]);
  expect(
    told('within', late, { ...situation, ...done(tasks.unmask.id, on('tue', '08:40'), on('tue', '09:10')) }),
  ).toEqual([]);
  const away = [{ start: on('tue', '00:00'), end: on('tue', '08:00'), at: 'Upholsterer' }];
  const pieces = situation.book.pieces.map((p) => (p.id === 'desk' ? { ...p, away } : p));
  const gone = { ...situation, book: { ...situation.book, pieces } };
  expect(told('stay', planWith(), gone)).toHaveLength(1);
  expect(
    told('stay', planWith(), { ...gone, ...done(tasks.coat2.id, on('mon', '14:30'), on('mon', '15:00')) }),
  ).toEqual([]);
});

test('work on the whole piece needs each section, whatever object it is of; of an unknown piece no stay is known', () => {
  const away = [{ start: on('tue', '00:00'), end: on('tue', '08:00'), at: 'Upholsterer' }];
  const pieces = situation.book.pieces.map((p) =>
    p.id === 'desk' ? { ...p, sections: p.sections.map((s) => (s.id === 'legs' ? { ...s, away } : s)) } : p,
  );
  const change = { section: 'whole', object: 'desk/whole' };
  const whole = asking({ coat2: change }, { book: { ...situation.book, pieces } });
  expect(told('stay', planWith({ coat2: { section: 'whole' } }), whole).map(([ids]) => ids)).toEqual([
    [tasks.coat2.id],
  ]);
  expect(told('stay', planWith(), { ...situation, book: { ...situation.book, pieces: [] } })).toEqual([]);
});

test('a step that waits for nothing in the plan is not reproached', () => {
  const absent = 'desk/top/none';
  const of = asking({
    glue: {
      needs: [
        { kind: 'within', task: absent, hours: 1, why: 'never' },
        { kind: 'window', task: absent, windows: [enamelWindows.early] },
        { kind: 'mark', task: absent, mark: 'cure' },
      ],
    },
  });
  expect(verify(evidenceOf(of), planWith())).toEqual([]);
});

test('moved at the very minute at which it ends, it is moved wet', () => {
  const plan = planWith({
    inspect: moved('inspect', { at: on('mon', '15:00'), station: 'bench-1', hands: ['friend'] }),
  });
  expect(told('capacity', plan).map(([ids]) => ids)).toContainEqual([tasks.inspect.id, tasks.coat2.id]);
});

test('too early: both steps are named, the one that is too early first', () => {
  const needs = [{ kind: 'order', task: tasks.mask.id, waitHours: 0 }] as const;
  expect(told('order', planWith(), asking({ glue: { needs } }))[0]?.slice(0, 2)).toEqual([
    [tasks.glue.id, tasks.mask.id],
    on('mon', '09:00'),
  ]);
  const wet = told('capacity', planWith({ coat2: moved('coat2', { station: 'booth-2' }) }));
  expect(wet[0]?.slice(0, 2)).toEqual([[tasks.coat2.id, tasks.coat1.id], on('mon', '14:30')]);
  const early = told('hours', planWith({ inspect: moved('inspect', { at: on('tue', '07:50') }) }));
  expect(early[0]?.slice(0, 2)).toEqual([[tasks.inspect.id], on('tue', '07:50')]);
});

test('what is done is not reproached with an appointment or a pot life; a piece that is not there yet is', () => {
  const done = (id: string, from: number, to: number) => new Map([[id, { from, to }]]);
  const off = { start: on('mon', '08:30'), end: on('mon', '08:31'), what: 'delivery', hands: ['owner'] };
  const busy = withShop({ appointments: [{ ...off, brings: [], takes: [] }] });
  const sanded = done(tasks.sand.id, on('mon', '08:00'), on('mon', '09:00'));
  expect(told('hours', planWith(), { ...busy, done: sanded })).toEqual([]);
  const materials = new Map([
    ...situation.book.materials,
    ['putty', { ...putty, potLife: { ...putty.potLife!, low: 0.5 } }] as const,
  ]);
  const filled = done(tasks.fill.id, on('mon', '11:15'), on('mon', '12:00'));
  const short = { ...situation, book: { ...situation.book, materials } };
  expect(told('pot-life', planWith(), short)).toHaveLength(1);
  expect(told('pot-life', planWith(), { ...short, done: filled })).toEqual([]);
  const pieces = situation.book.pieces.map((p) => (p.id === 'chair' ? { ...p, arrives: on('mon', '13:01') } : p));
  expect(told('order', planWith(), { ...situation, book: { ...situation.book, pieces } })).toEqual([
    [
      [tasks.clamp.id],
      on('mon', '13:00'),
      'Chair, seat, clamp starts Mon 2027-01-11 13:00, but the piece arrives only Mon 2027-01-11 13:01',
    ],
  ]);
});

test('sections of one object at once, in words', () => {
  const of = asking({ unmask: { object: 'desk/top' } });
  const plan = planWith({
    inspect: moved('inspect', { at: on('tue', '08:21'), station: 'bench-2', hands: ['helper'] }),
  });
  expect(told('capacity', plan, of)[0]?.[2]).toMatch(/2 at once on the same object of Desk, which has room for 1: /);
});

test('each day of the week by its name', () => {
  const days = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
  const now = (k: number) => on('mon', '12:00') + k * 1440;
  const told1 = days.map(
    (_, k) => told('order', planWith(), { ...situation, now: now(k) })[0]?.[2].split('already ')[1],
  );
  expect(told1).toEqual(days.map((day, k) => `${day} 2027-01-${11 + k} 12:00`));
});
