// A piece whose old paint waits for its lead test is planned only up to there: nobody may read a date off that.
import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop, pieceFile } from './small-shop.ts';

const recipe = `name: Old paint off
source: common practice, no source
steps:
  - step: look
    do: Look it over
    stage: inspect
    time: 15 min
    at: bench
  - step: wash
    do: Wash it
    stage: clean
    time: 10 min
    at: bench
    material: clean-water-rinse
  - step: scuff
    do: Scuff the old paint
    stage: sand
    time: 30 min
    at: bench
    grit: 180
    disturbs-old-paint: yes
  - step: paint
    do: Brush a coat
    stage: topcoat
    time: 40 min
    at: bench
    material: water-borne-acrylic-enamel
`;
const chest = `${pieceFile('Chest').replace('brushed', 'old-paint')}may-carry-lead: yes\nwanted-by: 2027-02-20\n`;

interface Shown {
  readonly pieces: readonly { readonly id: string; readonly ready: Readonly<Record<string, unknown>> }[];
}

test('until the test it has no date to be handed over, and is not said to be in time', () =>
  inShop({ 'recipes/old-paint.yaml': recipe, 'pieces/chest.yaml': chest }, async (folder) => {
    const run = (...words: string[]) => drybench(words, { folder, columns: 100 });
    const line = async (...words: string[]) =>
      (await run(...words)).out
        .split('\n')
        .find((text) => text.trimStart().startsWith('Chest ') && text.includes('20 Feb'));
    const readyOf = async () =>
      (JSON.parse((await run('week', '--look', '--json')).out) as Shown).pieces.find((p) => p.id === 'chest')?.ready;
    for (const words of [['week', '--look'], ['ready']]) {
      expect(await line(...words)).toMatch(/not planned/);
      expect(await line(...words)).not.toMatch(/in time|%/);
    }
    expect(await readyOf()).not.toHaveProperty('handedOver');
    expect((await run('ready', 'chest')).out).not.toMatch(/in time|hand over/);
    expect((await run('phone', '--file', '-', '--piece', 'chest', '--only', 'ready')).out).not.toContain(
      'BEGIN:VEVENT',
    );
    expect((await run('lead-test', 'chest', 'none')).code).toBe(0);
    expect(await line('week', '--look')).toMatch(/%.*in time/);
    expect(await readyOf()).toHaveProperty('handedOver');
  }));

test('nor is any other date read out of it, and it is said that it waits', () =>
  inShop({ 'recipes/old-paint.yaml': recipe, 'pieces/chest.yaml': chest }, async (folder) => {
    const run = async (...words: string[]) => (await drybench(words, { folder, columns: 100 })).out;
    const waits = 'Chest: the steps that wait for its lead test are not counted.';
    const rowOf = (text: string) => text.split('\n').find((line) => line.startsWith('Chest '));
    expect(rowOf(await run('ready', '--all'))).toMatch(/^Chest +not planned$/);
    for (const words of [['ready'], ['ready', '--all'], ['ready', 'chest']])
      expect(await run(...words)).toContain(waits);
    expect(await run('ready', 'stool')).not.toContain(waits);
    await run('lead-test', 'chest', 'none');
    expect(rowOf(await run('ready', '--all'))).toMatch(/^Chest +\w{3} \d/);
    for (const words of [['ready'], ['ready', '--all'], ['ready', 'chest']])
      expect(await run(...words)).not.toContain(waits);
  }));

test('a test still to come has found nothing: seen from before it, the old paint waits', () =>
  inShop({ 'recipes/old-paint.yaml': recipe, 'pieces/chest.yaml': chest }, async (folder) => {
    const run = (at: string, ...words: string[]) => drybench([...words, '--at', at], { folder, columns: 100 });
    expect((await run('2027-01-13T10:00', 'lead-test', 'chest', 'none')).code).toBe(0);
    const before = await run('2027-01-11T07:30', 'week', '--look');
    expect(before.code, before.err).toBe(0);
    expect(before.out).not.toContain('Scuff the old paint');
    const entered = await run('2027-01-11T09:00', 'done', 'chest', 'scuff');
    expect(entered.code).toBe(2);
    expect(entered.err).toContain('may carry lead');
    expect((await run('2027-01-13T10:00', 'week', '--look')).out).toContain('Scuff the old paint');
  }));
