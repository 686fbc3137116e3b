import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { lastStanding } from '../../src/commands/undo.ts';
import { drybench } from './run-cli.ts';
import { inShop, pieceFile } from './small-shop.ts';

/** `say('09:00', 'done', 'stool')`: that command at that time on 11 January 2027. */
const sayIn =
  (folder: string) =>
  (clock: string, ...words: string[]) =>
    drybench([...words, '--at', `2027-01-11T${clock}`], { folder });

test('a person is told how to take back what was entered; a script, and who takes it back, are not', () =>
  inShop({}, async (folder) => {
    const hint = '  Mistyped? drybench undo takes it back.\n';
    const onTerminal = { folder, isTTY: true, columns: 80 };
    expect(await drybench(['done', 'stool', 'scuff'], onTerminal)).toMatchObject({ code: 0, err: hint });
    expect(await drybench(['undo'], onTerminal)).toMatchObject({ code: 0, err: '' });
    expect(await drybench(['done', 'stool', 'scuff'], { folder })).toMatchObject({ code: 0, err: '' });
  }));

test('a day at the bench: done, seen, failed, again, put off, left out, and taken back', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    expect((await say('08:40', 'done', 'stool')).out).toBe('Noted: Milking stool, seat/scuff done 08:10–08:40.\n');
    expect(
      (await say('08:55', 'done', 'sto', 'wi', '--from', '2027-01-11T08:42', '--to', '2027-01-11T08:50')).out,
    ).toBe('Noted: Milking stool, seat/wipe done 08:42–08:50.\n');
    expect((await say('09:00', 'begun', 'stool', 'paint-1')).out).toBe(
      'Noted: Milking stool, seat/paint-1 begun today 09:00.\n',
    );
    expect((await say('09:10', 'today')).out).toContain('coat 1 (at work)');
    expect((await say('09:40', 'done', 'stool', 'paint-1', '--air', '18 °C 60 %')).code).toBe(0);
    expect((await say('15:05', 'slip', 'stool', 'paint-2', '2027-01-13T10:00')).out).toBe(
      'Noted: Milking stool, seat/paint-2 not before Wed 13 Jan 10:00.\n',
    );
    const week = (await say('15:10', 'week')).out;
    expect(week).toContain('coat 1 (done)');
    expect(week).toMatch(/Wed 13 Jan[^\n]*\n {2}10:00–10:40/);
    expect((await say('15:20', 'undo')).out).toBe('Noted: entry 5 taken back (slipped stool/seat/paint-2).\n');
    expect((await say('15:30', 'seen', 'stool', 'paint-1', 'tack')).out).toBe(
      'Noted: Milking stool, seat/paint-1 is tacky.\n',
    );
    const kinds = readFileSync(join(folder, 'journal.jsonl'), 'utf8')
      .trim()
      .split('\n')
      .map((line) => /"kind":"([a-z-]+)"/.exec(line)?.[1]);
    expect(kinds).toEqual(['done', 'done', 'begun', 'done', 'slipped', 'undo', 'seen']);
  });
});

test('a step entered before those that come first names them; entered or left out, they are asked for no more', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    const told = 'Before it, not entered: seat/scuff, seat/wipe.';
    expect((await say('09:00', 'begun', 'stool', 'paint-1')).out).toContain(told);
    const { out } = await say('10:00', 'done', 'stool', 'paint-1');
    expect(out).toContain(told);
    expect(out).toContain('Done too: drybench done stool STEP. Left out: drybench skip stool STEP.');
    expect((await say('10:00', 'done', 'stool', 'scuff')).out).not.toContain('Before it');
    expect((await say('10:01', 'skip', 'stool', 'wipe')).out).not.toContain('Before it');
    expect((await say('16:00', 'done', 'stool', 'paint-2')).out).not.toContain('Before it');
  });
});

test('steps entered one after the other at the same time do not overlap', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    expect((await say('10:00', 'done', 'stool', 'scuff')).out).toContain('done 09:30–10:00');
    expect((await say('10:00', 'done', 'stool', 'wipe')).out).toContain('done 10:00–10:00');
    expect((await say('10:05', 'done', 'stool', 'paint-1')).out).toContain('done 10:00–10:05');
  });
});

