import type { Book } from './book.ts';
import type { Finding } from './finding.ts';
import type { Deed, Entry, Sighting } from './journal.ts';
import type { Mark } from './mark.ts';
import { withOilyRags } from './oily-rags.ts';
import { withRedo, withRepeat } from './redo-task.ts';
import { refreshWindows } from './refresh-windows.ts';
import { filmOf } from './section-tasks.ts';
import type { DoneStep, Situation } from './situation.ts';
import { withoutTask } from './skip-task.ts';
import { standingEntries } from './standing-entries.ts';
import type { Task } from './task.ts';
import type { Minute } from '../time/span.ts';
import { worded } from '../words/worded.ts';

/** What the journal makes of the tasks that the files ask for. */
export interface Applied extends Omit<Situation, 'book' | 'now' | 'paces'> {
  /** Entries that could not be taken for what they say; they change nothing. */
  readonly findings: readonly Finding[];
}

interface Seen {
  readonly at: Minute;
  readonly sighting: Sighting;
  readonly mark?: Mark;
}

/** All that entries may change, while they are gone through. */
interface Draft {
  readonly book: Book;
  tasks: readonly Task[];
  readonly done: Map<string, DoneStep>;
  readonly atWork: Map<string, Minute>;
  readonly notBefore: Map<string, Minute>;
  readonly sightings: Map<string, readonly Seen[]>;
  readonly leadTests: Map<string, { readonly at: Minute; readonly found: boolean }>;
}

type DeedOn<K extends Deed['kind']> = Extract<Deed, { kind: K }>;

function isSettled({ done, atWork }: Draft): (task: Task) => boolean {
  return (task) => done.has(task.id) || atWork.has(task.id);
}

/** A preparation that somebody has begun is a step like any other: its coat comes after it. */
function adopt(draft: Draft, prep: Task): void {
  const { onlyFor: coat, ...step } = prep;
  if (coat === undefined) return;
  const tasks = draft.tasks.map((t): Task => {
    if (t.id === coat) return { ...t, needs: [...t.needs, { kind: 'order', task: prep.id, waitHours: 0 }] };
    return t.id === prep.id ? step : t;
  });
  draft.tasks = refreshWindows(draft.book, tasks, step, isSettled(draft));
}

function applyDone(draft: Draft, task: Task, deed: DeedOn<'done'>): string | undefined {
  const { from, to, station, way, hands, timed } = deed;
  if (from > to) return worded`ends before it begins`;
  if (draft.done.has(task.id)) return worded`is about a step that is done already`;
  if (way !== undefined && !task.ways.some((w) => w.name === way))
    return worded`names the way "${way}", which it does not have`;
  if (station !== undefined && !draft.book.shop.stations.some((s) => s.id === station))
    return worded`names the station "${station}", which the shop does not have`;
  const stranger = hands?.find((id) => !draft.book.shop.hands.some((h) => h.id === id));
  if (stranger !== undefined) return worded`names the hand "${stranger}", which the shop does not have`;
  draft.atWork.delete(task.id);
  draft.done.set(task.id, {
    from,
    to,
    ...(station !== undefined && { station }),
    ...(way !== undefined && { way }),
    ...(hands !== undefined && { hands }),
    ...(deed.used !== undefined && { used: deed.used }),
    ...(timed === true && { timed }),
  });
  adopt(draft, task);
  return undefined;
}

function applyBegun(draft: Draft, task: Task, { from }: DeedOn<'begun'>): string | undefined {
  if (draft.done.has(task.id)) return worded`is about a step that is done already`;
  draft.atWork.set(task.id, from);
  adopt(draft, task);
  return undefined;
}

function applySeen(draft: Draft, task: Task, deed: DeedOn<'seen'>, at: Minute): string | undefined {
  if (!draft.done.has(task.id)) return worded`is about a film that is not laid yet`;
  if (filmOf(draft.book, task) === undefined) return worded`is about a step that lays down nothing to dry`;
  const { sighting, mark } = deed;
  const seen: Seen = { at, sighting, ...(mark !== undefined && { mark }) };
  draft.sightings.set(task.id, [...(draft.sightings.get(task.id) ?? []), seen]);
  return undefined;
}

function applySlipped(draft: Draft, task: Task, { until }: DeedOn<'slipped'>): string | undefined {
  if (isSettled(draft)(task)) return worded`puts off a step that is begun or done`;
  if (task.atOnceAfter !== undefined) return worded`puts off oily rags, which cannot wait`;
  draft.notBefore.set(task.id, until);
  return undefined;
}

