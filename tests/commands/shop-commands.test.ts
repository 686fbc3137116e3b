import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli.ts';
import { drybench } from './run-cli.ts';
import { inShop, pieceFile, shopFile } from './small-shop.ts';

const at = ['--at', '2027-01-11T07:30'];

test('week: the bench sheet on standard output, nothing else', async () => {
  await inShop({}, async (folder) => {
    const { code, out, err } = await drybench(['week', ...at, '--days', '2'], { folder });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Quay workshop · planned today 07:30\n\nMon 11 Jan, today · open 08:00–17:00\n/);
    expect(out).toContain('08:00–08:30  Milking stool, Seat  Scuff the old varnish');
    expect(out).toContain('Bench · grit 180');
    expect(out).toMatch(/no coating {2}Shed +all day: too cold/);
    expect(out).not.toContain('\u001b');
  });
});

test('week --json: one document, the same to the byte each time, with times on the clock of the shop', async () => {
  await inShop({}, async (folder) => {
    const first = await drybench(['week', ...at, '--json'], { folder });
    const second = await drybench(['week', '--json', ...at], { folder });
    expect(second.out).toBe(first.out);
    const plan = JSON.parse(first.out) as { format: string; madeAt: string; steps: { id: string }[] };
    expect(plan.format).toBe('drybench.plan/1');
    expect(plan.madeAt).toBe('2027-01-11T07:30:00+00:00');
    expect(plan.steps[0]?.id).toBe('stool/seat/scuff');
  });
});

test('week keeps the plan in the folder of the shop, unless it only looks', async () => {
  await inShop({}, async (folder) => {
    const file = join(folder, 'plan.json');
    await drybench(['week', ...at, '--look'], { folder });
    expect(existsSync(file)).toBe(false);
    const { out } = await drybench(['week', ...at, '--json'], { folder });
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(out));
  });
});

test('week --picture: each section through the days at a glance', async () => {
  await inShop({}, async (folder) => {
    const { out } = await drybench(['week', ...at, '--days', '2', '--picture'], { folder });
    expect(out).toMatch(/\n +Mon 11 +│Tue 12 *\nMilking stool, Seat +[·█░= ]+│[·█░= ]+\n/);
  });
});

test('where no plan exists: what cannot hold together, and what may free it; exit code 1', async () => {
  const cold = { 'shop.yaml': shopFile.replace('room: workshop', 'room: shed') };
  await inShop(cold, async (folder) => {
    const { code, out, err } = await drybench(['week', ...at], { folder });
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/^drybench: no plan exists: these demands cannot hold together\n {2}- “Brush a thin even coat/);
    expect(err).toContain('there is no hour');
    expect(err).toMatch(/to have a plan: warm Shed by \d+ °C or/);
  });
});

test('colour only where it is wanted', async () => {
  await inShop({}, async (folder) => {
    const out = async (env: Record<string, string>, isTTY: boolean, ...words: string[]) =>
      (await drybench(['ready', ...at, ...words], { folder, env, isTTY, columns: 80 })).out;
    expect(await out({}, true)).toContain('\u001b[1mMilking stool');
    expect(await out({ FORCE_COLOR: '1' }, false)).toContain('\u001b[1m');
    for (const bare of [
      await out({}, false),
      await out({ NO_COLOR: '1', FORCE_COLOR: '1' }, true),
      await out({ TERM: 'dumb' }, true),
      await out({ FORCE_COLOR: '1' }, true, '--plain'),
    ])
      expect(bare).not.toContain('\u001b');
  });
});

test('a piece by the beginning of its name; what may be done with it from when', async () => {
  await inShop({}, async (folder) => {
    const { code, out } = await drybench(['ready', 'mil', ...at], { folder });
    expect(code).toBe(0);
    expect(out).toMatch(/^Milking stool\n {2}from then on/);
    expect(out).toMatch(/touch lightly +tomorrow \d\d:\d\d +tomorrow \d\d:\d\d +90 %/);
    expect(out).toMatch(/full use: wet, hot, cleaned/);
  });
});

