import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { appendDeeds } from '../../src/files/journal/append.ts';
import { FIRST_SUM, writeLine } from '../../src/files/journal/line.ts';
import { journalIn } from '../../src/files/journal/read.ts';
import { JOURNAL_FILE } from '../../src/files/shop-files.ts';
import { repairedJournal } from '../../src/files/journal/repair.ts';
import { FileTrouble } from '../../src/files/file-trouble.ts';
import { LOCK_FILE } from '../../src/files/lock.ts';
import { PLAN_FILE } from '../../src/files/plan-file.ts';
import { repairShop } from '../../src/files/repair-shop.ts';
import type { Deed } from '../../src/model/journal.ts';
import fc from '../support/property.ts';
import { Crash, failingDisk, type Failure } from './failing-disk.ts';
import { journalLines } from './journal-lines.ts';
import { emptyFolder } from './shop-folder.ts';

const AT = 29_993_000;
const skipped = (task: string): Deed => ({ kind: 'skipped', task });
const deeds: readonly Deed[] = [
  skipped('a'),
  { kind: 'done', task: 'b', from: AT, to: AT + 30 },
  { kind: 'seen', task: 'b', sighting: 'tacky', mark: 'touch' },
  { kind: 'undo', entry: 3 },
  skipped('e-ä-😀'),
  { kind: 'undo', entry: 1 },
  skipped('g'),
];

const lines = journalLines(deeds, AT);
const journal = Buffer.from(lines.join(''));

/** What a journal says once numbers do not matter: each deed, an undo by what it takes back. */
function saysOf(bytes: Uint8Array): string[] {
  const { entries, findings } = journalIn(bytes);
  expect(findings).toEqual([]);
  const says = (deed: Deed): string =>
    deed.kind === 'undo' ? `not ${says(entries[deed.entry - 1]!.deed)}` : JSON.stringify(deed);
  return entries.map((e) => says(e.deed));
}

const said = saysOf(journal);

/** Is `part` what is left of `whole` when some of it is taken out? */
function isLeftOf(part: readonly string[], whole: readonly string[]): boolean {
  let from = 0;
  return part.every((text) => (from = whole.indexOf(text, from) + 1) > 0);
}

describe('a damaged journal', () => {
  test('that is whole needs no repair, nor does one of a newer Drybench', () => {
    expect(repairedJournal(journal)).toBeUndefined();
    const newer = writeLine(FIRST_SUM, { v: 2, n: 1, at: '2027-01-11T07:30:00Z', kind: 'done' }).line;
    expect(repairedJournal(Buffer.from(newer))).toBeUndefined();
    const rest = lines.slice(0, 2).join('');
    const { sum } = journalIn(Buffer.from(rest));
    const newerLater = writeLine(sum, { v: 2, n: 3, at: '2027-01-11T07:30:00Z', kind: 'polished' }).line;
    expect(repairedJournal(Buffer.from(`${rest}spoilt\n${newerLater}`))).toBeUndefined();
  });

  test('any bit of any byte turned over costs at most that line and who takes it back', () => {
    for (let index = 0; index < journal.length; index += 1) {
      const turned = Buffer.from(journal);
      turned[index] = turned[index]! ^ (1 << (index % 8));
      const line = journal.subarray(0, index).toString('latin1').split('\n').length;
      const repaired = repairedJournal(turned)!;
      const left = saysOf(Buffer.from(repaired.text));
      expect(isLeftOf(left, said)).toBe(true);
      // The sixth takes back the first, the fourth the third.
      const lost = new Set([line]);
      if (lost.has(1)) lost.add(6);
      if (lost.has(3)) lost.add(4);
      const must = said.filter((_, i) => !lost.has(i + 1));
      expect(isLeftOf(must, left)).toBe(true);
    }
  });

  test('a line whose sum alone is spoilt is proven by the next one', () => {
    const spoilt = lines.with(1, `${lines[1]!.slice(0, 9)}${lines[1]![9] === '0' ? '1' : '0'}${lines[1]!.slice(10)}`);
    expect(saysOf(Buffer.from(repairedJournal(Buffer.from(spoilt.join('')))!.text))).toEqual(said);
  });

  test('cut off at any byte it keeps the whole records', () => {
    for (let length = 0; length <= journal.length; length += 1) {
      const cut = journal.subarray(0, length);
      const repaired = repairedJournal(cut);
      const { entries } = journalIn(cut);
      if (repaired === undefined) expect(journalIn(cut).findings).toEqual([]);
      else expect(saysOf(Buffer.from(repaired.text))).toEqual(said.slice(0, entries.length));
    }
  });

  test.each<[string, (l: string[]) => string[], readonly number[]]>([
    [
      'a line taken out costs that line and the next, which nothing proves',
      ([a, , ...rest]) => [a!, ...rest],
      [2, 3, 4],
    ],
    [
      'a line lost wholly costs the next as well',
      ([a, b, c, d, ...rest]) => [a!, b!, c!, d!, 'x\n', ...rest.slice(1)],
      [5, 6],
    ],
    ['two lines changed over cost nothing', ([a, b, ...rest]) => [b!, a!, ...rest], []],
    ['a line doubled costs nothing', ([a, ...rest]) => [a!, a!, ...rest], []],
    ['an empty line costs nothing', ([a, ...rest]) => [a!, '\n', ...rest], []],
    ['a foreign line costs nothing', ([a, ...rest]) => [a!, '{"kind":"done"}\n', ...rest], []],
  ])('%s', (_, change, lost) => {
    const repaired = repairedJournal(Buffer.from(change([...lines]).join('')))!;
    expect(saysOf(Buffer.from(repaired.text))).toEqual(said.filter((_line, i) => !lost.includes(i + 1)));
  });

  test('whatever is done to it: what is kept was once written, in its order, and a second repair finds nothing', () => {
    const harm = fc.record({
      at: fc.nat(journal.length - 1),
      length: fc.nat(150),
      bytes: fc.uint8Array({ maxLength: 20 }),
    });
    fc.assert(
      fc.property(fc.array(harm, { minLength: 1, maxLength: 4 }), (harms) => {
        const spoilt = harms.reduce(
          (bytes, h) => Buffer.concat([bytes.subarray(0, h.at), h.bytes, bytes.subarray(h.at + h.length)]),
          journal,
        );
        const repaired = repairedJournal(spoilt);
        if (repaired === undefined) {
          expect(journalIn(spoilt).findings).toEqual([]);
          return;
        }
        const text = Buffer.from(repaired.text);
        expect(isLeftOf(saysOf(text), said)).toBe(true);
        expect(repairedJournal(text)).toBeUndefined();
      }),
      { numRuns: 500 },
    );
  });
});