function applySkipped(draft: Draft, task: Task): string | undefined {
  if (isSettled(draft)(task)) return worded`leaves out a step that is begun or done`;
  if (task.atOnceAfter !== undefined) return worded`leaves out oily rags, which must be put away`;
  if (task.onlyFor !== undefined) return worded`leaves out a preparation, which is planned only where a coat needs it`;
  draft.notBefore.delete(task.id);
  draft.tasks = refreshWindows(draft.book, withoutTask(draft.tasks, task), task, isSettled(draft));
  return undefined;
}

function applyRepeated(draft: Draft, task: Task): string | undefined {
  if (task.atOnceAfter !== undefined) return worded`repeats oily rags without their coat`;
  if (task.onlyFor !== undefined) return worded`repeats a preparation that is not done`;
  if (draft.tasks.some((t) => t.id === `${task.id}-again`)) return worded`repeats a step that is repeated already`;
  const tasks = withOilyRags(draft.book, withRepeat(draft.book, draft.tasks, task, draft.done));
  draft.tasks = refreshWindows(draft.book, tasks, task, isSettled(draft));
  return undefined;
}

function applyFailed(draft: Draft, task: Task, { fault }: DeedOn<'failed'>): string | undefined {
  if (!draft.done.has(task.id)) return worded`is about a coat that is not laid yet`;
  if (filmOf(draft.book, task) === undefined) return worded`is about a step that lays down no coat`;
  if (draft.tasks.some((t) => t.id === `${task.id}-redo`)) return worded`is about a coat that is done again already`;
  const tasks = withOilyRags(draft.book, withRedo(draft.book, draft.tasks, task, fault, draft.done));
  draft.tasks = refreshWindows(draft.book, tasks, task, isSettled(draft));
  return undefined;
}

/** Takes one entry in; what is wrong with it, if it cannot be. */
function applyEntry(draft: Draft, { at, deed }: Entry): string | undefined {
  if (deed.kind === 'undo') return undefined;
  if (deed.kind === 'lead-test') {
    if (!draft.book.pieces.some((p) => p.id === deed.piece))
      return worded`is about "${deed.piece}", a piece that nobody knows`;
    // A second test that finds none either does not unsay the first: what was done between the two was done rightly.
    const before = draft.leadTests.get(deed.piece);
    if (deed.found || before?.found !== false) draft.leadTests.set(deed.piece, { at, found: deed.found });
    return undefined;
  }
  const task = draft.tasks.find((t) => t.id === deed.task);
  if (task === undefined) return worded`is about "${deed.task}", a step that no piece has`;
  switch (deed.kind) {
    case 'done':
      return applyDone(draft, task, deed);
    case 'begun':
      return applyBegun(draft, task, deed);
    case 'seen':
      return applySeen(draft, task, deed, at);
    case 'slipped':
      return applySlipped(draft, task, deed);
    case 'skipped':
      return applySkipped(draft, task);
    case 'repeated':
      return applyRepeated(draft, task);
    case 'failed':
      return applyFailed(draft, task, deed);
  }
}

/**
 * What the journal makes of `tasks`, which are those that the files of `book` ask for. Entries that were taken back
 * count for nothing; one that makes no sense changes nothing and is told in `findings`.
 */
export function applyJournal(book: Book, tasks: readonly Task[], entries: readonly Entry[]): Applied {
  const standing = standingEntries(entries);
  const tests = book.pieces.flatMap(({ id, leadTest }) =>
    leadTest === undefined ? [] : [[id, { at: leadTest.minute, found: leadTest.found }] as const],
  );
  const draft: Draft = {
    book,
    tasks,
    done: new Map(),
    atWork: new Map(),
    notBefore: new Map(),
    sightings: new Map(),
    leadTests: new Map(tests),
  };
  const findings = standing.entries.flatMap((entry): Finding[] => {
    const wrong = applyEntry(draft, entry);
    if (wrong === undefined) return [];
    return [{ code: 'journal-entry', severity: 'warning', message: worded`journal entry ${entry.number} ${wrong}` }];
  });
  const { done, atWork, notBefore, sightings, leadTests } = draft;
  return {
    tasks: draft.tasks,
    done,
    atWork,
    notBefore,
    sightings,
    leadTests,
    findings: [...standing.findings, ...findings],
  };
}
