import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop } from './small-shop.ts';

const spoilSecondLine = (folder: string): void => {
  const path = join(folder, 'journal.jsonl');
  writeFileSync(
    path,
    readFileSync(path, 'utf8').replace('"task":"stool/seat/wipe"', '"task":"stool/seat/w\u001b[31m"'),
  );
};

test('a journal with a damaged line is refused with its place, repaired, and written to again', () =>
  inShop({}, async (folder) => {
    const say = (...words: string[]) => drybench([...words, '--shop', folder], { columns: 200 });
    for (const step of ['scuff', 'wipe', 'paint-1'])
      expect(await say('skip', 'stool', step)).toMatchObject({ code: 0 });
    spoilSecondLine(folder);
    const before = readFileSync(join(folder, 'journal.jsonl'));
    const refused = await say('done', 'stool', 'paint-2');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('journal.jsonl:2:1: error: line 2, from byte');
    expect(refused.err).toContain('drybench check --repair');
    expect(readFileSync(join(folder, 'journal.jsonl'))).toEqual(before);

    const { code, out, err } = await say('check', '--repair');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('journal.jsonl: 2 records are whole and stay, 1 line was taken out.');
    expect(out).toContain('line 2: {"sum":');
    expect(out).toContain('w\\u{1b}[31m');
    expect(out).not.toContain('\u001b');
    expect(out).toContain('All is right: 1 piece.');
    const copy = readdirSync(folder).filter((name) => name.startsWith('journal.damaged-'));
    expect(out).toContain(copy[0]);
    expect(copy.map((name) => readFileSync(join(folder, name)))).toEqual([before]);
    expect(await say('skip', 'stool', 'wipe')).toMatchObject({ code: 0 });
    expect((await say('check', '--repair')).out).toContain('Nothing that Drybench itself wrote needs repair.');
  }));

test('what was repaired stands in the JSON answer', () =>
  inShop({ 'plan.json': 'x', 'calendar.json': 'x' }, async (folder) => {
    const { code, out } = await drybench(['check', '--repair', '--json', '--shop', folder]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ repairs: [{ file: 'plan.json' }, { file: 'calendar.json' }], right: true });
  }));

test('a plan of a newer Drybench is refused by all that plan, and left as it is', () =>
  inShop(
    { 'plan.json': '{"format":"drybench.plan/2"}', 'calendar.json': '{"format":"drybench.calendar/2"}' },
    async (folder) => {
      for (const words of [['week'], ['today'], ['ready'], ['buy'], ['wall'], ['phone', '--file', 'x.ics']]) {
        const { code, out, err } = await drybench([...words, '--shop', folder], { folder, columns: 200 });
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain('the plan has the form drybench.plan/2: a newer Drybench wrote it');
      }
      expect(await drybench(['check', '--repair', '--shop', folder])).toMatchObject({ code: 0 });
      expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe('{"format":"drybench.plan/2"}');
      expect(readFileSync(join(folder, 'calendar.json'), 'utf8')).toBe('{"format":"drybench.calendar/2"}');
    },
  ));

test('a plan that cannot be read makes way for a new one, and is kept under another name', () =>
  inShop({ 'plan.json': '{"format":' }, async (folder) => {
    expect(await drybench(['today', '--shop', folder])).toMatchObject({ code: 0 });
    expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe('{"format":');
    const { code, err } = await drybench(['week', '--shop', folder]);
    expect(code).toBe(0);
    const [kept, ...more] = readdirSync(folder).filter((name) => name.startsWith('plan.json.broken-'));
    expect(more).toEqual([]);
    expect(err).toContain(`what stood in plan.json is now in ${kept ?? ''}`);
    expect(readFileSync(join(folder, kept!), 'utf8')).toBe('{"format":');
    expect(await drybench(['today', '--shop', folder])).toMatchObject({ code: 0, err: '' });
  }));
