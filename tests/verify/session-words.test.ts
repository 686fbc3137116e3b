import { describe, expect, test } from 'vitest';
import type { PlannedSession, PlannedStep } from '../../src/model/plan.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { Task } from '../../src/model/task.ts';
import { verify } from '../../src/verify/verify.ts';
import { evidenceOf, on, planOf, shop, situationOf, step, task, way } from './fixture.ts';
import { alone, laid, last, other, seat, session, sprayed, tasks, top } from './session-base.ts';

// Each way in which coats cannot share what was mixed and set up, with its words, the steps it names and its minute.

type Told = [steps: readonly string[], at: number, text: string];

function told(
  steps: readonly PlannedStep[],
  sessions: readonly PlannedSession[] = [session],
  of: readonly Task[] = Object.values(tasks),
  over: Partial<Situation> = {},
): Told[] {
  return verify(evidenceOf(situationOf(of, over)), planOf(steps, { sessions }))
    .filter((b) => b.rule === 'session')
    .map((b): Told => [b.steps, b.at, b.text]);
}

const both = [last.id, top.id];
const nine = on('mon', '09:00');
const asking = (id: string, change: Partial<Task>) =>
  Object.values(tasks).map((t): Task => (t.id === id ? { ...t, ...change } : t));
const tool = (id: string, change: object) => {
  const { book } = situationOf([]);
  return {
    book: { ...book, shop: { ...shop, tools: shop.tools.map((t) => (t.id === id ? { ...t, ...change } : t)) } },
  };
};

describe('from one coat to the next', () => {
  const next = (change: Partial<PlannedStep>) => told([top, { ...last, ...change }, alone, other]);
  const says = (text: string, at = nine): Told[] => [[both, at, `Desk, legs, coat ${text}`]];

  test('all shared, in whatever order hands and tools are named', () => {
    expect(next({})).toEqual([]);
    const two = (step: PlannedStep, hands: string[], tools: string[]) => ({ ...step, hands, tools });
    const steps = (hands: string[], tools: string[]) => [
      two(top, ['owner', 'friend'], ['sprayer', 'sander']),
      two(last, hands, tools),
    ];
    expect(told(steps(['friend', 'owner'], ['sander', 'sprayer']))).toEqual([]);
    // No two hands or tools read like two others.
    expect(told(steps(['wner', 'friendo'], ['sander', 'sprayer'])).map(([, , text]) => text)).toEqual([
      'Desk, legs, coat is done by other hands than the coat before it',
    ]);
  });
  test('another material', () => {
    const glued = { ways: [{ ...sprayed, film: { material: 'putty', thickness: 1 } }] };
    const bare = { ways: [{ ...way(60, { tools: ['sprayer'], stations: ['spray'] }), inSession: sprayed.inSession! }] };
    const texts = (of: Task[]) => told([top, last, alone, other], [session], of);
    expect(texts(asking(last.id, glued))).toEqual(says('lays Putty, but Enamel was mixed'));
    expect(texts(asking(last.id, bare))).toEqual(says('lays nothing, but Enamel was mixed'));
    expect(texts(asking(top.id, bare))).toEqual(says('lays Enamel, but nothing was mixed'));
    expect(texts(Object.values(tasks).map((t) => ({ ...t, ...bare })))).toEqual([]);
  });
  test('other tools', () => {
    expect(next({ tools: ['sander'] })).toEqual(says('uses other tools than the coat before it'));
  });
  test('other hands', () => {
    expect(next({ hands: ['friend'] })).toEqual(says('is done by other hands than the coat before it'));
  });
  test('another place', () => {
    expect(next({ station: 'rack', room: 'workshop' })).toEqual(says('is at Rack, but the coat before it at Booth'));
    const at = (room: string, kind: 'spray' | 'rack'): Situation => {
      const base = situationOf(Object.values(tasks));
      const stations = shop.stations.map((s) => (s.id === 'booth-2' ? { ...s, room, kind } : s));
      return { ...base, book: { ...base.book, shop: { ...shop, stations } } };
    };
    const there = (room: string, kind: 'spray' | 'rack') =>
      told([top, last, alone, other], [session], undefined, at(room, kind));
    expect(there('spray-room', 'spray')).toEqual([]);
    expect(there('workshop', 'spray')).toEqual(says('is at Booth 2, but the coat before it at Booth'));
    expect(there('spray-room', 'rack')).toEqual(says('is at Booth 2, but the coat before it at Booth'));
  });
  test('too soon or too late', () => {
    const at = (clock: string) => told([top, laid(tasks.legs, on('mon', clock), 40, 'booth-2'), alone, other]);
    expect(at('08:50')).toEqual([]);
    expect(at('08:49')).toEqual(says('begins before the coat before it is over', on('mon', '08:49')));
    expect(at('09:10')).toEqual([]);
    expect(at('09:11')).toEqual(
      says('begins 21 min after Desk, top, coat: what is left in the tool has begun to dry', on('mon', '09:11')),
    );
  });
  test('what is done is not reproached, but what comes after it is', () => {
    const done = new Map([[last.id, { from: nine, to: on('mon', '09:40') }]]);
    const friend = { ...last, hands: ['friend'], done: true } as const;
    expect(told([top, friend, alone, other], [session], undefined, { done })).toEqual([]);
    const first = new Map([[top.id, { from: on('mon', '08:00'), to: on('mon', '08:50') }]]);
    expect(
      told(
        [
          { ...top, done: true },
          { ...last, hands: ['friend'] },
        ],
        [session],
        undefined,
        { done: first },
      ),
    ).toEqual(says('is done by other hands than the coat before it'));
  });
});

