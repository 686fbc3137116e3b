import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { drybench } from '../commands/run-cli.ts';
import { inShop, pieceFile, shopFile } from '../commands/small-shop.ts';

// What holds of single parts elsewhere, here asked of whole commands.

const program = `"${process.execPath}" "${resolve('bin/drybench.js')}"`;
const sh = (line: string, env: Readonly<Record<string, string>> = {}) =>
  spawnSync('sh', ['-c', line], { encoding: 'utf8', cwd: '/', env: { PATH: process.env['PATH'], ...env } });
const isPosix = process.platform !== 'win32';
const hasScript = isPosix && sh('script -qec true /dev/null').status === 0;
const at = '--at 2027-01-11T07:30';

test('a journal cut off anywhere: the next command says so, keeps what was whole, and sets the rest aside', () =>
  inShop({}, async (folder) => {
    const file = join(folder, 'journal.jsonl');
    const say = (...words: string[]) => drybench([...words, '--shop', folder], { columns: 200 });
    for (const clock of ['09:00', '09:10', '09:20', '09:30', '09:40', '09:50'])
      expect(await say('slip', 'stool', 'wipe', `2027-01-12T${clock}`)).toMatchObject({ code: 0, err: '' });
    const whole = readFileSync(file);
    const ends = [...whole.toString('latin1').matchAll(/\n/g)].map((m) => m.index + 1);
    for (let length = 1; length < whole.length; length += 41) {
      if (ends.includes(length) || ends.includes(length + 1)) continue;
      writeFileSync(file, whole.subarray(0, length));
      const looked = await say('check');
      expect(looked).toMatchObject({ code: 0 });
      expect(looked.out).toContain('was cut short while it was written');
      expect(readFileSync(file)).toEqual(whole.subarray(0, length));
      const entered = await say('slip', 'stool', 'paint-2', '2027-01-12T09:00');
      expect(entered.code).toBe(0);
      expect(entered.err).toContain('had been cut short');
      const kept = ends.filter((end) => end <= length).at(-1) ?? 0;
      expect(readFileSync(file).subarray(0, kept)).toEqual(whole.subarray(0, kept));
      expect(readFileSync(file).at(-1)).toBe(10);
      const aside = readdirSync(folder).filter((name) => name.startsWith('journal.torn-'));
      expect(aside.map((name) => readFileSync(join(folder, name)).toString())).toContain(
        whole.subarray(kept, length).toString(),
      );
    }
  }));

test('a time that clocks skip is refused with both readings, one that they show twice is the first, and says so', () =>
  inShop({ 'shop.yaml': shopFile.replace('Europe/Dublin', 'America/New_York') }, async (folder) => {
    const skipped = await drybench(['today', '--at', '2027-03-14T02:30'], { folder });
    expect({ code: skipped.code, out: skipped.out }).toEqual({ code: 2, out: '' });
    expect(skipped.err).toContain('01:30-05:00');
    expect(skipped.err).toContain('03:30-04:00');
    const twice = await drybench(['today', '--at', '2027-11-07T01:30'], { folder });
    expect(twice.code).toBe(0);
    expect(twice.err).toContain('-04:00');
  }));

test.skipIf(!isPosix)('answers and warnings go their own ways; who stops reading early sees no more than he read', () =>
  inShop({}, (folder) => {
    const week = `${program} week --look --shop "${folder}" ${at}`;
    const json = sh(`${week} --json 2>/dev/null`);
    expect(JSON.parse(json.stdout)).toMatchObject({ format: 'drybench.plan/1' });
    const piped = sh(`${week} | cat`, { FORCE_COLOR: '' });
    expect(piped.stdout.length).toBeGreaterThan(100);
    expect(piped.stdout).not.toContain('\u001b');
    const head = sh(`${week} | head -1`);
    expect({ status: head.status, err: head.stderr }).toEqual({ status: 0, err: '' });
    expect(head.stdout.split('\n')).toHaveLength(2);
    return Promise.resolve();
  }),
);

test.skipIf(!hasScript)('on a terminal: colour, none with NO_COLOR, and none of a name’s own', () =>
  inShop({ 'pieces/stool.yaml': pieceFile('"Stool \\e]0;x\\a \\x9b31m \\u202e"') }, (folder) => {
    const onTerminal = (env: Readonly<Record<string, string>>) =>
      sh(`script -qec '${program} week --look --shop "${folder}" ${at}' /dev/null`, { TERM: 'xterm', ...env }).stdout;
    const sgr = /\u001b\[[\d;]*m/;
    expect(onTerminal({})).toMatch(sgr);
    expect(onTerminal({ NO_COLOR: '1' })).not.toMatch(sgr);
    expect(onTerminal({ TERM: 'dumb' })).not.toContain('\u001b');
    for (const text of [onTerminal({}), onTerminal({ NO_COLOR: '1' })]) {
      // The word of how far the search is clears its line.
      expect(text.replaceAll(new RegExp(`${sgr.source}|\r\u001b\\[K`, 'g'), '')).not.toMatch(
        /[\u001b\u0007\u009b\u202e]/,
      );
      expect(text).toContain('\\u{1b}]0;x');
    }
    return Promise.resolve();
  }),
);
