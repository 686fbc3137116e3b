import { expect, test } from 'vitest';
import type { Proof } from '../../src/model/plan.ts';
import { proofLines } from '../../src/reports/proof.ts';
import { todayScreen } from '../../src/reports/today.ts';
import { readyPiece } from '../../src/reports/ready.ts';
import { weekScreen } from '../../src/reports/week.ts';
import type { Piece } from '../../src/model/piece.ts';
import { tieUpWeight, WORK_WEIGHT } from '../../src/schedule/weights.ts';
import { widthOf } from '../../src/terminal/width.ts';
import { book, look, manner, on, plan, tasks } from './sample.ts';

const unfit = [
  { room: 'garage', span: { start: on(11, '08:00'), end: on(11, '12:30') }, why: 'too cold' },
  { room: 'garage', span: { start: on(11, '13:15'), end: on(11, '17:30') }, why: 'too cold' },
  { room: 'workshop', span: { start: on(12, '08:00'), end: on(12, '09:00') }, why: 'too damp' },
];
const sheet = { book, plan, tasks, unfit };

test('the bench sheet: hours and work, what dries, when not to coat, and what becomes of it', () => {
  expect(`\n${weekScreen(sheet, { manner, look: look(80) }, 3)}`).toBe(`
Mill Lane workshop · planned today 07:30

Mon 11 Jan, today · open 08:00–12:30, 13:15–17:30
  11:50–12:30  Pine washstand  Sand the old paint smooth (goes on later)
               body            Careful: wear a dust mask; sand old paint only
                               once the lead test is in.
                               Bench 1 · grit 180 · tack cloth
  13:15–13:40                  Sand the old paint smooth (goes on)
  13:40–14:30  legs            Wipe the stain on, then off within ten minutes
                               Bench 1 · Oil wiping stain
  14:30–15:20  body            Spray an even wet coat, coat 1
                               Spray corner · Water-borne acrylic enamel · by
                               spray · Sprayer
       drying  Pine washstand  Oil wiping stain: carry and move from tomorrow
               legs            10:30
               body            Water-borne acrylic enamel, coat 1: coat again
                               from tomorrow 09:10, no later than Fri 15 Jan
                               17:00, scuff first
   no coating  Garage          all day: too cold

Tue 12 Jan, tomorrow · open 08:00–12:30, 13:15–17:30
  10:30–11:20  Pine washstand  Spray an even wet coat, coat 2
               body            Spray corner · Water-borne acrylic enamel · by
                               spray · Sprayer
       drying  Pine washstand  Oil wiping stain: carry and move from 10:30
               legs
               body            Water-borne acrylic enamel, coat 1: coat again
                               from 09:10, no later than Fri 15 Jan 17:00, scuff
                               first
                               Water-borne acrylic enamel, coat 2: carry and
                               move from 16:00
   no coating  Workshop        08:00–09:00: too damp

Wed 13 Jan · open 08:00–12:30, 13:15–17:30
    no hands-on work

hand over          usually              safe  chance   wanted by
Pine washstand  Tue 19 Jan  Thu 21 Jan 10:00    90 %  Fri 29 Jan  in time

  Careful: Rags wet with stain can catch fire: hang them outdoors, or lay them
    in water.

  Checked against every rule that no plan may break. Not proven best: at most
  1.9 % could still be gained.
  Standing in the shop counts as 8.3 days, no plan below 8.1 days (a day of a
  piece counts for more the more money is in it).
`);
});

test('on a wide screen piece and section, and where and with what, stand beside what to do', () => {
  const wide = weekScreen(sheet, { manner, look: look(120) }, 1);
  expect(wide).toContain(
    '  13:15–13:40                        Sand the old paint smooth (goes on)\n' +
      '  13:40–14:30  legs                  Wipe the stain on, then off within ten     Bench 1 · Oil wiping stain\n',
  );
});

test.each([40, 59, 60, 80, 99, 100, 120, 200])('no line is wider than %i columns', (columns) => {
  for (const line of weekScreen(sheet, { manner, look: look(columns) }, 7).split('\n'))
    expect(widthOf(line)).toBeLessThanOrEqual(columns);
});

test('without a terminal’s own signs all is ASCII', () => {
  expect(weekScreen(sheet, { manner, look: look(80, true) }, 3)).toMatch(/^[\n\x20-\x7e]+$/);
});

test('a 12-hour shop is told in its own hours', () => {
  const screen = weekScreen(sheet, { manner: { ...manner, clock: 12 }, look: look(80) }, 1);
  expect(screen).toContain('open 8:00 am–12:30 pm, 1:15 pm–5:30 pm');
  expect(screen).toContain('   1:40 pm–2:30 pm  legs');
});

test('who does it stands there only where there is more than one hand', () => {
  const [owner] = book.shop.hands;
  const two = { ...book, shop: { ...book.shop, hands: [owner!, { ...owner!, id: 'helper', name: 'Helper' }] } };
  expect(weekScreen(sheet, { manner, look: look(80) }, 1)).not.toContain('Owner');
  expect(weekScreen({ ...sheet, book: two }, { manner, look: look(80) }, 1)).toContain('Bench 1 · Owner · grit 180');
});

