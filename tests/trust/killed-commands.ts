import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';
import { readJournal } from '../../src/files/journal/read.ts';
import { readPlan } from '../../src/files/plan-file.ts';
import { drybench } from '../commands/run-cli.ts';

const AT = ['--at', '2027-01-11T07:30'];

/** Runs a command as a process of its own and kills it after some time. @returns what it had told by then. */
export function killed(shop: string, words: readonly string[], afterMs: number): Promise<string> {
  const child = spawn(process.execPath, [resolve('bin/drybench.cjs'), ...words, ...AT], {
    cwd: shop,
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  let told = '';
  child.stdout.on('data', (data: Buffer) => (told += data.toString()));
  const timer = setTimeout(() => child.kill('SIGKILL'), afterMs);
  return new Promise((done) =>
    child.on('close', () => {
      clearTimeout(timer);
      done(told);
    }),
  );
}

const journalOf = (shop: string) => readJournal(realDisk, { path: shop, label: '' });

/** How many entries the journal holds; none may be damaged, and none torn that was told of. */
export function entriesIn(shop: string): number {
  const { entries, findings } = journalOf(shop);
  expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
  return entries.length;
}

/** Every file can be read, and the next command works. */
export async function expectSound(shop: string): Promise<void> {
  expect(readPlan(shop).findings).toEqual([]);
  for (const name of readdirSync(shop).filter((n) => n.endsWith('.json')))
    expect(() => void JSON.parse(readFileSync(join(shop, name), 'utf8'))).not.toThrow();
  const { code, out } = await drybench(['check', '--shop', shop]);
  expect({ code, out: code === 0 ? '' : out }).toEqual({ code: 0, out: '' });
}

/** The commands that write, in turn; those that enter something end with `Noted` once it is on the disk. */
export const writing: readonly (readonly string[])[] = [
  ['skip', 'stool', 'scuff'],
  ['undo'],
  ['week'],
  ['begun', 'stool', 'scuff'],
  ['undo'],
  ['phone', '--file', 'phone.ics'],
  ['slip', 'stool', 'wipe', '2027-01-12'],
  ['undo'],
  ['wall', '--file', 'wall.html'],
];

/** Kills a command at each of `count` moments, spread over the time that it takes; nothing told of may be lost. */
export async function killMany(
  shop: string,
  count: number,
  longestMs: number,
): Promise<{ told: number; kept: number }> {
  let told = 0;
  let kept = 0;
  for (let i = 0; i < count; i += 1) {
    const words = writing[i % writing.length] ?? [];
    const before = entriesIn(shop);
    // A golden step spreads the moments evenly however many there are.
    const out = await killed(shop, words, Math.round(((i * 0.618034) % 1) * longestMs));
    const after = entriesIn(shop);
    const isTold = out.includes('Noted');
    if (isTold) expect(after).toBe(before + 1);
    expect(after - before).toBeLessThanOrEqual(1);
    expect(after).toBeGreaterThanOrEqual(before);
    told += Number(isTold);
    kept += after - before;
    if (i % 10 === 9 || i === count - 1) await expectSound(shop);
  }
  return { told, kept };
}
