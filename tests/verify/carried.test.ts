import { describe, expect, test } from 'vitest';
import { timeConstantMinutes } from '../../src/drying/surface.ts';
import type { BroughtIn, PlannedStep } from '../../src/model/plan.ts';
import type { DoneStep } from '../../src/model/situation.ts';
import type { Task } from '../../src/model/task.ts';
import { broughtIn } from '../../src/verify/brought-in.ts';
import { groundOf } from '../../src/verify/ground.ts';
import { verify } from '../../src/verify/verify.ts';
import { still } from '../drying/arbitrary.ts';
import { evidenceOf, on, planOf, situationOf, step, task, way } from './fixture.ts';

// A top that is sanded in a cold workshop and sprayed in the warm spray room: when it was carried over, and until when
// that would have done. The workshop has 12 °C; in the spray room, at 23 °C and 50 %, the dew point is 12.0 °C, so that
// a surface must have 15.0 °C (Magnus formula; ISO 8502-4).

const THICK = 40;
const sprayed = way(30, { stations: ['spray'], film: { material: 'enamel', thickness: 1 } });
const top = (name: string, ways: Task['ways'], over: Partial<Task> = {}) =>
  task(`desk/top/${name}`, ways, { thicknessMm: THICK, ...over });
const tasks = {
  sand: top('sand', [way(60)]),
  wipe: top('wipe', [way(10, { stations: ['spray'] })]),
  coat: top('coat', [sprayed], { stage: 'topcoat' }),
  look: top('look', [way(10)]),
  seat: task('chair/seat/coat', [sprayed], { stage: 'topcoat', thicknessMm: 400 }),
};

const air = new Map([
  ['workshop', still(12, 50)],
  ['spray-room', still(23, 50)],
]);
/** Minutes until work from 12 °C has 14.9 °C, a tenth below what it must have: no thermometer reads closer. */
const warmsIn = timeConstantMinutes(THICK) * Math.log((23 - 12) / (23 - 14.87));

const sand = step(tasks.sand, { at: on('mon', '08:00'), station: 'bench-1' });
const from = 'workshop';
const at = on('mon', '09:00');
const start = on('mon', '13:30');
const latest = Math.floor(start - warmsIn);
const coat = (brought?: BroughtIn, over: Partial<PlannedStep> = {}) =>
  step(tasks.coat, { at: start, station: 'booth', over: { ...(brought && { broughtIn: brought }), ...over } });

function faults(steps: readonly PlannedStep[], done: ReadonlyMap<string, DoneStep> = new Map()): string[] {
  const of = Object.values(tasks).filter((t) => steps.some((s) => s.id === t.id));
  const found = verify(evidenceOf(situationOf(of, { done }), { air }), planOf(steps));
  return found.filter((b) => b.steps.length > 0).map((b) => `${b.rule}: ${b.text}`);
}

const here = 'shown: Desk, top, coat is shown to be brought in';