test('the dates of a piece stand under its name on a narrow screen', () => {
  expect(weekScreen(sheet, { manner, look: look(50) }, 1)).toContain(`Pine washstand
  usually    Tue 19 Jan 09:00
  safe       Thu 21 Jan 10:00 (90 %)
  wanted by  Fri 29 Jan 12:00
             in time
`);
});

test('hours stand under hours, on the second of a month and on the twenty-second', () => {
  const [piece] = plan.pieces;
  if (piece === undefined) throw new Error('the sample plan has a piece');
  const after = (days: number) => ({ typical: manner.now + days * 1440, safe: manner.now + days * 1440, chance: 0.9 });
  const ready = { touch: after(8), handle: after(24), handedOver: after(42) };
  const [, head = '', ...rows] = readyPiece({ ...piece, ready }, manner, look(100)).split('\n');
  const ends = rows.slice(0, 3).map((row) => [...row.matchAll(/\d\d:\d\d/g)].map(({ index }) => index + 5));
  expect(ends).toEqual(Array(3).fill(['usually', 'safe'].map((word) => head.indexOf(word) + word.length)));
});

test('a late piece says how late', () => {
  const [piece] = plan.pieces;
  const late = { ...plan, pieces: [{ ...piece!, lateHours: 52 }] };
  expect(weekScreen({ ...sheet, plan: late }, { manner, look: look(80) }, 1)).toContain('2 d 4 h late');
});

test('today: where the person stands in the day, and what opens', () => {
  const at = (minute: number) => ({ manner: { ...manner, now: minute }, look: look(80) });
  expect(`\n${todayScreen(sheet, at(on(12, '08:00')))}`).toBe(`
Tue 12 Jan, today · open 08:00–12:30, 13:15–17:30 · now 08:00
  10:30–11:20  Pine washstand  Spray an even wet coat, coat 2
         next  body            Spray corner · Water-borne acrylic enamel · by
                               spray · Sprayer
  opens 09:10  Pine washstand  Spray an even wet coat, coat 2: may begin, scuff
               body            first; planned 10:30
       drying  Pine washstand  Oil wiping stain: carry and move from 10:30
               legs
               body            Water-borne acrylic enamel, coat 1: coat again
                               from 09:10, no later than Fri 15 Jan 17:00, scuff
                               first
                               Water-borne acrylic enamel, coat 2: carry and
                               move from 16:00
   no coating  Workshop        08:00–09:00: too damp
`);
  expect(todayScreen(sheet, at(on(11, '14:35')))).toMatch(/14:30–15:20.*\n\s+now /);
  expect(todayScreen(sheet, at(on(13, '08:00')))).toContain('Nothing is left to do.');
});

test('a piece that goes on in another room is to be carried there, from when it may be', () => {
  const inGarage = plan.steps.map((s) =>
    s.step === 'enamel-2' ? { ...s, room: 'garage', station: 'garage-bench' } : s,
  );
  const moved = {
    ...book.shop,
    stations: [
      ...book.shop.stations,
      { id: 'garage-bench', name: 'Garage bench', room: 'garage', kind: 'bench', slots: 1 } as const,
    ],
  };
  const screen = todayScreen(
    { ...sheet, book: { ...book, shop: moved }, plan: { ...plan, steps: inGarage } },
    { manner, look: look(200) },
  );
  expect(screen).toContain('to Garage bench in Garage, from 20:00; needed there tomorrow 10:30');
  // What is carried just before it goes on is told one hour.
  const broughtIn = { from: 'workshop', at: on(12, '10:30'), by: on(12, '10:30') };
  const atOnce = inGarage.map((s) => (s.step === 'enamel-2' ? { ...s, broughtIn } : s));
  expect(
    todayScreen(
      { ...sheet, book: { ...book, shop: moved }, plan: { ...plan, steps: atOnce } },
      { manner: { ...manner, now: on(12, '08:00') }, look: look(200) },
    ),
  ).toMatch(/to Garage bench in Garage, today 10:30$/m);
});

test('what a plan costs is said in days of a piece with no money in it, and in hours of work', () => {
  const piece = { name: 'Stool', priceMinor: 0, costMinor: 0 } as Piece;
  const day = tieUpWeight(piece) * 24 * 60;
  const proof: Proof = {
    objective: [
      { name: 'late', value: 12.3 * day, bound: 3.99 * day },
      { name: 'tied up', value: day, bound: day },
      { name: 'moved', value: 0, bound: 0 },
      { name: 'extra work', value: 125 * WORK_WEIGHT, bound: 30 * WORK_WEIGHT },
      { name: 'all', value: 14 * day, bound: 5 * day },
    ],
    gapPercent: 64.31,
    proven: false,
    verified: true,
    steps: 1,
  };
  expect(proofLines(proof, look(240)).join('\n')).toBe(
    `  Checked against every rule that no plan may break. Not proven best: at most 64.4 % could still be gained.
  Being late counts as 13 days, no plan below 3.9 days. Standing in the shop counts as 1 day, the least possible (a day of a piece counts for more the more money is in it). Work that another plan might spare: 1 h 35 min.`,
  );
});
