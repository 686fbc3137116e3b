import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop, shopFile } from './small-shop.ts';

// A cabinet is turned over by two, and the helper is in on Tuesday only, from 13:00.
const helper = `  helper:
    name: Helper
    skills: []
    hours: { tuesday: 13:00-17:00, monday: closed, wednesday: closed, thursday: closed, friday: closed, saturday: closed, sunday: closed }
`;
const files = {
  'shop.yaml': shopFile + helper,
  'recipes/turned.yaml': `name: Turned over
source: common practice, no source
steps:
  - { step: turn, do: Turn it over, stage: repair, time: 10 min, at: bench, people: 2 }
`,
  'pieces/stool.yaml': `name: Cabinet
kind: cabinet
may-carry-lead: no
sections:
  body: { recipe: turned, area: 2 m2 }
`,
};

test('what takes two waits until two are in together, says so, and is not told of air that forbids no coat', () =>
  inShop(files, async (folder) => {
    const run = (...words: string[]) => drybench([...words, '--shop', folder, '--at', '2027-01-11T07:30', '--plain']);
    const week = await run('week', '--look', '--days', '3');
    expect([week.code, week.err]).toEqual([0, '']);
    expect(week.out).toMatch(/13:00-13:10 +Cabinet, Body +Turn it over/);
    expect(week.out).toContain('Owner and Helper');
    expect(week.out).not.toContain('no coating');
    const why = await run('why', 'stool', 'turn');
    expect(why.out.replaceAll(/\s+/g, ' ')).toContain(
      'because it takes 2 hands, who are not in together, or not for long enough, from today 07:30 to tomorrow 13:00',
    );
  }));