describe('what is shown of the carrying', () => {
  test('the air is such that the work takes its time', () => {
    expect(warmsIn).toBeGreaterThan(20);
    expect(warmsIn).toBeLessThan(240);
  });

  test('nothing, or as soon as it can be, or anything until the latest that would do', () => {
    expect(faults([sand, coat()])).toEqual([]);
    for (const by of [at, at + 1, latest - 2]) expect(faults([sand, coat({ from, at, by })])).toEqual([]);
    expect(faults([sand, coat({ from, at: at + 5, by: at + 5 })])).toEqual([]);
  });

  test('too late to be warm', () => {
    const late = faults([sand, coat({ from, at, by: latest + 3 })]);
    expect(late).toEqual([
      expect.stringMatching(
        /^shown: Desk, top, coat is shown to be in time if brought in by Mon 2027-01-11 \d\d:\d\d, but then Desk, top, coat would find: the surface at 14\.\d °C is only 2\.\d K above the dew point, not 3 K$/,
      ),
    ]);
  });

  test('from elsewhere, or from nowhere', () => {
    expect(faults([sand, coat({ from: 'spray-room', at, by: at })])).toEqual([
      `${here} from spray-room, where it was not`,
    ]);
    expect(faults([coat({ from, at, by: at })])).toEqual([`${here} from workshop, where it was not`]);
  });

  test('sooner than it can be', () => {
    expect(faults([sand, coat({ from, at: at - 1, by: at })])).toEqual([
      `${here} Mon 2027-01-11 08:59, but cannot be carried before Mon 2027-01-11 09:00`,
    ]);
  });

  test('times that do not go together', () => {
    const says = (a: string, b: string) => [
      `${here} Mon 2027-01-11 ${a}, and by Mon 2027-01-11 ${b}, which does not go together`,
    ];
    expect(faults([sand, coat({ from, at: at + 1, by: at })])).toEqual(says('09:01', '09:00'));
    expect(faults([sand, coat({ from, at, by: start + 1 })])).toEqual(says('09:00', '13:31'));
  });

  test('carried as the step begins', () => {
    const wipe = (by: number) =>
      step(tasks.wipe, { at: at + 60, station: 'booth', over: { broughtIn: { from, at, by } } });
    expect(faults([sand, wipe(at + 60)])).toEqual([]);
    expect(faults([sand, wipe(at + 61)])).toHaveLength(1);
  });

  test('of a step before the coats: it is the first coat here that must be warm, in whatever order they stand', () => {
    const wipe = (by: number) =>
      step(tasks.wipe, { at: start - 10, station: 'booth', over: { broughtIn: { from, at, by } } });
    const look = step(tasks.look, { at: start + 12 * 60 + 1440, station: 'bench-1' });
    for (const steps of [
      [sand, wipe(latest - 2), coat()],
      [coat(), wipe(latest - 2), sand],
    ])
      expect(faults(steps).filter((f) => f.includes('brought in'))).toEqual([]);
    for (const steps of [
      [sand, wipe(latest + 3), coat()],
      [coat(), look, sand, wipe(latest + 3)],
      [look, coat(), sand, wipe(latest + 3)],
      [look, sand, wipe(latest + 3), coat()],
    ])
      expect(faults(steps).filter((f) => f.includes('brought in'))).toEqual([
        expect.stringContaining('but then Desk, top, coat would find: the surface'),
      ]);
  });

  test('of several coats that would be too cold the first is told', () => {
    const wipe = step(tasks.wipe, {
      at: start - 10,
      station: 'booth',
      over: { broughtIn: { from, at, by: start - 10 } },
    });
    const again = top('coat-2', [sprayed], { stage: 'topcoat', thicknessMm: 400 });
    const second = step(again, { at: start + 30, station: 'booth' });
    const of = situationOf([tasks.sand, tasks.wipe, tasks.coat, again]);
    for (const steps of [
      [sand, wipe, coat(), second],
      [second, coat(), wipe, sand],
    ])
      expect(
        verify(evidenceOf(of, { air }), planOf(steps))
          .map((b) => b.text)
          .filter((text) => text.includes('is shown to be in time')),
      ).toEqual([expect.stringContaining('but then Desk, top, coat would find: the surface')]);
  });

  test('neither the coats of another piece, nor those done, nor those in another room are asked', () => {
    const wipe = step(tasks.wipe, {
      at: start - 10,
      station: 'booth',
      over: { broughtIn: { from, at, by: start - 10 } },
    });
    const brought = (steps: readonly PlannedStep[], done?: ReadonlyMap<string, DoneStep>) =>
      faults(steps, done).filter((f) => f.includes('brought in'));
    const seat = step(tasks.seat, { at: start, station: 'booth-2', hands: ['friend'] });
    expect(brought([sand, wipe, seat])).toEqual([]);
    const done = new Map([[tasks.coat.id, { from: start, to: start + 30 }]]);
    expect(brought([sand, wipe, coat(undefined, { done: true })], done)).toEqual([]);
    const away = step(
      { ...tasks.coat, ways: [{ ...sprayed, stations: ['bench'] }] },
      { at: start, station: 'bench-1' },
    );
    expect(brought([sand, wipe, away])).toEqual([]);
    // Nor those of another section, of another piece's section of the same name, or after it has left the room again.
    for (const id of ['chair/top/coat', 'desk/legs/coat']) {
      const other = task(id, [sprayed], { stage: 'topcoat', thicknessMm: 400 });
      const steps = [sand, wipe, step(other, { at: start, station: 'booth-2', hands: ['friend'] })];
      const of = situationOf([tasks.sand, tasks.wipe, other]);
      const texts = verify(evidenceOf(of, { air }), planOf(steps)).map((b) => b.text);
      expect(texts.filter((text) => text.includes('is shown to be in time'))).toEqual([]);
    }
    const back = step(tasks.look, { at: start, station: 'bench-1' });
    const later = step(tasks.coat, { at: start + 10, station: 'booth' });
    expect(brought([sand, wipe, back, later])).toEqual([]);
    expect(brought([sand, wipe, later])).toHaveLength(1);
    const before = step(tasks.coat, { at: start - 60, station: 'booth' });
    expect(brought([sand, before, wipe])).toEqual([]);
  });

  test('what is done is not reproached for it', () => {
    const done = new Map([[tasks.coat.id, { from: start, to: start + 30 }]]);
    expect(faults([sand, coat({ from: 'moon', at, by: at }, { done: true })], done)).toEqual([]);
  });
});

