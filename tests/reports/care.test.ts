import { expect, test } from 'vitest';
import { readSafetyPages } from '../../src/files/safety-pages.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { careOf, safetyTriggersOf } from '../../src/model/safety.ts';
import { weekScreen } from '../../src/reports/week.ts';
import { todayScreen } from '../../src/reports/today.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { localDay } from '../../src/time/zone.ts';
import { demoBook, demoNow, demoPlan } from '../planning/demo.ts';
import { look } from './sample.ts';

const { pages: safety } = readSafetyPages(shippedDir());
const book = demoBook();
const { plan, situation } = demoPlan(0);
const manner = { now: demoNow, zone: book.shop.timeZone, clock: 24, units: 'metric', currency: 'EUR' } as const;
const sheet = { book, plan, tasks: situation.tasks, unfit: [], safety };
const short = (when: string) => safety.find((p) => p.when === when)?.short ?? 'no such page';

/** The week's screen as one line a day, broken lines joined. */
const screen = weekScreen(sheet, { manner, look: look(400) }, 40);
const days = screen.split(/\n(?=\w{3} \d+ \w{3}[,\d ]*.* · (?:open|closed))/).slice(1);

function count(text: string, part: string): number {
  return text.split(part).length - 1;
}

test('each page is said where the work is, and once a day', () => {
  expect(days.length).toBe(40);
  const taskOf = new Map(situation.tasks.map((t) => [t.id, t]));
  days.forEach((text, plus) => {
    const day = localDay(demoNow, manner.zone, plus);
    const begun = plan.steps.filter((s) => {
      const start = s.spans[0]?.start ?? NaN;
      return start >= day.start && start < day.end;
    });
    const called = begun.flatMap((s) => {
      const task = taskOf.get(s.id);
      return task === undefined ? [] : safetyTriggersOf(task, book.materials.get(task.material ?? ''), false);
    });
    for (const page of safety)
      if (page.when !== 'disturbs-old-paint')
        expect([day.date, page.id, count(text, page.short)]).toEqual([
          day.date,
          page.id,
          called.includes(page.when) ? 1 : 0,
        ]);
  });
  expect(count(screen, short('oily-rags'))).toBeGreaterThan(2);
});

test('the rags come after each oil as a step of their own, at once and by the same hands', () => {
  const oily = plan.steps.filter((s) => book.materials.get(s.material ?? '')?.oilyRags === true);
  expect(oily.length).toBeGreaterThan(5);
  for (const coat of oily) {
    const rags = plan.steps.filter((s) => s.atOnceAfter === coat.id);
    expect(rags.map((s) => [s.id, s.spans[0]?.start, s.hands, s.room])).toEqual([
      [`${coat.id}-rags`, coat.spans[0]?.end, coat.hands, coat.room],
    ]);
  }
  expect(count(screen, 'Oily rags away')).toBe(oily.length);
});

test('what a page says, a recipe does not say again; what only the recipe says stays', () => {
  expect(screen).not.toMatch(/Careful: (Extraction and )?[Dd]ust mask\./);
  expect(screen).toContain('Careful: Lacquer dust burns fast; bag it.');
  const told = new Set(situation.tasks.flatMap((t) => (t.caution === undefined ? [] : [t.caution])));
  for (const caution of told)
    for (const sentence of caution.split(/(?<=\.) +/))
      expect([sentence, screen.includes(sentence) || safety.some((p) => p.covers.includes(sentence))]).toEqual([
        sentence,
        true,
      ]);
});

test('a page covers a sentence only where it is shown', () => {
  const task = situation.tasks.find((t) => t.caution === 'Dust mask.');
  if (task === undefined) throw new Error('no step with a dust mask');
  expect(careOf(task, undefined, safety).own).toEqual([]);
  expect(careOf({ ...task, dusty: false }, undefined, safety).own).toEqual(['Dust mask.']);
  expect(careOf(task, undefined, []).own).toEqual(['Dust mask.']);
});

test('behind a closed lead gate the week and the day say why, and to test first', () => {
  const untested = { ...book, pieces: book.pieces.map((p) => (p.id === 'washstand' ? withoutTest(p) : p)) };
  const { tasks } = situationOf(untested, demoNow);
  const warnings = [{ code: 'lead-gate', text: 'Pine washstand may carry lead paint.' }];
  const held = { ...sheet, tasks, plan: { ...plan, warnings } };
  expect(weekScreen(held, { manner, look: look(400) }, 1)).toContain(`Careful: ${short('disturbs-old-paint')}`);
  expect(todayScreen(held, { manner, look: look(400) })).toContain(`Careful: ${short('disturbs-old-paint')}`);
  expect(todayScreen(sheet, { manner, look: look(400) })).not.toContain(short('disturbs-old-paint'));
});

test('today with all pages: the text, and each figure with its source; and what stands above it', () => {
  const monday = todayScreen(sheet, { manner, look: look(400) }, true);
  const dust = safety.find((p) => p.when === 'dusty');
  for (const text of dust?.text ?? ['no page']) expect(monday).toContain(text);
  for (const { say, source } of dust?.figures ?? []) expect(monday).toContain(`${say} (${source})`);
  expect(monday).toContain('label and safety data sheet of each container, local rules and licensed practice');
});

function withoutTest<T extends { readonly leadTest?: unknown }>(piece: T): Omit<T, 'leadTest'> {
  return Object.fromEntries(Object.entries(piece).filter(([key]) => key !== 'leadTest')) as Omit<T, 'leadTest'>;
}

test('vapours are told in the units of the shop', () => {
  const us = weekScreen(sheet, { manner: { ...manner, units: 'us' }, look: look(400) }, 40);
  expect(screen).toMatch(/\d g of solvent/);
  expect(us).toMatch(/\d\.\d oz of solvent/);
  expect(us).not.toMatch(/\d g of solvent/);
});
