import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { drybench } from '../commands/run-cli.ts';
import { inShop, pieceFile, shopFile } from '../commands/small-shop.ts';

// What holds of single parts elsewhere, here asked of whole commands.

const program = `"${process.execPath}" "${resolve('bin/drybench.cjs')}"`;
const sh = (line: string, env: Readonly<Record<string, string>> = {}) =>
  spawnSync('sh', ['-c', line], { encoding: 'utf8', cwd: '/', env: { PATH: process.env['PATH'], ...env } });
const isPosix = process.platform !== 'win32';
const hasScript = isPosix && sh('script -qec true /dev/null').status === 0;
const at = '--at 2027-01-11T07:30';

/** A shop's folder with a journal of six entries: a way to run commands there, the journal's file and its bytes. */
async function withSixEntries(folder: string) {
  const file = join(folder, 'journal.jsonl');
  const say = (...words: string[]) => drybench([...words, '--shop', folder], { columns: 200 });
  for (const clock of ['09:00', '09:10', '09:20', '09:30', '09:40', '09:50'])
    expect(await say('slip', 'stool', 'wipe', `2027-01-12T${clock}`)).toMatchObject({ code: 0, err: '' });
  return { file, say, whole: readFileSync(file) };
}

test('a journal cut off anywhere: the next command says so, keeps what was whole, and sets the rest aside', () =>
  inShop({}, async (folder) => {
    const { file, say, whole } = await withSixEntries(folder);
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

test('a bit turned over anywhere in the journal: no command goes on, the line and the byte are named, nothing is written', () =>
  inShop({}, async (folder) => {
    const { file, say, whole } = await withSixEntries(folder);
    // Every 41st byte, so that each part of a line comes to its turn; the last complete line is tried as a whole.
    const lastLine = whole.lastIndexOf(10, whole.length - 2) + 1;
    const tried = [...whole.keys()].filter((i) => i % 41 === 0 || (i >= lastLine && i % 7 === 0));
    for (const index of tried) {
      const turned = Buffer.from(whole);
      turned[index] = turned[index]! ^ (1 << (index % 8));
      writeFileSync(file, turned);
      const line = whole.subarray(0, index).toString('latin1').split('\n').length;
      const looked = await say('check');
      expect([index, looked.code]).toEqual([index, 2]);
      expect(`${looked.out}${looked.err}`).toMatch(new RegExp(`journal\\.jsonl:${line}:.*from byte \\d+ on`));
      if (index % 5 > 0) continue;
      for (const words of [['week'], ['slip', 'stool', 'paint-2', '2027-01-12T09:00'], ['undo']])
        expect([index, words, (await say(...words)).code]).toEqual([index, words, 2]);
      expect(readFileSync(file)).toEqual(turned);
    }
    expect(tried.length).toBeGreaterThan(40);
    expect(readdirSync(folder).filter((name) => name.startsWith('journal.'))).toEqual(['journal.jsonl']);
  }));

test.each([
  ['one alias', 'name: &x Stool\nkind: *x\n', 1, 7],
  ['an alias bomb', 'name: &a [x, x]\nkind: &b [*a, *a]\nprice: [*b, *b]\n', 1, 7],
  ['a key twice', 'name: Stool\nkind: stool\nname: Stool\n', 3, 1],
  ['a key to merge', '<<: { name: Stool }\n', 1, 1],
  ['the prototype of all', '__proto__: { x: 1 }\n', 1, 1],
  ['no number', 'name: Stool\nkind: stool\nprice: .nan EUR\n', 3, 8],
  ['more than any number', 'name: Stool\nkind: stool\nprice: 1e999 EUR\n', 3, 8],
  ['less than no time', 'name: Stool\nkind: stool\nsections: { a: { recipe: brushed, area: -4 m2 } }\n', 3, 41],
  ['a tag', 'name: !foo Stool\n', 1, 7],
  ['two documents', 'name: Stool\n---\nname: Stool\n', 2, 1],
  ['five thousand levels', `name: ${'['.repeat(5000)}\n`, 1, 70],
  ['no UTF-8', Buffer.from([...Buffer.from('name: '), 0xff, 0xfe, 10]), 1, 7],
  ['a NUL', 'name: a\0b\n', 1, 8],
] as const)('%s in a piece: its place, exit code 2, no stack', (_, text, line, column) =>
  inShop({}, async (folder) => {
    writeFileSync(join(folder, 'pieces/odd.yaml'), text);
    const { code, out, err } = await drybench(['check', '--shop', folder], { columns: 200 });
    expect({ code, place: out.includes(`pieces/odd.yaml:${line}:${column}: error: `), out }).toMatchObject({
      code: 2,
      place: true,
    });
    expect(`${out}${err}`).not.toMatch(/^ {4}at |a defect in Drybench/m);
    expect('x' in {}).toBe(false);
  }),
);

test('while another command has the shop, one that writes waits, then says who has it, with exit code 75', () =>
  inShop({}, async (folder) => {
    const holder = { pid: process.pid, host: hostname(), began: '', since: '2027-01-11T07:30:00Z', command: 'week' };
    writeFileSync(join(folder, '.drybench.lock'), JSON.stringify(holder));
    const slip = ['slip', 'stool', 'wipe', '2027-01-12T09:00', '--shop', folder];
    const { code, err } = await drybench(slip, { columns: 200 });
    expect(code).toBe(75);
    expect(err).toContain(`"week"`);
    expect(err).toContain(`process ${process.pid}`);
    expect(readdirSync(folder)).not.toContain('journal.jsonl');
    // Who only looks waits for nobody.
    expect(await drybench(['today', '--shop', folder])).toMatchObject({ code: 0 });
    // Of a process that is gone it is taken over.
    writeFileSync(join(folder, '.drybench.lock'), JSON.stringify({ ...holder, pid: 2 ** 30 }));
    expect(await drybench(slip)).toMatchObject({ code: 0 });
    expect(readdirSync(folder)).not.toContain('.drybench.lock');
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