test('a failed coat is sanded back and laid again', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    for (const step of ['scuff', 'wipe', 'paint-1']) expect((await say('10:00', 'done', 'stool', step)).code).toBe(0);
    expect((await say('10:10', 'failed', 'stool', 'paint-1', 'runs')).out).toBe(
      'Noted: Milking stool, seat/paint-1 failed: runs.\n',
    );
    const steps = (JSON.parse((await say('10:15', 'week', '--json')).out) as { steps: { id: string; done?: true }[] })
      .steps;
    expect(steps.filter((s) => s.done !== true).length).toBeGreaterThan(2);
  });
});

test.each([
  ['an end that is still to come', ['done', 'stool', 'scuff', '--to', '2027-01-11T12:00'], '--to lies in the future'],
  [
    'an end before the beginning',
    ['done', 'stool', 'scuff', '--from', '2027-01-11T09:00', '--to', '2027-01-11T08:30'],
    'would end before it begins',
  ],
  ['a sighting of a film that is not laid', ['seen', 'stool', 'paint-1', 'dry'], 'no step of Milking stool is done'],
  ['a sighting that is no word', ['seen', 'stool', 'paint-1', 'sticky'], 'write one of wet, tacky, dry, hard'],
  ['a lead test of a piece that carries none', ['lead-test', 'stool', 'none'], 'may-carry-lead: yes'],
  [
    'a time that is none',
    ['slip', 'stool', 'scuff', 'soon'],
    'drybench: UNTIL "soon" is no time\n  write a date and time like',
  ],
  [
    'putting off to a time that is over',
    ['slip', 'stool', 'scuff', '2027-01-11T09:00'],
    'drybench: "2027-01-11T09:00" is over already\n  write a time after today 09:30',
  ],
  ['air without humidity', ['done', 'stool', 'scuff', '--air', '18 °C'], 'names no humidity'],
])('%s is refused, and nothing is entered', async (_, words, said) => {
  await inShop({}, async (folder) => {
    const { code, out, err } = await sayIn(folder)('09:30', ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
    expect(() => readFileSync(join(folder, 'journal.jsonl'))).toThrow('ENOENT');
  });
});

test('a step that a command is not about is told from one that there is not', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    await say('09:30', 'done', 'stool', 'scuff');
    expect((await say('09:40', 'seen', 'stool', 'paint-1', 'dry')).err).toBe(
      'drybench: "seat/paint-1" of Milking stool is not done yet\n' +
        '  enter it first: drybench done stool seat/paint-1\n',
    );
    expect((await say('09:40', 'skip', 'stool', 'scuff')).err).toBe(
      'drybench: "seat/scuff" of Milking stool is done already\n' +
        '  if it is to be done once more: drybench again stool seat/scuff\n',
    );
    expect((await say('09:40', 'seen', 'stool', 'scrape', 'dry')).err).toContain('there is no step "scrape"');
  });
});

test('a step that is done cannot be done once more, unless `again` says so', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    await say('08:40', 'done', 'stool', 'scuff');
    expect((await say('08:50', 'done', 'stool', 'scuff')).code).toBe(2);
    expect((await say('08:55', 'again', 'stool', 'scuff')).out).toBe('Noted: Milking stool, seat/scuff once more.\n');
  });
});

test('the lead test opens the gate, and only if none was found', async () => {
  const piece = pieceFile('Old stool').replace('sections:', 'may-carry-lead: yes\nsections:');
  const recipe = {
    'recipes/strip.yaml':
      'name: Strip\nabout: Invented.\nsource: common practice, no source\nsteps:\n  - step: scrape\n    do: Scrape the old paint\n    stage: sand\n    time: { fixed: 30 min }\n    at: bench\n    disturbs-old-paint: yes\n',
  };
  await inShop({ ...recipe, 'pieces/stool.yaml': piece.replace('brushed', 'strip') }, async (folder) => {
    const say = sayIn(folder);
    const before = (await say('08:00', 'week', '--days', '1')).out;
    expect(before).not.toContain('Scrape the old paint\n');
    expect(before).toContain('may carry lead paint');
    expect((await say('08:10', 'lead-test', 'stool', 'none')).out).toBe('Noted: no lead found on Old stool.\n');
    expect((await say('08:15', 'week', '--days', '1')).out).toContain('Scrape the old paint');
  });
});

