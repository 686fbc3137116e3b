import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';
import { FileTrouble } from '../../src/files/file-trouble.ts';
import { appendDeeds } from '../../src/files/journal/append.ts';
import { FIRST_SUM, writeLine } from '../../src/files/journal/line.ts';
import { journalIn, readJournal } from '../../src/files/journal/read.ts';
import { JOURNAL_FILE } from '../../src/files/shop-files.ts';
import { LOCK_FILE } from '../../src/files/lock.ts';
import type { Deed, Entry } from '../../src/model/journal.ts';
import { Crash, failingDisk, type Failure } from './failing-disk.ts';
import { journalLines } from './journal-lines.ts';
import { emptyFolder } from './shop-folder.ts';

const AT = 29_993_000;
const task = 'chair/frame/coat-1';
const six: readonly Deed[] = [
  { kind: 'done', task, from: AT, to: AT + 30, station: 'bench', way: '', air: { tempC: 18.5, rhPercent: 60 } },
  { kind: 'seen', task, sighting: 'tacky', mark: 'touch' },
  { kind: 'begun', task: 'chair/frame/sand', from: AT + 5 },
  { kind: 'failed', task, fault: 'fish-eyes' },
  { kind: 'lead-test', piece: 'stuhl-ä-😀', found: true },
  { kind: 'undo', entry: 5 },
];

const bytes = Buffer.from(journalLines(six, AT).join(''));
const folderWith = (journal: Uint8Array): string => {
  const folder = emptyFolder();
  writeFileSync(join(folder, JOURNAL_FILE), journal);
  return folder;
};
const shop = (path: string) => ({ path, label: '' });
const options = { at: AT, zone: 'Europe/Dublin', command: 'test', waitMs: 0 };
const codes = (findings: readonly { code: string }[]) => findings.map((f) => f.code);