describe('the tools between set-up and wash-up', () => {
  const used = (clock: string, of = Object.values(tasks), over: Partial<Situation> = {}) =>
    told(
      [top, last, alone, step(tasks.other, { at: on('mon', clock), station: 'bench-1', hands: ['helper'] })],
      [session],
      of,
      over,
    );
  const reproach = (clock: string): Told[] => [
    [[other.id], on('mon', clock), 'Chair, back, spray uses Sprayer between Desk, top, coat and Desk, legs, coat'],
  ];
  test('are not used for anything else, from the first minute to the last', () => {
    expect(used('07:50')).toEqual([]);
    expect(used('07:51')).toEqual(reproach('07:51'));
    expect(used('09:39')).toEqual(reproach('09:39'));
    expect(used('09:40')).toEqual([]);
  });
  test('unless there are two of them, or it is another tool, or it is done', () => {
    expect(used('08:50', undefined, tool('sprayer', { count: 2 }))).toEqual([]);
    expect(used('08:50', undefined, tool('sprayer', { count: 1 }))).toEqual(reproach('08:50'));
    const sander = step(tasks.other, {
      at: on('mon', '08:50'),
      station: 'bench-1',
      hands: ['helper'],
      over: { tools: ['sander'] },
    });
    expect(told([top, last, alone, sander])).toEqual([]);
    const done = new Map([[other.id, { from: on('mon', '08:50'), to: on('mon', '09:00') }]]);
    expect(used('08:50', undefined, { done })).toEqual([]);
  });
  test('through the last of three coats, too', () => {
    const middle = laid(tasks.legs, nine, 30, 'booth-2');
    const third = laid(tasks.seat, on('mon', '09:30'), 40, 'booth');
    const between = step(tasks.other, { at: on('mon', '10:00'), station: 'bench-1', hands: ['helper'] });
    const all = { steps: [top.id, middle.id, third.id], savedMinutes: 60 };
    expect(told([top, middle, third, between], [all])).toEqual([
      [[other.id], on('mon', '10:00'), 'Chair, back, spray uses Sprayer between Desk, top, coat and Chair, seat, coat'],
    ]);
  });
  test('a tool that the shop lacks is another rule’s business', () => {
    const steps = [top, last].map((s) => ({ ...s, tools: ['whip'] }));
    expect(told([...steps, { ...other, tools: ['whip'], spans: [{ start: on('mon', '08:50'), end: nine }] }])).toEqual(
      [],
    );
  });
  test('coats with no tool have none', () => {
    expect(told([top, last].map((s) => ({ ...s, tools: [] })))).toEqual([]);
  });
});