test('what may be done stands in the order in which it becomes safe', async () => {
  await inShop({}, async (folder) => {
    const { out } = await drybench(['ready', 'stool', ...at], { folder });
    const { pieces } = JSON.parse((await drybench(['ready', 'stool', '--json', ...at], { folder })).out) as {
      readonly pieces: readonly { readonly ready: Readonly<Record<string, { readonly safe: string }>> }[];
    };
    const safe = (mark: string) => pieces[0]?.ready[mark]?.safe ?? '';
    expect(safe('recoat') < safe('tape')).toBe(true);
    expect(out.indexOf('coat again')).toBeLessThan(out.indexOf('mask with low-tack tape'));
    expect(out.indexOf('mask with low-tack tape') < out.indexOf('carry and move')).toBe(safe('tape') < safe('handle'));
  });
});

test('a piece that is not there: what was typed, and what there is', async () => {
  await inShop({}, async (folder) => {
    const { code, out, err } = await drybench(['ready', 'stol', ...at], { folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe('drybench: there is no piece "stol"\n  did you mean stool?\n');
  });
});

test('a name that may mean several is asked about at a terminal, and refused elsewhere', async () => {
  const two = { 'pieces/stand.yaml': pieceFile('Plant stand'), 'pieces/stool.yaml': pieceFile('Stool') };
  await inShop(two, async (folder) => {
    const refused = await drybench(['ready', 'st', ...at], { folder });
    expect({ code: refused.code, out: refused.out }).toEqual({ code: 2, out: '' });
    expect(refused.err).toContain('"st" may mean 2 pieces');
    const asked = await drybench(['ready', 'st', ...at], { folder, isTTY: true, env: { NO_COLOR: '1' }, typed: '1\n' });
    expect(asked.err).toContain('\n   1  Plant stand\n   2  Stool\n > ');
    expect(asked.out).toMatch(/^Plant stand\n/);
    const neither = await drybench(['ready', 'st', ...at], { folder, isTTY: true, typed: 'x\n' });
    expect(neither.code).toBe(2);
  });
});

test('names from files are shown harmless on every screen', async () => {
  const hostile = { 'pieces/stool.yaml': pieceFile('"Stool \\e[2J\\u202e\\u009b31m"') };
  await inShop(hostile, async (folder) => {
    for (const words of [
      ['week', '--days', '1'],
      ['today'],
      ['ready', '--all'],
      ['ready'],
      ['why', 'stool', 'wipe'],
      ['done', 'stool', 'scuff'],
    ]) {
      const { code, out, err } = await drybench([...words, '--at', '2027-01-11T09:30'], { folder });
      expect({ words, code }).toEqual({ words, code: 0 });
      expect(out + err, words.join(' ')).not.toMatch(/[\u001b\u202e\u009b]/);
    }
    const { out } = await drybench(['ready', ...at], { folder, columns: 120 });
    expect(out).toContain('Stool \\u{1b}[2J\\u{202e}\\u{9b}31m');
    const json = await drybench(['ready', '--json', ...at], { folder });
    expect(json.out).not.toMatch(/[\u001b\u202e\u009b]/);
    const [piece] = (JSON.parse(json.out) as { pieces: { name: string }[] }).pieces;
    expect(piece?.name).toBe('Stool \u001b[2J\u202e\u009b31m');
  });
});

test('ready --all has a row a piece, each day one on all of which it holds', async () => {
  await inShop({}, async (folder) => {
    const { out } = await drybench(['ready', '--all', ...at], { folder, columns: 80 });
    const { out: told } = await drybench(['ready', '--json', ...at], { folder });
    const { pieces } = JSON.parse(told) as {
      pieces: { name: string; ready: Record<string, { safe: string }> }[];
    };
    const rows = out.split('\n');
    // What stands over days goes on in a second line rather than cut a name short.
    expect(rows[0]).toMatch(/touch +carry +wrap, set +hand over +clean, use/);
    expect(rows[1]).toMatch(/^ +on$/);
    expect(pieces.length).toBeGreaterThan(0);
    for (const { name, ready } of pieces) {
      const row = rows.find((r) => r.startsWith(name));
      const safe = new Date(ready['touch']!.safe);
      // Midnight itself begins a whole day; any other time waits for the next.
      const day = new Date(safe.getTime() - 60_000);
      day.setUTCDate(day.getUTCDate() + 1);
      expect(row).toContain(` ${String(day.getUTCDate())} `);
    }
  });
});

test('what is wrong in the files: place, line, caret and advice; other commands refuse likewise', async () => {
  const wrong = { 'pieces/stool.yaml': pieceFile('Stool').replace('brushed', 'brushd') };
  await inShop(wrong, async (folder) => {
    const checked = await drybench(['check'], { folder });
    expect({ code: checked.code, err: checked.err }).toEqual({ code: 2, err: '' });
    expect(checked.out).toMatch(/^pieces\/stool\.yaml:6:19: error: /);
    expect(checked.out).toContain(
      '  > 6    seat: { recipe: brushd, area: 0.4 m2, thickness: 18 mm }\n                         ^\n',
    );
    expect(checked.out).toContain('brushed');
    expect(checked.out).toContain('1 error, 0 warnings\n');
    const week = await drybench(['week', ...at], { folder });
    expect({ code: week.code, out: week.out }).toEqual({ code: 2, out: '' });
    expect(week.err).toContain('pieces/stool.yaml:6:19: error: ');
    const json = await drybench(['check', '--json'], { folder });
    expect(JSON.parse(json.out)).toMatchObject({
      format: 'drybench.check/1',
      right: false,
      findings: [{ place: { line: 6 } }],
    });
  });
});

test('a shop that is right says so', async () => {
  await inShop({}, async (folder) => {
    expect(await drybench(['check'], { folder })).toEqual({ code: 0, out: 'All is right: 1 piece.\n', err: '' });
  });
});

// Europe/Dublin, IANA time zone database: 2027-03-28 01:00 goes to 02:00; 2027-10-31 02:00 goes back to 01:00.
test('a time that the clock skips is refused; one that it shows twice is taken as the first, and said', async () => {
  await inShop({}, async (folder) => {
    const skipped = await drybench(['today', '--at', '2027-03-28T01:30'], { folder });
    expect({ code: skipped.code, out: skipped.out }).toEqual({ code: 2, out: '' });
    expect(skipped.err).toContain('--at "2027-03-28T01:30" is no time\n  the clock skips that time');
    const twice = await drybench(['today', '--at', '2027-10-31T01:30', '--json'], { folder });
    expect(twice.code).toBe(0);
    expect(twice.err).toContain('twice');
    expect(JSON.parse(twice.out)).toMatchObject({ now: '2027-10-31T01:30:00+01:00' });
    const odd = await drybench(['today', '--at', 'tomorrow'], { folder });
    expect(odd.code).toBe(2);
    expect(odd.err).toContain('write a date and time like 2027-01-11T07:30');
  });
});

test('DRYBENCH_AT counts as now where --at is not given', async () => {
  await inShop({}, async (folder) => {
    const env = { DRYBENCH_AT: '2027-01-12T09:30' };
    const said = await drybench(['week', '--look', '--json', '--at', '2027-01-12T09:30'], { folder });
    expect((await drybench(['week', '--look', '--json'], { folder, env })).out).toBe(said.out);
    expect((await drybench(['week', '--look', '--json', ...at], { folder, env })).out).not.toBe(said.out);
    const odd = await drybench(['today'], { folder, env: { DRYBENCH_AT: 'tomorrow' } });
    expect(odd.code).toBe(2);
    expect(odd.err).toContain('DRYBENCH_AT "tomorrow"');
  });
});

test.each(['0', '61', '1.5', '-1', 'x'])('--days %s is refused', async (days) => {
  const { code, out, err } = await drybench(['week', `--days=${days}`]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain('write a whole number from 1 to 60');
});

test('a defect is one line, with a stack only on demand', async () => {
  await inShop({}, async (folder) => {
    // A clock that fails stands for any defect.
    const tried = async (env: Record<string, string>, words: readonly string[] = ['today']) => {
      let err = '';
      const code = await run(words, {
        stdin: process.stdin,
        stdout: { write: () => true },
        stderr: { write: (text) => (err += text) },
        env,
        folder,
        clock: () => {
          throw new Error('the clock stopped\u001b[2J');
        },
        page: () => false,
      });
      return { code, err };
    };
    expect(await tried({})).toEqual({
      code: 70,
      err: 'drybench: a defect in Drybench, not in your files: the clock stopped\\u{1b}[2J\n',
    });
    expect((await tried({ DRYBENCH_DEBUG: '1' })).err).toContain('shop-commands.test.ts');
    expect((await tried({}, ['today', '--debug'])).err).toContain('shop-commands.test.ts');
  });
});
