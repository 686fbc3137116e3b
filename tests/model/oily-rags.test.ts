import { describe, expect, test } from 'vitest';
import { applyJournal } from '../../src/model/apply-journal.ts';
import { expand } from '../../src/model/expand.ts';
import { withOilyRags, withoutOldRags } from '../../src/model/oily-rags.ts';
import type { Deed } from '../../src/model/journal.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { materialOf } from '../support/book-parts.ts';
import { book, done, entriesOf, idOf } from './journal-book.ts';

const laid = expand(book).find((t) => t.step === 'coat-1');
const own = laid?.material ?? '';
const oily = {
  ...book,
  materials: new Map([...book.materials, [own, { ...(book.materials.get(own) ?? materialOf(own)), oilyRags: true }]]),
};
const plain = expand(book);
const tasks = expand(oily);
const rags = tasks.filter((t) => t.atOnceAfter !== undefined);

test('each coat of a recipe, also one of the user, gets its step; all others keep their names and order', () => {
  const coats = plain.filter((t) => t.material === own && t.onlyFor === undefined);
  expect(coats.length).toBeGreaterThan(1);
  expect(rags.map((t) => t.id)).toEqual(coats.map((t) => `${t.id}-rags`));
  expect(tasks.filter((t) => t.atOnceAfter === undefined)).toEqual(plain);
  expect(withOilyRags(oily, tasks)).toEqual(tasks);
});

describe('the journal', () => {
  const told = (...deeds: readonly Deed[]) => applyJournal(oily, tasks, entriesOf(...deeds));

  test('cannot leave them out, put them off or plan them without their coat', () => {
    const task = idOf('coat-1-rags');
    const { findings, ...after } = told(
      { kind: 'skipped', task },
      { kind: 'slipped', task, until: 900 },
      { kind: 'repeated', task },
    );
    expect(findings.map((f) => f.message)).toEqual([
      'journal entry 1 leaves out oily rags, which must be put away',
      'journal entry 2 puts off oily rags, which cannot wait',
      'journal entry 3 repeats oily rags without their coat',
    ]);
    expect(after.tasks).toBe(tasks);
  });

  test('a coat left out takes its rags along; one laid again has rags again', () => {
    const ids = (all: readonly { readonly step: string }[]) => all.map((t) => t.step);
    expect(ids(told({ kind: 'skipped', task: idOf('coat-1') }).tasks)).not.toContain('coat-1-rags');
    const failed = told(done('coat-1', 100), { kind: 'failed', task: idOf('coat-1'), fault: 'runs' });
    expect(ids(failed.tasks)).toEqual(expect.arrayContaining(['coat-1-rags', 'coat-1-redo-rags']));
    const old = failed.tasks.find((t) => t.step === 'coat-1-rags');
    expect(old?.needs).toEqual([{ kind: 'order', task: idOf('coat-1'), waitHours: 0 }]);
    const again = told(done('coat-1', 100), { kind: 'repeated', task: idOf('coat-1') });
    expect(ids(again.tasks)).toContain('coat-1-again-rags');
  });

  test('a coat that is done leaves its rags to be put away, until three days after', () => {
    const entries = entriesOf(done('coat-1', 1000));
    const end = applyJournal(oily, tasks, entries).done.get(idOf('coat-1'))?.to ?? NaN;
    const at = (now: number) =>
      situationOf({ ...oily, journal: entries }, now).tasks.some((t) => t.step === 'coat-1-rags');
    expect([at(end), at(end + 3 * 1440 - 1), at(end + 3 * 1440)]).toEqual([true, true, false]);
  });

  test('put away, they stay on record', () => {
    const over = new Map(['coat-1', 'coat-1-rags'].map((s) => [idOf(s), { from: 1000, to: 1010 }]));
    expect(withoutOldRags(tasks, over, 1_000_000)).toEqual(tasks);
  });
});