describe('what is shown of a session', () => {
  const steps = [top, last, alone, other];
  test('steps: two at least, each once, all of them in the plan', () => {
    const text = 'a session has too few steps, one twice, or some that are not in the plan';
    const of = (...ids: string[]) => told(steps, [{ steps: ids, savedMinutes: 0 }]);
    expect(of(top.id)).toEqual([[[top.id], on('mon', '08:00'), text]]);
    expect(of()).toEqual([[[], on('mon', '00:00'), text]]);
    expect(of(top.id, top.id)).toEqual([[[top.id, top.id], on('mon', '08:00'), text]]);
    expect(of('no/such/step', top.id, last.id)).toEqual([
      [['no/such/step', top.id, last.id], on('mon', '08:00'), text],
    ]);
  });
  test('steps that can share', () => {
    const both = [seat.id, other.id];
    const found = told([seat, other], [{ steps: both, savedMinutes: 20 }]);
    expect(found).toContainEqual([
      [other.id],
      on('mon', '14:00'),
      'Chair, back, spray has nothing to share with other coats',
    ]);
  });
  test('no step in two', () => {
    const twice = told(steps, [session, session]);
    expect(twice.slice(0, 2)).toEqual([
      [[top.id], on('mon', '08:00'), 'Desk, top, coat is in 2 sessions'],
      [[last.id], nine, 'Desk, legs, coat is in 2 sessions'],
    ]);
    const unknown = { steps: ['no/such/step', top.id], savedMinutes: 0 };
    expect(told(steps, [unknown, { ...unknown, steps: ['no/such/step', last.id] }])[0]).toEqual([
      ['no/such/step'],
      on('mon', '00:00'),
      'no/such/step is in 2 sessions',
    ]);
  });
  test('what it saves: 60 + 60 minutes less 50 + 40, and the same at the pace of the slowest, to the next five', () => {
    const saves = (savedMinutes: number, over: Partial<Situation> = {}, hands = ['owner']) =>
      told(
        [
          { ...top, hands },
          { ...last, hands },
        ],
        [{ ...session, savedMinutes }],
        undefined,
        over,
      );
    expect(saves(30)).toEqual([]);
    expect(saves(29)).toEqual([[session.steps, on('mon', '08:00'), 'a session is shown to save 29 min, but saves 30']]);
    const pace = (owner: number, friend = 1) => ({
      paces: new Map(Object.entries({ owner, friend }).map(([id, factor]) => [id, { factor, deviation: 0, count: 3 }])),
    });
    // 1.1 × 60 is 66, so 70 min; 1.1 × 50 is 55; 1.1 × 40 is 44, so 45.
    expect(saves(40, pace(1.1))).toEqual([]);
    expect(saves(40, pace(0.5, 1.1), ['owner', 'friend'])).toEqual([]);
    expect(saves(40, pace(1.1, 0.5), ['friend', 'owner'])).toEqual([]);
    // 0.05 × 60 is 3: nothing takes less than five minutes.
    expect(saves(0, pace(0.05))).toEqual([]);
  });
  test('at the usual pace to the minute', () => {
    const odd = { workMinutes: 62, inSession: { first: 51, middle: 31, last: 43 } };
    const of = Object.values(tasks).map((t): Task => ({ ...t, ways: t.ways.map((w) => ({ ...w, ...odd })) }));
    const steps = [laid(tasks.top, on('mon', '08:00'), 51, 'booth'), laid(tasks.legs, nine, 43, 'booth-2')];
    // 62 + 62 minutes less 51 + 43.
    expect(told(steps, [{ ...session, savedMinutes: 30 }], of)).toEqual([]);
    expect(told(steps, [{ ...session, savedMinutes: 31 }], of)).toHaveLength(1);
    const one = { workMinutes: 62, inSession: { first: 51, middle: 31, last: 42 } };
    const other = Object.values(tasks).map((t): Task => ({ ...t, ways: t.ways.map((w) => ({ ...w, ...one })) }));
    expect(told(steps, [{ ...session, savedMinutes: 31 }], other)).toEqual([]);
  });
  test('three coats: the middle one neither mixes nor washes up', () => {
    const legs = laid(tasks.legs, nine, 30, 'booth-2');
    const third = laid(tasks.seat, on('mon', '09:30'), 40, 'booth');
    const all = { steps: [top.id, legs.id, third.id], savedMinutes: 60 };
    expect(told([top, legs, { ...third, hands: ['friend'] }], [all])).toEqual([
      [[third.id, legs.id], on('mon', '09:30'), 'Chair, seat, coat is done by other hands than the coat before it'],
    ]);
    expect(told([top, legs, third], [all])).toEqual([]);
    expect(told([top, legs, third], [{ ...all, savedMinutes: 50 }])).toHaveLength(1);
  });
  test('by itself a coat saves nothing', () => {
    const lone = task('desk/legs/coat', [way(60, { stations: ['spray'], tools: ['sprayer'], film: sprayed.film! })]);
    const [found] = told([top, last], [{ ...session, savedMinutes: 10 }], [tasks.top, lone]);
    expect(found?.[2]).toBe('Desk, legs, coat has nothing to share with other coats');
    expect(told([top, last], [{ ...session, savedMinutes: 10 }], [tasks.top, lone])).toHaveLength(1);
  });
});
