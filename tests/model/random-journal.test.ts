import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { applyJournal, type Applied } from '../../src/model/apply-journal.ts';
import { expand } from '../../src/model/expand.ts';
import type { Entry } from '../../src/model/journal.ts';
import type { Task } from '../../src/model/task.ts';
import { anyIntents, entriesOf } from '../support/random-journal.ts';
import { anyBook, now } from '../support/random-shop.ts';

const anyJournal = fc.tuple(anyBook(2, 6), anyIntents).map(([book, intents]) => ({
  book,
  tasks: expand(book),
  entries: entriesOf(book, intents, now),
}));

function takenBack(entries: readonly Entry[], most = entries.length): Entry[] {
  const standing = entries.slice(entries.length - most).reverse();
  return [
    ...entries,
    ...standing.map((e, i): Entry => ({
      number: entries.length + 1 + i,
      at: now,
      deed: { kind: 'undo', entry: e.number },
    })),
  ];
}

/** All but the findings, as plain data that can be compared to the byte. */
function bytes({ tasks, done, atWork, notBefore, sightings, leadTests }: Applied): string {
  return JSON.stringify([tasks, ...[done, atWork, notBefore, sightings, leadTests].map((m) => [...m])]);
}

/** A task that waits, over others, for itself. */
function circle(tasks: readonly Task[]): string | undefined {
  const left = new Map(tasks.map((t) => [t.id, t.needs.map((n) => n.task)]));
  for (;;) {
    const free = [...left].filter(([, needs]) => needs.every((n) => !left.has(n))).map(([id]) => id);
    if (free.length === 0) return [...left.keys()][0];
    for (const id of free) left.delete(id);
  }
}

test('whatever is entered, the tasks fit together', () => {
  let changed = 0;
  fc.assert(
    fc.property(anyJournal, ({ book, tasks, entries }) => {
      const applied = applyJournal(book, tasks, entries);
      const ids = new Set(applied.tasks.map((t) => t.id));
      expect(ids.size).toBe(applied.tasks.length);
      for (const task of applied.tasks) {
        expect(task.id).toBe(`${task.piece}/${task.section}/${task.step}`);
        if (task.onlyFor !== undefined) expect(ids).toContain(task.onlyFor);
        for (const need of task.needs) {
          expect(ids).toContain(need.task);
          if (need.kind !== 'window') continue;
          expect(need.windows.length).toBeGreaterThan(0);
          for (const { prepTask } of need.windows) if (prepTask !== undefined) expect(ids).toContain(prepTask);
        }
      }
      expect(circle(applied.tasks)).toBeUndefined();
      for (const map of [applied.done, applied.atWork, applied.sightings, applied.notBefore])
        for (const id of map.keys()) expect(ids).toContain(id);
      for (const id of applied.atWork.keys()) expect(applied.done.has(id)).toBe(false);
      if (applied.tasks !== tasks) changed += 1;
    }),
    { numRuns: 150 },
  );
  expect(changed).toBeGreaterThan(30);
});

test('taking everything back, last first, leaves what the files say, to the byte', () => {
  fc.assert(
    fc.property(anyJournal, ({ book, tasks, entries }) => {
      const before = JSON.stringify(tasks);
      const applied = applyJournal(book, tasks, takenBack(entries));
      expect(applied.tasks).toBe(tasks);
      expect(bytes(applied)).toBe(bytes(applyJournal(book, tasks, [])));
      expect(applied.done.size).toBe(0);
      expect(JSON.stringify(tasks)).toBe(before);
    }),
    { numRuns: 100 },
  );
});

test('taking the last few back leaves what was before them', () => {
  fc.assert(
    fc.property(anyJournal, fc.nat(14), ({ book, tasks, entries }, few) => {
      const kept = entries.slice(0, Math.max(0, entries.length - few));
      const back = applyJournal(book, tasks, takenBack(entries, entries.length - kept.length));
      expect(bytes(back)).toBe(bytes(applyJournal(book, tasks, kept)));
    }),
    { numRuns: 100 },
  );
});

test('entries about steps and pieces that nobody knows are told, and change nothing', () => {
  fc.assert(
    fc.property(anyJournal, ({ book, tasks, entries }) => {
      const strays = entries.flatMap((e): Entry[] => {
        if (e.deed.kind === 'undo') return [];
        const deed = 'task' in e.deed ? { ...e.deed, task: `x/${e.deed.task}` } : { ...e.deed, piece: 'nobody' };
        return [{ ...e, deed }];
      });
      const applied = applyJournal(book, tasks, strays);
      expect(applied.findings.length).toBe(strays.length);
      expect(bytes(applied)).toBe(bytes(applyJournal(book, tasks, [])));
    }),
    { numRuns: 50 },
  );
});
