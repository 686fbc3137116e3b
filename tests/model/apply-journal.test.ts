import { describe, expect, test } from 'vitest';
import { applyJournal, type Applied } from '../../src/model/apply-journal.ts';
import { expand } from '../../src/model/expand.ts';
import { coatFaults, type Deed } from '../../src/model/journal.ts';
import type { Need, Task } from '../../src/model/task.ts';
import { book, done, entriesOf, idOf, piece } from './journal-book.ts';

const tasks = expand(book);
const apply = (...deeds: readonly Deed[]): Applied => applyJournal(book, tasks, entriesOf(...deeds));
const steps = ({ tasks: all }: Applied): string[] => all.map((t) => t.step);
const needsOf = ({ tasks: all }: Applied, step: string): readonly Need[] => all.find((t) => t.step === step)!.needs;
const windowOf = (applied: Applied, step: string) => needsOf(applied, step).find((n) => n.kind === 'window')!;
const told = ({ findings }: Applied): string[] => findings.map((f) => f.message);
const order = (step: string): Need => ({ kind: 'order', task: idOf(step), waitHours: 0 });

/** Nothing but findings: the entries say what cannot be. */
function refused(deeds: readonly Deed[], ...messages: readonly string[]): void {
  const before = apply(...deeds.slice(0, -1));
  const { findings, ...after } = apply(...deeds);
  expect(findings.map((f) => f.message)).toEqual(messages);
  const { findings: none, ...same } = before;
  expect(none).toEqual([]);
  expect(after).toEqual(same);
}

const asPlanned = ['sand', 'fill', 'coat-1', 'scuff-1', 'coat-2', 'topcoat-scuff', 'topcoat', 'look'];

test('without a journal all is as the files say', () => {
  const applied = apply();
  expect(applied.tasks).toBe(tasks);
  expect(steps(applied)).toEqual(asPlanned);
  expect(applied.done.size + applied.atWork.size + applied.notBefore.size + applied.sightings.size).toBe(0);
  expect(applied.leadTests).toEqual(new Map([['box', { at: 5, found: false }]]));
});

describe('done and begun', () => {
  test('done, with what was said of it', () => {
    const applied = apply(
      { kind: 'done', task: idOf('sand'), from: 10, to: 40, station: 'bench-1', way: '' },
      { kind: 'begun', task: idOf('fill'), from: 50 },
    );
    expect(applied.done).toEqual(new Map([[idOf('sand'), { from: 10, to: 40, station: 'bench-1', way: '' }]]));
    expect(applied.atWork).toEqual(new Map([[idOf('fill'), 50]]));
    expect(applied.tasks).toBe(tasks);
  });
  test('what is not said stays open, and no time at all is a time', () => {
    const applied = apply({ kind: 'done', task: idOf('sand'), from: 10, to: 10 });
    expect(applied.done.get(idOf('sand'))).toStrictEqual({ from: 10, to: 10 });
  });
  test('done after begun is no longer at work', () => {
    const applied = apply({ kind: 'begun', task: idOf('sand'), from: 10 }, done('sand', 1));
    expect(applied.atWork.size).toBe(0);
    expect(applied.done.size).toBe(1);
  });
  test('what makes no sense', () => {
    refused([{ kind: 'done', task: idOf('sand'), from: 10, to: 9 }], 'journal entry 1 ends before it begins');
    refused([done('sand', 1), done('sand', 2)], 'journal entry 2 is about a step that is done already');
    refused(
      [done('sand', 1), { kind: 'begun', task: idOf('sand'), from: 1 }],
      'journal entry 2 is about a step that is done already',
    );
    refused(
      [{ kind: 'done', task: idOf('sand'), from: 1, to: 2, way: 'spray' }],
      'journal entry 1 names the way "spray", which it does not have',
    );
    refused(
      [{ kind: 'done', task: idOf('sand'), from: 1, to: 2, station: 'moon' }],
      'journal entry 1 names the station "moon", which the shop does not have',
    );
    for (const kind of ['skipped', 'repeated'] as const)
      refused([{ kind, task: 'no/such/step' }], 'journal entry 1 is about "no/such/step", a step that no piece has');
  });
});

