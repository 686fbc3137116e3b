import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';
import { appendDeeds } from '../../src/files/journal/append.ts';
import { readJournal } from '../../src/files/journal/read.ts';
import { JOURNAL_FILE } from '../../src/files/shop-files.ts';
import { LOCK_FILE } from '../../src/files/lock.ts';
import { replaceFile, seen } from '../../src/files/safe-write.ts';
import type { Deed } from '../../src/model/journal.ts';
import fc from '../support/property.ts';
import { losingPower, PowerGone, type Choose } from './losing-power.ts';
import { journalLines } from './journal-lines.ts';
import { emptyFolder } from './shop-folder.ts';

// A process that is killed leaves what it wrote to the system; when the power goes, what was not flushed is gone as well.

const AT = 29_993_000;
const HERE = '/shop';
const skipped = (task: string): Deed => ({ kind: 'skipped', task });
const options = { at: AT, zone: 'Europe/Dublin', command: 'test', waitMs: 0 };

/** Does it at every call at which the power may go, in each case with several choices of what reached the disk. */
function atEveryCall(trial: (goneAt: number, choose: Choose, folder: string) => boolean): void {
  const folder = emptyFolder();
  for (let goneAt = 1; ; goneAt += 1) {
    const gone: boolean[] = [];
    fc.assert(
      fc.property(fc.gen(), (pick) => {
        rmSync(folder, { recursive: true });
        gone.push(trial(goneAt, (count) => pick(fc.nat, { max: count - 1 }), folder));
      }),
      { numRuns: 20 },
    );
    if (gone.includes(true)) continue;
    expect(goneAt).toBeGreaterThan(8);
    return;
  }
}

/** Acts, unless the power goes meanwhile. @returns whether it was acknowledged. */
function acknowledged(act: () => void): boolean {
  try {
    act();
    return true;
  } catch (error) {
    // A call that fails for want of power may be told as any other trouble of the disk.
    expect(error instanceof PowerGone || String(error).includes('cannot be written')).toBe(true);
    return false;
  }
}

test('wherever the power goes, a file that is replaced is the old one or the new one, and the new one once it is told', () => {
  const [old, young] = ['old '.repeat(50), 'new '.repeat(60)];
  atEveryCall((goneAt, choose, folder) => {
    const power = losingPower(HERE, { 'x.yaml': Buffer.from(old) }, goneAt);
    const told = acknowledged(() => replaceFile(power.disk, `${HERE}/x.yaml`, young, seen(Buffer.from(old))));
    power.after(folder, choose);
    const text = readFileSync(join(folder, 'x.yaml'), 'utf8');
    expect(told ? [young] : [old, young]).toContain(text);
    return power.gone();
  });
});

const before = [skipped('a'), skipped('b-ä-😀')];
const whole = Buffer.from(journalLines(before, AT).join(''));
const cut = Buffer.from(journalLines([...before, skipped('c')], AT).join('')).subarray(0, whole.length + 30);

test.each([
  ['a new journal', {}, []],
  ['a journal', { [JOURNAL_FILE]: whole }, before],
  ['a journal whose last record was cut short', { [JOURNAL_FILE]: cut }, before],
])('wherever the power goes while two records are entered into %s, none that was told is lost', (_, files, had) => {
  const added = [skipped('x'), skipped('y')];
  atEveryCall((goneAt, choose, folder) => {
    const power = losingPower(HERE, files, goneAt);
    const told = acknowledged(() => appendDeeds(HERE, () => added, { ...options, disk: power.disk }));
    power.after(folder, choose);
    // The process is gone as well, and its number may be another's.
    rmSync(join(folder, LOCK_FILE), { force: true });
    const state = readJournal(realDisk, { path: folder, label: '' });
    expect(state.findings.filter((f) => f.severity === 'error')).toEqual([]);
    const there = state.entries.map((e) => e.deed);
    expect(there).toEqual([...had, ...added].slice(0, there.length));
    expect(there.length).toBeGreaterThanOrEqual(had.length + (told ? added.length : 0));
    expect(appendDeeds(folder, () => [skipped('z')], options).ok).toBe(true);
    expect(existsSync(join(folder, LOCK_FILE))).toBe(false);
    return power.gone();
  });
});