describe('what is written is read again', () => {
  const minute = fc.integer({ min: 10_000, max: 100_000_000 });
  const deed: fc.Arbitrary<Deed> = fc.oneof(
    fc.record({
      kind: fc.constant('done' as const),
      task: fc.string({ minLength: 1, maxLength: 50 }),
      from: minute,
      to: minute,
    }),
    fc.record({
      kind: fc.constant('slipped' as const),
      task: fc.string({ minLength: 1, maxLength: 50 }),
      until: minute,
    }),
    fc.constantFrom(...six),
  );

  test('any deeds, in any zone', () => {
    fc.assert(
      fc.property(
        fc.array(deed, { maxLength: 8 }),
        fc.constantFrom('UTC', 'America/St_Johns', 'Pacific/Auckland', 'Europe/Dublin'),
        (deeds, zone) => {
          const folder = emptyFolder();
          appendDeeds(folder, () => deeds, { ...options, zone });
          const state = readJournal(realDisk, shop(folder));
          expect(state.findings).toEqual([]);
          expect(state.entries).toEqual(deeds.map((d, i): Entry => ({ number: i + 1, at: AT, deed: d })));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('an absent journal is empty', () => {
    expect(readJournal(realDisk, shop(emptyFolder()))).toMatchObject({ entries: [], findings: [] });
  });
});

describe('damage', () => {
  test('cut off at every byte: whole records stay, and the tail is told of, set aside and written after', () => {
    const ends = [...bytes.toString('latin1').matchAll(/\n/g)].map((m) => m.index + 1);
    for (let length = 0; length <= bytes.length; length += 1) {
      const state = journalIn(bytes.subarray(0, length));
      const whole = ends.filter((end) => end <= length).length;
      const isOnlyNewlineMissing = ends.includes(length + 1);
      expect(state.entries).toHaveLength(whole + (isOnlyNewlineMissing ? 1 : 0));
      const isTorn = length !== 0 && !ends.includes(length) && !isOnlyNewlineMissing;
      expect(codes(state.findings)).toEqual(isTorn ? ['journal-torn'] : []);
    }
  });

  test('after a cut at any byte the next record follows, and nothing is lost that was whole', () => {
    for (let length = 0; length <= bytes.length; length += 7) {
      const folder = folderWith(bytes.subarray(0, length));
      const before = journalIn(bytes.subarray(0, length));
      const appended = appendDeeds(folder, () => [{ kind: 'skipped', task }], options);
      expect(appended.ok).toBe(true);
      const after = readJournal(realDisk, shop(folder));
      expect(after.findings).toEqual([]);
      expect(after.entries.slice(0, -1)).toEqual(before.entries);
      const aside = readdirSync(folder).filter((name) => name.startsWith('journal.torn-'));
      expect(aside).toHaveLength(before.torn === undefined ? 0 : 1);
      if (before.torn !== undefined) expect(readFileSync(join(folder, aside[0]!))).toEqual(Buffer.from(before.torn));
    }
  });

  test('any bit of any byte turned over is an error with its line, and nothing is written', () => {
    for (let index = 0; index < bytes.length; index += 1) {
      const bit = index % 8;
      const turned = Buffer.from(bytes);
      turned[index] = turned[index]! ^ (1 << bit);
      const state = journalIn(turned);
      const line = bytes.subarray(0, index).toString('latin1').split('\n').length;
      expect(state.findings[0]).toMatchObject({ code: 'journal-damaged', severity: 'error', place: { line } });
      expect(state.findings[0]?.message).toMatch(/from byte \d+ on/);
    }
  });

  test.each<[string, (lines: string[]) => string[]]>([
    ['a line taken out', ([a, , ...rest]) => [a!, ...rest]],
    ['two lines changed over', ([a, b, ...rest]) => [b!, a!, ...rest]],
    ['a line doubled', ([a, ...rest]) => [a!, a!, ...rest]],
    ['an empty line', ([a, ...rest]) => [a!, '', ...rest]],
    ['a foreign line', ([a, ...rest]) => [a!, '{"kind":"done"}', ...rest]],
  ])('%s is an error, and an append leaves the file alone', (_, change) => {
    const lines = bytes.toString('utf8').trimEnd().split('\n');
    const folder = folderWith(Buffer.from(`${change(lines).join('\n')}\n`));
    const before = readFileSync(join(folder, JOURNAL_FILE));
    const appended = appendDeeds(folder, () => [{ kind: 'skipped', task }], options);
    expect(appended).toMatchObject({ ok: false, findings: [{ code: 'journal-damaged' }] });
    expect(readFileSync(join(folder, JOURNAL_FILE))).toEqual(before);
  });

  test('records of a newer Drybench are refused in clear words', () => {
    for (const record of [
      { v: 2, n: 1, at: '2027-01-11T07:30:00Z', kind: 'done' },
      { v: 1, n: 1, at: '2027-01-11T07:30:00Z', kind: 'painted' },
    ]) {
      const state = journalIn(Buffer.from(writeLine(FIRST_SUM, record).line));
      expect(codes(state.findings)).toEqual(['newer-journal']);
      expect(state.findings[0]?.message).toContain('a newer Drybench wrote it');
    }
  });

  test('a record whose sum is right and whose content is not', () => {
    const line = writeLine(FIRST_SUM, { v: 1, n: 1, at: 'soon', kind: 'skipped', task }).line;
    expect(codes(journalIn(Buffer.from(line)).findings)).toEqual(['journal-damaged']);
  });
});

test.each<Failure>(['EIO', 'ENOSPC', 'short-write', 'crash'])(
  'with the n-th call failing by %s, for every n, what was acknowledged is there, and the next command works',
  (failure) => {
    for (let n = 1; ; n += 1) {
      // One record was cut short before, so that it must be set aside on the way.
      const folder = folderWith(bytes.subarray(0, bytes.length - 20));
      const { disk, failed } = failingDisk(n, failure);
      let acknowledged = false;
      try {
        acknowledged = appendDeeds(folder, () => [{ kind: 'skipped', task }], { ...options, disk }).ok;
      } catch (error) {
        expect(error instanceof FileTrouble || error instanceof Crash).toBe(true);
      }
      if (failure === 'crash' && existsSync(join(folder, LOCK_FILE))) {
        // The process of a crash is gone; in this test it is this one, which is not.
        const lock = readFileSync(join(folder, LOCK_FILE), 'utf8');
        writeFileSync(
          join(folder, LOCK_FILE),
          lock.replace(/"began":"\d*"/, '"began":"1"').replace(/^$/, '{"pid":999999999,"host":""}'),
        );
      }
      const state = readJournal(realDisk, shop(folder));
      expect(state.findings.filter((f) => f.severity === 'error')).toEqual([]);
      expect(state.entries.slice(0, 5).map((e) => e.deed)).toEqual(six.slice(0, 5));
      if (acknowledged) expect(state.entries[5]?.deed).toEqual({ kind: 'skipped', task });
      else if (failure === 'EIO' || failure === 'ENOSPC') expect(state.entries.length).toBeLessThanOrEqual(6);
      if (!failed()) {
        expect(acknowledged).toBe(true);
        expect(n).toBeGreaterThan(15);
        return;
      }
    }
  },
);