describe('a preparation that was done', () => {
  const applied = apply(done('sand', 1), done('coat-1', 3), done('coat-2', 30), done('topcoat-scuff', 90));
  test('is a step like any other, and its coat comes after it', () => {
    const scuff = applied.tasks.find((t) => t.step === 'topcoat-scuff')!;
    expect('onlyFor' in scuff).toBe(false);
    expect(steps(applied)).toEqual(asPlanned);
    expect(needsOf(applied, 'topcoat')).toContainEqual(order('topcoat-scuff'));
  });
  test('is not asked for once more', () => {
    const { windows } = windowOf(applied, 'topcoat');
    expect(windows.map((w) => [w.prep, w.prepTask])).toEqual([
      [undefined, undefined],
      ['scuff', undefined],
    ]);
  });
  test('or begun', () => {
    const begun = apply({ kind: 'begun', task: idOf('topcoat-scuff'), from: 9 });
    expect(begun.tasks.find((t) => t.step === 'topcoat-scuff')!.onlyFor).toBeUndefined();
    expect(begun.atWork.get(idOf('topcoat-scuff'))).toBe(9);
  });
});

describe('put off', () => {
  test('the last word counts', () => {
    const applied = apply(
      { kind: 'slipped', task: idOf('sand'), until: 900 },
      { kind: 'slipped', task: idOf('sand'), until: 800 },
    );
    expect(applied.notBefore).toEqual(new Map([[idOf('sand'), 800]]));
  });
  test('not what is begun or done', () => {
    const until = { kind: 'slipped', task: idOf('sand'), until: 900 } as const;
    refused([done('sand', 1), until], 'journal entry 2 puts off a step that is begun or done');
    refused(
      [{ kind: 'begun', task: idOf('sand'), from: 1 }, until],
      'journal entry 2 puts off a step that is begun or done',
    );
  });
});

describe('seen', () => {
  const seen = (step: string, sighting: 'tacky' | 'dry', mark?: 'sand'): Deed => ({
    kind: 'seen',
    task: idOf(step),
    sighting,
    ...(mark && { mark }),
  });
  test('in order, each at the time of its entry', () => {
    const applied = apply(done('coat-1', 3), seen('coat-1', 'tacky'), seen('coat-1', 'dry', 'sand'));
    expect(applied.sightings).toStrictEqual(
      new Map([
        [
          idOf('coat-1'),
          [
            { at: 1060, sighting: 'tacky' },
            { at: 1120, sighting: 'dry', mark: 'sand' },
          ],
        ],
      ]),
    );
  });
  test('nothing can be seen of what is not laid or does not dry', () => {
    refused([seen('coat-1', 'dry')], 'journal entry 1 is about a film that is not laid yet');
    refused([done('sand', 1), seen('sand', 'dry')], 'journal entry 2 is about a step that lays down nothing to dry');
  });
});

describe('left out', () => {
  test('what waited for it waits for what it would have waited for', () => {
    const applied = apply({ kind: 'skipped', task: idOf('fill') });
    expect(steps(applied)).toEqual(asPlanned.filter((s) => s !== 'fill'));
    expect(needsOf(applied, 'coat-1')).toEqual([order('sand')]);
  });
  test('a coat: the next lies on the one before, with its windows', () => {
    const applied = apply({ kind: 'skipped', task: idOf('coat-2') });
    expect(steps(applied)).not.toContain('coat-2');
    expect(needsOf(applied, 'topcoat')).toContainEqual(order('scuff-1'));
    const window = windowOf(applied, 'topcoat');
    expect(window.task).toBe(idOf('coat-1'));
    // The scuff of the recipe lies between the two now: the late window asks for none of its own.
    expect(window.windows.map((w) => w.prepTask)).toEqual([undefined, undefined]);
    expect(steps(applied)).not.toContain('topcoat-scuff');
  });
  test('the scuff between two coats: the late window asks for one of its own', () => {
    expect(windowOf(apply(), 'coat-2').windows.map((w) => w.prepTask)).toEqual([undefined, undefined]);
    const applied = apply({ kind: 'skipped', task: idOf('scuff-1') });
    expect(windowOf(applied, 'coat-2').windows.map((w) => w.prepTask)).toEqual([undefined, idOf('coat-2-scuff')]);
    const prep = applied.tasks.find((t) => t.step === 'coat-2-scuff')!;
    expect(prep.onlyFor).toBe(idOf('coat-2'));
    expect(prep.needs).toContainEqual({ kind: 'mark', task: idOf('coat-1'), mark: 'handle' });
    expect(steps(applied).indexOf('coat-2-scuff')).toBe(steps(applied).indexOf('coat-2') - 1);
  });
  test('marks of its film are those of the film beneath, and nothing is over in time after it', () => {
    const look = { ...tasks.at(-1)!, needs: [] } as const;
    const waiting: Task = {
      ...look,
      needs: [
        { kind: 'mark', task: idOf('topcoat'), mark: 'stack' },
        { kind: 'within', task: idOf('topcoat'), hours: 9, why: '' },
      ],
    };
    const applied = applyJournal(
      book,
      [...tasks.slice(0, -1), waiting],
      entriesOf({ kind: 'skipped', task: idOf('topcoat') }),
    );
    expect(needsOf(applied, 'look')).toEqual([order('coat-2'), { kind: 'mark', task: idOf('coat-2'), mark: 'stack' }]);
  });
  test('put off and then left out', () => {
    const applied = apply({ kind: 'slipped', task: idOf('look'), until: 900 }, { kind: 'skipped', task: idOf('look') });
    expect(applied.notBefore.size).toBe(0);
  });
  test('not what is begun, done, or planned only where needed', () => {
    refused(
      [done('sand', 1), { kind: 'skipped', task: idOf('sand') }],
      'journal entry 2 leaves out a step that is begun or done',
    );
    refused(
      [{ kind: 'skipped', task: idOf('topcoat-scuff') }],
      'journal entry 1 leaves out a preparation, which is planned only where a coat needs it',
    );
  });
});