test('undo takes back what still stands, and says when nothing does', async () => {
  const done = (number: number) => ({ number, at: 0, deed: { kind: 'skipped', task: 'a' } as const });
  const undo = (number: number, entry: number) => ({ number, at: 0, deed: { kind: 'undo', entry } as const });
  expect(lastStanding([done(1), done(2), undo(3, 2)])?.number).toBe(1);
  expect(lastStanding([done(1), undo(2, 1), done(3)])?.number).toBe(3);
  expect(lastStanding([done(1), undo(2, 1)])).toBeUndefined();
  await inShop({}, async (folder) => {
    const { code, out, err } = await sayIn(folder)('09:00', 'undo');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('the journal holds nothing to take back');
  });
});

test('work on old paint is not entered before its lead test, nor where lead was found', async () => {
  const files = {
    'pieces/stool.yaml': `${pieceFile('Stool')}may-carry-lead: yes\n`,
    'recipes/brushed.yaml':
      'name: Sanded\nabout: Invented.\nsource: common practice, no source\nsteps:\n  - { step: scuff, do: Sand it, stage: sand, time: 30 min, disturbs-old-paint: yes }\n',
  };
  await inShop(files, async (folder) => {
    const at = ['--at', '2027-01-11T12:00'];
    for (const command of ['done', 'begun']) {
      const { code, err } = await drybench([command, 'stool', 'scuff', ...at], { folder });
      expect(code).toBe(2);
      expect(err).toContain('record the test first');
    }
    await drybench(['lead-test', 'stool', 'found', ...at], { folder });
    const found = await drybench(['done', 'stool', 'scuff', ...at], { folder });
    expect(found.code).toBe(2);
    expect(found.err).toContain('licensed practice');
    await drybench(['lead-test', 'stool', 'none', ...at], { folder });
    expect((await drybench(['done', 'stool', 'scuff', ...at], { folder })).code).toBe(0);
  });
});

test('a look after an entry is remembered, so that the next need not search; what cannot be remembered is shown all the same', async () => {
  await inShop({}, async (folder) => {
    const say = sayIn(folder);
    const plans = () => readdirSync(join(folder, 'plans'));
    await say('08:00', 'week');
    const kept = readFileSync(join(folder, 'plan.json'), 'utf8');
    await say('08:40', 'done', 'stool');
    const first = await say('08:45', 'today');
    expect(plans()).toHaveLength(2);
    expect((await say('08:46', 'ready')).code).toBe(0);
    expect(plans()).toHaveLength(2);
    expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe(kept);
    rmSync(join(folder, 'plans'), { recursive: true });
    writeFileSync(join(folder, 'plans'), 'in the way');
    expect((await say('08:45', 'today')).out).toBe(first.out);
  });
});

test('today says first what window of a film that lies shuts within a day', async () => {
  const enamel = `name: Quick enamel
like: water-borne-acrylic-enamel
windows:
  - { opens: 1 h, shuts: 20 h, source: invented for the test }
  - { opens: 72 h, prep: scuff, source: invented for the test }
`;
  const recipe =
    'name: Two coats\nabout: Invented.\nsource: common practice, no source\nsteps:\n  - { step: paint, do: Brush it, stage: topcoat, time: 40 min, at: bench, material: quick-enamel, coats: 2 }\n';
  await inShop({ 'materials/quick-enamel.yaml': enamel, 'recipes/brushed.yaml': recipe }, async (folder) => {
    const say = sayIn(folder);
    expect((await say('08:00', 'today')).out).not.toContain('shuts within a day');
    expect((await say('09:00', 'done', 'stool', 'paint-1')).code).toBe(0);
    const { out } = await say('09:05', 'today');
    expect(out).toMatch(/^A window shuts within a day\n {2}Milking stool[^\n]*must have begun by tomorrow/);
  });
});