describe('when it is carried', () => {
  const now = on('mon', '10:00');
  function leaves(over: Parameters<typeof situationOf>[1], steps: readonly PlannedStep[] = [sand, coat()]) {
    const situation = situationOf(Object.values(tasks), over);
    const ground = groundOf(evidenceOf(situation, { air }), planOf(steps));
    return broughtIn(
      ground.facts.find((f) => f.id === tasks.coat.id)!,
      ground,
    )?.leaves;
  }
  const sanded = { from: on('mon', '08:00'), to: on('mon', '09:00') };

  test('planned: as the step before is over', () => {
    expect(leaves({})).toBe(at);
    expect(leaves({ now: on('mon', '07:00') })).toBe(at);
  });
  test('done last: not before now, unless the plan that the shop follows had it carried', () => {
    const done = new Map([[tasks.sand.id, sanded]]);
    expect(leaves({ now, done })).toBe(now);
    expect(leaves({ now, done, carried: new Map([[tasks.sand.id, at + 5]]) })).toBe(at + 5);
    expect(leaves({ now, done, carried: new Map([[tasks.sand.id, at - 5]]) })).toBe(at);
    expect(leaves({ now: on('mon', '08:30'), done })).toBe(at);
  });
  test('done, and something else of it since: it has been carried', () => {
    const wipe = step(tasks.wipe, { at: on('mon', '09:30'), station: 'booth' });
    const done = new Map([
      [tasks.sand.id, sanded],
      [tasks.wipe.id, { from: on('mon', '09:30'), to: on('mon', '09:40') }],
    ]);
    expect(leaves({ now, done }, [sand, wipe, coat()])).toBe(at);
    const sameEnd = new Map([...done, [tasks.wipe.id, { from: on('mon', '08:30'), to: sanded.to }] as const]);
    expect(
      leaves({ now, done: sameEnd }, [
        sand,
        { ...wipe, spans: [{ start: on('mon', '08:30'), end: sanded.to }] },
        coat(),
      ]),
    ).toBe(now);
  });
  test('while the shop is shut, as it opens; just before somebody locks up, at once', () => {
    const sanded = (day: 'mon' | 'tue', clock: string) =>
      leaves({ now: on('mon', '05:00') }, [step(tasks.sand, { at: on(day, clock), station: 'bench-1' }), late]);
    const late = step(tasks.coat, { at: on('wed', '10:00'), station: 'booth' });
    expect(sanded('mon', '06:00')).toBe(on('mon', '08:00'));
    expect(sanded('mon', '17:30')).toBe(on('tue', '08:00'));
    expect(sanded('tue', '11:00')).toBe(on('tue', '12:00'));
    expect(sanded('tue', '11:01')).toBe(on('tue', '13:00'));
  });
  test('also far ahead, and after weeks in which the shop is shut', () => {
    const DAY = 1440;
    const ahead = (days: number, name: 'sand' | 'coat', at: number) =>
      step(tasks[name], { at: at + days * DAY, station: name === 'sand' ? 'bench-1' : 'booth' });
    const steps = [ahead(70, 'sand', on('mon', '17:30')), ahead(71, 'coat', on('mon', '10:00'))];
    expect(leaves({}, steps)).toBe(on('tue', '08:00') + 70 * DAY);
    const base = situationOf(Object.values(tasks));
    const days = Object.fromEntries(
      Array.from({ length: 28 }, (_, k) => [`2027-${k < 20 ? `01-${12 + k}` : `02-0${k - 19}`}`, []]),
    );
    const shop = { ...base.book.shop, opening: { ...base.book.shop.opening, days } };
    const late = ahead(40, 'coat', on('mon', '10:00'));
    const sanded = step(tasks.sand, { at: on('mon', '17:30'), station: 'bench-1' });
    // Shut from Tuesday 12 January to Monday 8 February.
    expect(leaves({ book: { ...base.book, shop } }, [sanded, late])).toBe(on('tue', '08:00') + 28 * DAY);
    // A plan that lays the coat into those weeks is no reason to carry sooner.
    expect(leaves({ book: { ...base.book, shop } }, [sanded, ahead(1, 'coat', on('mon', '10:00'))])).toBe(
      on('tue', '08:00') + 28 * DAY,
    );
  });
  test('never, where the shop does not open any more', () => {
    const base = situationOf(Object.values(tasks));
    const shut = { ...base.book.shop, opening: { week: noDay, days: {} } };
    expect(leaves({ book: { ...base.book, shop: shut } })).toBe(Infinity);
  });
  test('from where it was last, in whatever order the steps stand; at the last moment, too', () => {
    const again = step(tasks.look, { at: on('mon', '10:00'), station: 'bench-1' });
    expect(leaves({}, [again, sand, coat()])).toBe(on('mon', '10:10'));
    const atStart = step(tasks.look, { at: start - 10, station: 'bench-1' });
    expect(leaves({}, [sand, atStart, coat()])).toBe(start - 10 + 10);
    const after = step(tasks.look, { at: start - 9, station: 'bench-1' });
    expect(leaves({}, [sand, after, coat()])).toBe(at);
  });
  test('from the last of several rooms', () => {
    const base = situationOf(Object.values(tasks));
    const { shop } = base.book;
    const shed = { id: 'shed', name: 'Shed', room: 'shed', kind: 'floor', slots: 1 } as const;
    const book = { ...base.book, shop: { ...shop, stations: [...shop.stations, shed] } };
    const inShed = {
      ...step(tasks.look, { at: on('mon', '10:00'), station: 'bench-1' }),
      room: 'shed',
      station: 'shed',
    };
    for (const steps of [
      [sand, inShed, coat()],
      [inShed, sand, coat()],
    ]) {
      const ground = groundOf(
        evidenceOf({ ...base, book }, { air: new Map([...air, ['shed', still(8, 50)]]) }),
        planOf(steps),
      );
      expect(broughtIn(ground.facts[2]!, ground)).toMatchObject({ room: 'shed', leaves: on('mon', '10:10') });
    }
  });
  test('another piece’s section of the same name is another section', () => {
    const other = task('chair/top/look', [way(10)]);
    const steps = [step(other, { at: on('mon', '11:00'), station: 'bench-2' }), sand, coat()];
    expect(leaves({ tasks: [...Object.values(tasks), other] }, steps)).toBe(at);
  });
  test('not before all that was laid on it there can be moved; what was laid elsewhere does not count', () => {
    const primed = (station: string, kind: 'bench' | 'spray') => {
      const prime = top('prime', [{ ...sprayed, stations: [kind] }]);
      const steps = [step(prime, { at: on('mon', '07:00'), station }), sand, coat()];
      const situation = situationOf([...Object.values(tasks), prime], { now: on('mon', '06:00') });
      const ground = groundOf(evidenceOf(situation, { air }), planOf(steps));
      return [ground.facts[0]?.movableFrom, broughtIn(ground.facts[2]!, ground)?.leaves];
    };
    const [movable, leavesThen] = primed('bench-1', 'bench');
    expect(movable).toBeGreaterThan(on('mon', '17:00'));
    expect(leavesThen).toBe(Math.max(movable!, on('tue', '08:00')));
    expect(primed('booth', 'spray')[1]).toBe(at);
  });
  test('where nothing is known of the air there, nothing is said', () => {
    const situation = situationOf(Object.values(tasks));
    const warm = new Map([['spray-room', still(23, 50)]]);
    const ground = groundOf(evidenceOf(situation, { air: warm }), planOf([sand, coat()]));
    expect(broughtIn(ground.facts[1]!, ground)).toBeUndefined();
    const bare = groundOf(evidenceOf(situation, { air }), planOf([coat()]));
    expect(broughtIn(bare.facts[0]!, bare)).toBeUndefined();
  });
});

const noDay = { monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] };