describe('a coat that failed', () => {
  const laid = [done('sand', 1), done('fill', 2), done('coat-1', 5), done('scuff-1', 20), done('coat-2', 24)];
  const applied = apply(...laid, { kind: 'failed', task: idOf('coat-2'), fault: 'runs' });
  test('is sanded back, dusted off and laid again, before all that is to come', () => {
    expect(steps(applied)).toEqual([
      ...asPlanned.slice(0, 5),
      'coat-2-sand-back',
      'coat-2-dust-off',
      'coat-2-redo',
      'topcoat-scuff',
      'topcoat',
      'look',
    ]);
    expect(needsOf(applied, 'coat-2-sand-back')).toEqual([
      order('coat-2'),
      { kind: 'mark', task: idOf('coat-2'), mark: 'sand' },
    ]);
    expect(needsOf(applied, 'coat-2-dust-off')).toEqual([order('coat-2-sand-back')]);
  });
  test('is laid again in a window of the film beneath, whose preparation the sanding is', () => {
    expect(needsOf(applied, 'coat-2-redo')[0]).toEqual(order('coat-2-dust-off'));
    const window = windowOf(applied, 'coat-2-redo');
    expect(window.task).toBe(idOf('coat-2'));
    expect(window.windows.map((w) => [w.prep, w.prepTask])).toEqual([
      [undefined, undefined],
      ['scuff', undefined],
    ]);
  });
  test('keeps its ways, its stage and its coat; sanding is dusty and may pause', () => {
    const [coat, back, off, redo] = ['coat-2', 'coat-2-sand-back', 'coat-2-dust-off', 'coat-2-redo'].map((step) =>
      applied.tasks.find((t) => t.step === step)!,
    );
    expect(redo).toMatchObject({ ways: coat!.ways, stage: 'coat', coat: 2, title: coat!.title });
    expect(back).toMatchObject({ stage: 'sand', dusty: true, mayPause: true, gated: false, grit: 220, people: 1 });
    expect(back!.ways).toEqual([{ name: '', workMinutes: 25, stations: ['bench', 'floor'], tools: [] }]);
    expect(off).toMatchObject({ stage: 'clean', dusty: false, mayPause: false, gated: false, people: 1 });
    expect(off!.ways[0]!.workMinutes).toBe(10);
    expect('coat' in back!).toBe(false);
    for (const t of [back, off, redo]) expect(t).toMatchObject({ piece: 'box', section: 'body', object: 'box/body' });
  });
  test('lets the next coat wait for the new one', () => {
    expect(windowOf(applied, 'topcoat').task).toBe(idOf('coat-2-redo'));
    expect(needsOf(applied, 'topcoat')).toContainEqual(order('coat-2-redo'));
    const prep = applied.tasks.find((t) => t.step === 'topcoat-scuff')!;
    expect(prep.needs.every((n) => n.task === idOf('coat-2-redo'))).toBe(true);
  });
  test('beneath another coat: all goes on top, and the scuff between is to be done again', () => {
    const late = apply(...laid, { kind: 'failed', task: idOf('coat-1'), fault: 'dust-nibs' });
    expect(steps(late)).toEqual([
      ...asPlanned.slice(0, 5),
      'coat-1-sand-back',
      'coat-1-dust-off',
      'coat-1-redo',
      'topcoat-scuff',
      'topcoat',
      'look',
    ]);
    expect(windowOf(late, 'coat-1-redo').task).toBe(idOf('coat-2'));
    expect(needsOf(late, 'coat-1-sand-back')).toContainEqual({ kind: 'mark', task: idOf('coat-2'), mark: 'sand' });
    expect(windowOf(late, 'topcoat').task).toBe(idOf('coat-1-redo'));
    expect(needsOf(late, 'topcoat-scuff')).toContainEqual({ kind: 'mark', task: idOf('coat-1-redo'), mark: 'handle' });
  });
  test('after the scuff for the next coat: the scuff is owed again', () => {
    const late = apply(...laid.slice(0, 4), { kind: 'failed', task: idOf('coat-1'), fault: 'runs' });
    expect(steps(late).indexOf('coat-1-sand-back')).toBe(4);
    const window = windowOf(late, 'coat-2');
    expect(window.task).toBe(idOf('coat-1-redo'));
    expect(window.windows.map((w) => w.prepTask)).toEqual([undefined, idOf('coat-2-scuff')]);
  });
  test('again: the new coat failed too', () => {
    const twice = apply(
      ...laid,
      { kind: 'failed', task: idOf('coat-2'), fault: 'runs' },
      done('coat-2-sand-back', 40),
      done('coat-2-dust-off', 41),
      done('coat-2-redo', 42),
      { kind: 'failed', task: idOf('coat-2-redo'), fault: 'wrinkles' },
    );
    expect(told(twice)).toEqual([]);
    expect(windowOf(twice, 'topcoat').task).toBe(idOf('coat-2-redo-redo'));
    expect(windowOf(twice, 'coat-2-redo-redo').task).toBe(idOf('coat-2-redo'));
    expect(twice.tasks.find((t) => t.step === 'coat-2-redo-sand-back')!.ways[0]!.workMinutes).toBe(90);
  });
  test.each(coatFaults)('%s has words and minutes of its own', (fault) => {
    const back = apply(...laid, { kind: 'failed', task: idOf('coat-2'), fault }).tasks.find(
      (t) => t.step === 'coat-2-sand-back',
    )!;
    expect(back.title).not.toBe('');
    expect(back.ways[0]!.workMinutes).toBeGreaterThanOrEqual(5);
  });
  test('only a coat that lies there can fail, and only once', () => {
    const fails = (step: string): Deed => ({ kind: 'failed', task: idOf(step), fault: 'runs' });
    refused([fails('coat-2')], 'journal entry 1 is about a coat that is not laid yet');
    refused([done('sand', 1), fails('sand')], 'journal entry 2 is about a step that lays down no coat');
    refused([...laid, fails('coat-2'), fails('coat-2')], 'journal entry 7 is about a coat that is done again already');
  });
});