function brokenShop(): { folder: string; spoilt: Buffer } {
  const folder = emptyFolder();
  const spoilt = Buffer.from(lines.with(4, 'not a record\n').join(''));
  writeFileSync(join(folder, JOURNAL_FILE), spoilt);
  writeFileSync(join(folder, PLAN_FILE), '{ "format": "drybench.plan/1", "madeAt"');
  return { folder, spoilt };
}

describe('the repair of a shop', () => {
  test('keeps a copy of all, says what it did, and then the shop can be written to', () => {
    const { folder, spoilt } = brokenShop();
    const [ofJournal, ofPlan, ...more] = repairShop(folder);
    expect(more).toEqual([]);
    expect(ofJournal).toMatchObject({ file: JOURNAL_FILE, kept: 5, takenOut: [{ line: 5 }, { line: 6 }] });
    expect(ofJournal).toHaveProperty('takenOut.0.text', 'not a record');
    expect(readFileSync(join(folder, ofJournal!.copy))).toEqual(spoilt);
    expect(readFileSync(join(folder, ofPlan!.copy), 'utf8')).toBe('{ "format": "drybench.plan/1", "madeAt"');
    expect(existsSync(join(folder, PLAN_FILE))).toBe(false);
    const options = { at: AT, zone: 'UTC', command: 'test' };
    expect(appendDeeds(folder, () => [skipped('h')], options).ok).toBe(true);
    expect(repairShop(folder)).toEqual([]);
  });

  test('leaves what a newer Drybench wrote, and what can be read', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, JOURNAL_FILE), journal);
    writeFileSync(join(folder, PLAN_FILE), '{"format":"drybench.plan/2"}');
    expect(repairShop(folder)).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual([JOURNAL_FILE, PLAN_FILE]);
  });

  test('sets aside a folder that stands where the plan should, and other own files that are broken', () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, PLAN_FILE));
    writeFileSync(join(folder, 'x.json'), 'x');
    writeFileSync(join(folder, 'y.json'), 'y');
    const isBroken = (bytes: Uint8Array) => Buffer.from(bytes).toString() === 'x';
    const files = ['x.json', 'y.json', 'z.json'].map((file) => ({ file, isBroken }));
    expect(repairShop(folder, files).map((r) => r.file)).toEqual([PLAN_FILE, 'x.json']);
    expect(existsSync(join(folder, 'y.json'))).toBe(true);
  });

  test.each<Failure>(['EIO', 'ENOSPC', 'short-write', 'crash'])(
    'with the n-th call failing by %s, for every n, nothing is lost, and the next try mends all',
    (failure) => {
      for (let n = 1; ; n += 1) {
        const { folder, spoilt } = brokenShop();
        const { disk, failed } = failingDisk(n, failure);
        let done = false;
        try {
          repairShop(folder, [], { disk, waitMs: 0 });
          done = true;
        } catch (error) {
          expect(error instanceof FileTrouble || error instanceof Crash).toBe(true);
        }
        const journals = readdirSync(folder).filter(
          (name) => name === JOURNAL_FILE || name.startsWith('journal.damaged'),
        );
        expect(journals.map((name) => readFileSync(join(folder, name)).equals(spoilt))).toContain(true);
        const plans = readdirSync(folder).filter((name) => name.startsWith(PLAN_FILE));
        expect(plans.map((name) => readFileSync(join(folder, name), 'utf8').length)).toEqual([39]);
        const lock = join(folder, LOCK_FILE);
        // The process of a crash is gone; in this test it is this one, which is not.
        if (existsSync(lock)) writeFileSync(lock, JSON.stringify({ pid: 999_999_999, host: hostname() }));
        repairShop(folder);
        expect(saysOf(readFileSync(join(folder, JOURNAL_FILE)))).toEqual(said.toSpliced(4, 2));
        if (!failed()) {
          expect(done).toBe(true);
          expect(n).toBeGreaterThan(20);
          return;
        }
      }
    },
  );
});
