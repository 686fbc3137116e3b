import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { fingerprint } from '../../src/files/fingerprint.ts';
import { plansMadeFrom, rememberPlan } from '../../src/files/plan-history.ts';
import { readPlan, writePlan } from '../../src/files/plan-file.ts';
import type { Book } from '../../src/model/book.ts';
import type { Deed, Entry } from '../../src/model/journal.ts';
import type { Plan } from '../../src/model/plan.ts';
import { standingEntries } from '../../src/model/standing-entries.ts';
import { basisText } from '../../src/planning/basis.ts';
import { changed } from '../../src/planning/change.ts';
import { asMade } from '../../src/planning/as-made.ts';
import { stillFits } from '../../src/planning/current-plan.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import type { Minute } from '../../src/time/span.ts';
import { verify } from '../../src/verify/verify.ts';
import { anyBook, now as firstMinute } from '../support/random-shop.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

/** What a person may do next at the bench or at the desk. `pick` chooses among what there is. */
type Act = { readonly pick: number } & (
  | { readonly kind: 'do' | 'begin' | 'see' | 'undo' | 'plan' | 'fail' | 'skip' | 'again' }
  | { readonly kind: 'wait' | 'slip'; readonly hours: number }
  | { readonly kind: 'air'; readonly byK: number }
);

const anyAct: fc.Arbitrary<Act> = fc.oneof(
  fc.record({
    kind: fc.constantFrom('do', 'do', 'do', 'see', 'plan', 'undo', 'begin', 'fail', 'skip', 'again'),
    pick: fc.nat(999),
  }),
  fc.record({ kind: fc.constant('air'), pick: fc.nat(999), byK: fc.integer({ min: -4, max: 6 }) }),
  fc.record({
    kind: fc.constantFrom('wait', 'wait', 'slip'),
    pick: fc.nat(999),
    hours: fc.integer({ min: 1, max: 40 }),
  }),
);

/** A shop as it goes on: its journal grows, its clock runs, its folder keeps plans. */
class Bench {
  /** As it was at first; and as it is, with the air that somebody has written down since. */
  readonly first: Book;
  book: Book;
  readonly folder: string;
  now: Minute = firstMinute;
  entries: Entry[] = [];
  plan: Plan;
  /** Plans that could not be made although nothing was wrong with what was entered. */
  stuck = 0;

  constructor(book: Book, folder: string, first: Plan) {
    this.first = book;
    this.book = book;
    this.folder = folder;
    this.plan = first;
  }

  get current(): Book {
    return { ...this.book, journal: this.entries };
  }

  enter(deed: Deed): void {
    this.entries = [...this.entries, { number: this.entries.length + 1, at: this.now, deed }];
  }

  undo(): boolean {
    const last = standingEntries(this.entries).entries.at(-1);
    if (last === undefined) return false;
    this.enter({ kind: 'undo', entry: last.number });
    return true;
  }

  /** As the command `week` does it. */
  week(): void {
    const made = planNow(this.current, this.now, this.folder);
    if (made === undefined) {
      // In other air there may be no plan.
      if (this.book === this.first) this.stuck += 1;
      return;
    }
    for (const [id, done] of situationOf(this.current, this.now).done) {
      const step = made.steps.find((s) => s.id === id);
      expect([step?.done, step?.spans[0]?.start, step?.spans.at(-1)?.end]).toEqual([true, done.from, done.to]);
    }
    this.plan = made;
  }
}

function planNow(book: Book, at: Minute, folder: string): Plan | undefined {
  const situation = situationOf(book, at);
  const basis = fingerprint(basisText(book));
  const kept = readPlan(folder).plan;
  for (const plan of [...(kept === undefined ? [] : [kept]), ...plansMadeFrom(folder, basis)]) {
    const standing = stillFits(plan, basis, situation, false) ? asMade(book, plan) : undefined;
    if (standing !== undefined) return keep(folder, standing.plan);
  }
  const made = makePlan(situation, { seed: 1, steps: 60, basis, ...(kept && { kept }) });
  if (made.kind === 'broken') throw new Error(made.breaches.map((b) => `${b.rule}: ${b.text}`).join('\n'));
  return made.kind === 'plan' ? keep(folder, made.plan) : undefined;
}

function keep(folder: string, plan: Plan): Plan {
  writePlan(folder, plan);
  rememberPlan(folder, plan);
  return plan;
}