describe('once more', () => {
  const again = (step: string): Deed => ({ kind: 'repeated', task: idOf(step) });
  test('a step still to do: after itself', () => {
    const applied = apply(again('sand'));
    expect(steps(applied)).toEqual(['sand', 'sand-again', ...asPlanned.slice(1)]);
    expect(needsOf(applied, 'sand-again')).toEqual([order('sand')]);
    expect(needsOf(applied, 'fill')).toEqual([order('sand-again')]);
    expect(applied.tasks.find((t) => t.step === 'sand-again')).toMatchObject({ gated: true, dusty: true });
  });
  test('a coat still to do: in a window of its own film, and the next upon it', () => {
    const applied = apply(again('topcoat'));
    expect(windowOf(applied, 'topcoat-again').task).toBe(idOf('topcoat'));
    expect(needsOf(applied, 'topcoat-again')).toContainEqual(order('coat-2'));
    expect(needsOf(applied, 'topcoat-again')).toContainEqual(order('topcoat'));
    expect(windowOf(applied, 'topcoat-again').windows.map((w) => w.prepTask)).toEqual([
      undefined,
      idOf('topcoat-again-scuff'),
    ]);
    expect(steps(applied)).toContain('topcoat-again-scuff');
    expect(needsOf(applied, 'look')).toContainEqual({ kind: 'mark', task: idOf('topcoat-again'), mark: 'touch' });
  });
  test('a step that is over: upon what lies there now', () => {
    const applied = apply(done('sand', 1), done('fill', 2), done('coat-1', 5), again('sand'));
    expect(steps(applied).slice(0, 5)).toEqual(['sand', 'fill', 'coat-1', 'sand-again', 'scuff-1']);
    expect(needsOf(applied, 'sand-again')).toEqual([
      order('sand'),
      { kind: 'mark', task: idOf('coat-1'), mark: 'sand' },
    ]);
    expect(needsOf(applied, 'scuff-1')).toContainEqual(order('sand-again'));
  });
  test('films count in the order in which they were finished', () => {
    const applied = apply(done('coat-2', 9), done('coat-1', 5), again('coat-1'));
    expect(windowOf(applied, 'coat-1-again').task).toBe(idOf('coat-2'));
  });
  test('not twice the same, and no preparation', () => {
    refused([again('sand'), again('sand')], 'journal entry 2 repeats a step that is repeated already');
    refused([again('topcoat-scuff')], 'journal entry 1 repeats a preparation that is not done');
    expect(steps(apply(again('sand'), again('sand-again')))).toContain('sand-again-again');
  });
});

