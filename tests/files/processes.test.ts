import { afterAll, beforeAll, expect, test } from 'vitest';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { realDisk } from '../../src/files/disk.ts';
import { FileTrouble } from '../../src/files/file-trouble.ts';
import { readJournal } from '../../src/files/journal/read.ts';
import { LOCK_FILE, withLock } from '../../src/files/lock.ts';
import { builtWriter, killOnce, removeWriter, startWriter } from './processes.ts';
import { emptyFolder } from './shop-folder.ts';

let script = '';
beforeAll(() => void (script = builtWriter()));
afterAll(() => removeWriter(script));

test('eight processes that write at once lose and double nothing', async () => {
  const folder = emptyFolder();
  const runs = Array.from({ length: 8 }, (_, i) => startWriter(script, folder, 25, `p${i}`));
  for (const { ended } of runs) expect(await ended).toMatchObject({ errors: '', code: 0 });
  const { entries, findings } = readJournal(realDisk, { path: folder, label: '' });
  expect(findings).toEqual([]);
  expect(entries.map((e) => e.number)).toEqual(Array.from({ length: 200 }, (_, i) => i + 1));
  expect(new Set(entries.map((e) => ('task' in e.deed ? e.deed.task : ''))).size).toBe(200);
  expect(existsSync(join(folder, LOCK_FILE))).toBe(false);
}, 120_000);

test('a killed process loses nothing that it told of, and the next command works', async () => {
  const folder = emptyFolder();
  let told = 0;
  for (let run = 0; run < 5; run += 1) told += await killOnce(script, folder, `k${run}`, 13 * run);
  expect(told).toBeGreaterThan(0);
}, 120_000);

const lockOf = (pid: number, host = hostname(), began = '') =>
  JSON.stringify({ pid, host, began, since: '2027-01-11T07:30:00Z', command: 'week' });

function tryLock(folder: string): string {
  try {
    return withLock(realDisk, folder, 'test', () => 'had it', { waitMs: 30 });
  } catch (error) {
    if (error instanceof FileTrouble) return `${error.kind}: ${error.message}`;
    throw error;
  }
}

test.each<[string, string, RegExp]>([
  ['of a process that is gone is taken over', lockOf(2 ** 30), /^had it$/],
  ['of a living process is waited for in vain', lockOf(process.pid), /^in-use: .*"week".*process \d+/],
  [
    'of a living process that took over the number of a dead one is taken over',
    lockOf(process.pid, hostname(), '1'),
    /^had it$/,
  ],
  [
    'of another machine is left alone, and how to remove it is told',
    lockOf(2 ** 30, 'elsewhere'),
    /^in-use: .*elsewhere.*remove \.drybench\.lock/,
  ],
  ['just being made is waited for', '', /^in-use/],
])('a lock %s', (_, text, answer) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, LOCK_FILE), text);
  expect(tryLock(folder)).toMatch(answer);
  if (answer.source.includes('had it')) expect(existsSync(join(folder, LOCK_FILE))).toBe(false);
  else expect(readFileSync(join(folder, LOCK_FILE), 'utf8')).toBe(text);
});

test('a lock is let go when what was done under it fails', () => {
  const folder = emptyFolder();
  const fail = () =>
    withLock(realDisk, folder, 'test', () => {
      throw new Error('mine');
    });
  expect(fail).toThrow('mine');
  expect(tryLock(folder)).toBe('had it');
});