function act(bench: Bench, { kind, pick, ...more }: Act): void {
  const { tasks, done, atWork } = situationOf(bench.current, bench.now);
  const among = <T>(list: readonly T[]): T | undefined => list[pick % Math.max(1, list.length)];
  const open = tasks.filter((t) => !done.has(t.id) && t.onlyFor === undefined);
  const ready = open.filter((t) => t.needs.every((n) => done.has(n.task)));
  const films = tasks.filter((t) => done.has(t.id) && t.ways.some((w) => w.film !== undefined));
  const hours = 'hours' in more ? more.hours : 0;
  switch (kind) {
    case 'do': {
      const task = among(ready);
      const minutes = task?.ways[0]?.workMinutes ?? 0;
      const station = bench.plan.steps.find((s) => s.id === task?.id)?.station;
      bench.now += minutes;
      if (task !== undefined)
        bench.enter({
          kind: 'done',
          task: task.id,
          from: bench.now - minutes,
          to: bench.now,
          ...(station !== undefined && { station }),
        });
      return;
    }
    case 'begin': {
      const task = among(ready.filter((t) => !atWork.has(t.id)));
      if (task !== undefined && atWork.size === 0) bench.enter({ kind: 'begun', task: task.id, from: bench.now });
      return;
    }
    case 'see': {
      const task = among(films);
      const sighting = (['wet', 'tacky', 'dry', 'hard'] as const)[pick % 4] ?? 'dry';
      if (task !== undefined) bench.enter({ kind: 'seen', task: task.id, sighting });
      return;
    }
    case 'fail': {
      const task = among(films);
      if (task !== undefined && pick % 3 === 0) bench.enter({ kind: 'failed', task: task.id, fault: 'runs' });
      return;
    }
    case 'skip': {
      const task = among(open);
      if (task !== undefined && pick % 3 === 0) bench.enter({ kind: 'skipped', task: task.id });
      return;
    }
    case 'again': {
      const task = among(tasks.filter((t) => done.has(t.id)));
      if (task !== undefined && pick % 3 === 0) bench.enter({ kind: 'repeated', task: task.id });
      return;
    }
    case 'slip': {
      const task = among(open);
      if (task !== undefined) bench.enter({ kind: 'slipped', task: task.id, until: bench.now + hours * 60 });
      return;
    }
    case 'wait':
      bench.now += hours * 60;
      return;
    case 'air': {
      const room = among(bench.book.shop.rooms);
      if (room !== undefined && 'byK' in more)
        bench.book = changed(bench.book, { kind: 'warmer', room: room.id, byK: more.byK });
      return;
    }
    case 'undo':
      bench.undo();
      return;
    case 'plan':
      bench.week();
  }
}

test('whatever is entered, taken back, written of the air and planned again: plans hold, what is done stays, and undo brings back the first plan', () => {
  let lived = 0;
  let planned = 0;
  let stuck = 0;
  fc.assert(
    fc.property(anyBook(2, 4), fc.array(anyAct, { maxLength: 12 }), (book, acts) => {
      const folder = mkdtempSync(join(tmpdir(), 'drybench-living-'));
      try {
        const first = planNow(book, firstMinute, folder);
        if (first === undefined) return;
        const firstText = readFileSync(join(folder, 'plan.json'), 'utf8');
        const bench = new Bench(book, folder, first);
        lived += 1;
        for (const next of acts) {
          const before = bench.entries.length;
          act(bench, next);
          expect(bench.entries.length).toBeGreaterThanOrEqual(before);
        }
        bench.week();
        planned += 1;
        stuck += bench.stuck;
        bench.book = bench.first;
        while (bench.undo());
        expect(bench.entries.map((e) => e.number)).toEqual(bench.entries.map((_, i) => i + 1));
        // At the first minute, or at any at which the first plan asks for nothing in the past.
        const early = first.steps.every((s) => (s.spans[0]?.start ?? 0) >= bench.now);
        bench.now = early ? bench.now : firstMinute;
        bench.week();
        expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe(firstText);
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    }),
    { numRuns: long ? 400 : 12 },
  );
  expect(lived).toBeGreaterThan(long ? 250 : 6);
  expect({ stuck, planned }).toEqual({ stuck: 0, planned: lived });
});

test('a plan of another book, of a later minute, or with steps that were due is not followed', () => {
  fc.assert(
    fc.property(anyBook(2, 4), (book) => {
      const made = makePlan(situationOf(book, firstMinute), { seed: 1, steps: 60, basis: 'this' });
      if (made.kind !== 'plan') return;
      const { plan } = made;
      const at = (minute: Minute) => situationOf(book, minute);
      expect(stillFits(plan, 'this', at(firstMinute), false)).toBe(true);
      expect(stillFits(plan, 'other', at(firstMinute), false)).toBe(false);
      expect(stillFits(plan, 'this', at(firstMinute - 1), false)).toBe(false);
      const start = plan.steps[0]?.spans[0]?.start ?? 0;
      expect(stillFits(plan, 'this', at(start), false)).toBe(true);
      expect(stillFits(plan, 'this', at(start + 1), false)).toBe(false);
      expect(stillFits(plan, 'this', at(start + 1), true)).toBe(true);
      const standing = asMade(book, plan);
      expect(standing?.plan).toBe(plan);
      expect(standing && verify({ situation: at(firstMinute), ...standing }, plan)).toEqual([]);
      const moved = plan.steps.map((s, i) => (i === 0 ? { ...s, holdsStationUntil: s.holdsStationUntil + 1 } : s));
      expect(asMade(book, { ...plan, steps: moved })).toBeUndefined();
    }),
    { numRuns: long ? 100 : 6 },
  );
});