describe('lead tests', () => {
  test('the last on record counts, from the time of its entry', () => {
    const applied = apply({ kind: 'lead-test', piece: 'box', found: true });
    expect(applied.leadTests).toEqual(new Map([['box', { at: 1000, found: true }]]));
  });
  test('a second that finds none either does not unsay the first', () => {
    const none: Deed = { kind: 'lead-test', piece: 'box', found: false };
    const found: Deed = { kind: 'lead-test', piece: 'box', found: true };
    expect(apply(none).leadTests.get('box')).toEqual({ at: 5, found: false });
    expect(apply(found, none, none).leadTests.get('box')).toMatchObject({ found: false });
    expect(apply(found, none, none).leadTests).toEqual(apply(found, none).leadTests);
    expect(apply(none, found).leadTests.get('box')).toMatchObject({ found: true });
  });
  test('a piece without a test has none, and one that nobody knows is told', () => {
    const { leadTest, ...untested } = piece;
    expect(leadTest).toBeDefined();
    expect(applyJournal({ ...book, pieces: [untested] }, tasks, []).leadTests.size).toBe(0);
    refused(
      [{ kind: 'lead-test', piece: 'chest', found: true }],
      'journal entry 1 is about "chest", a piece that nobody knows',
    );
  });
});

describe('taken back', () => {
  const undo = (entry: number): Deed => ({ kind: 'undo', entry });
  test('an entry, and a taking back', () => {
    expect(apply(done('sand', 1), undo(1)).done.size).toBe(0);
    expect(apply(done('sand', 1), undo(1), undo(2)).done.size).toBe(1);
    expect(apply(done('sand', 1), undo(1), undo(2), undo(3)).done.size).toBe(0);
    expect(apply(done('sand', 1), undo(1), done('sand', 2)).done.get(idOf('sand'))!.from).toBe(120);
  });
  test('what stands on it makes no sense any more, and is told', () => {
    const applied = apply(done('coat-1', 1), { kind: 'failed', task: idOf('coat-1'), fault: 'runs' }, undo(1));
    expect(told(applied)).toEqual(['journal entry 2 is about a coat that is not laid yet']);
    expect(applied.tasks).toBe(tasks);
  });
  test('only what comes before', () => {
    for (const entry of [2, 3, 9]) {
      const applied = apply(done('sand', 1), undo(entry), done('fill', 2));
      expect(told(applied)).toEqual([`journal entry 2 takes back entry ${entry}, which does not come before it`]);
      expect(applied.done.size).toBe(2);
    }
  });
  test('findings are warnings, in the order of the entries, the takings back first', () => {
    const applied = apply(undo(8), { kind: 'repeated', task: 'x' }, undo(9), { kind: 'repeated', task: 'y' });
    expect(told(applied).map((m) => m.slice(0, 15))).toEqual([1, 3, 2, 4].map((n) => `journal entry ${n}`));
    expect(applied.findings.map((f) => [f.code, f.severity])).toEqual([
      ['journal-undo', 'warning'],
      ['journal-undo', 'warning'],
      ['journal-entry', 'warning'],
      ['journal-entry', 'warning'],
    ]);
  });
});
