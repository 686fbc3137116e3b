import { awaySpans } from '../model/away.ts';
import type { Book } from '../model/book.ts';
import type { Task } from '../model/task.ts';
import type { Made } from '../planning/make-plan.ts';
import type { Meaning } from '../schedule/compiled.ts';
import { grouped } from './grouped.ts';
import type { Names } from './names.ts';
import { sayChanges } from './say-change.ts';
import { type Manner, sayLength, sayWork } from './say-time.ts';
import type { WayOut } from '../planning/ways-out.ts';
import { joinedByAnd, joinedByOr, phrase, translated, worded } from '../words/worded.ts';

type NoPlan = Extract<Made, { kind: 'none' }>;
type Mode = NoPlan['compiled']['problem']['activities'][number]['modes'][number];

/** The step that an activity of the problem stands for; none for a piece as a whole. */
function taskOf(meaning: Meaning): Task | undefined {
  switch (meaning.kind) {
    case 'task':
    case 'done':
    case 'drying':
    case 'cleared':
    case 'block':
      return meaning.task;
    case 'window':
      return meaning.coat;
    case 'ready':
      return undefined;
  }
}

function sayTask(task: Task, names: Names): string {
  const section = names.section(task.piece, task.section);
  const coat = task.coat === undefined ? '' : worded`, coat ${task.coat}`;
  return `“${task.title}${coat}” (${names.piece(task.piece)}${section === '' ? '' : `, ${section}`})`;
}

const neverStarts = (mode: Mode) => mode.starts?.length === 0;

/** That it must be safe to move before its place is given back, or the piece leaves. */
function sayStanding(task: Task, { shop, pieces }: Book): string {
  const kinds = new Set(task.ways.flatMap((way) => way.stations));
  const hired = shop.rooms.filter((r) => r.open && shop.stations.some((s) => s.room === r.id && kinds.has(s.kind)));
  const piece = pieces.find((p) => p.id === task.piece);
  const leaves = piece !== undefined && awaySpans(piece, task.object).length > 0;
  return [
    ...(hired.length === 0
      ? []
      : [worded`, safe to move before ${joinedByOr(hired.map((r) => r.name))} is given back`]),
    ...(leaves ? [worded`, and while the piece is here`] : []),
  ].join('');
}

/** What stands against a step by itself: that no hour suits it, or how long it needs. */
function sayDemand(task: Task, modes: readonly Mode[], names: Names, book: Book): string {
  const minutes = Math.min(...task.ways.map((way) => way.workMinutes));
  const film = task.ways.find((way) => way.film !== undefined)?.film;
  const air = film === undefined ? '' : worded`, in air fit for ${names.material(film.material)}`;
  const unbroken = task.mayPause ? '' : worded` without a break`;
  const needs = worded`${sayLength(minutes)} of work${unbroken} while hands are in${air}${sayStanding(task, book)}`;
  return modes.every(neverStarts)
    ? worded`${sayTask(task, names)}: there is no hour for it; it needs ${needs}`
    : worded`${sayTask(task, names)}: needs ${needs}`;
}

/** What may free it: said after the demands. */
const mayFree = phrase(
  'longer hours, another hand or station, a warmer or drier room (drybench air), or a step left out (drybench skip) may free it',
);

/** The demands that cannot hold together, each in the words of the shop. */
export function demandsOf({ conflict, compiled }: NoPlan, names: Names): string[] {
  const { problem, meanings } = compiled;
  const taskAt = (index: number | undefined) => {
    const meaning = index === undefined ? undefined : meanings[index];
    return meaning === undefined ? undefined : taskOf(meaning);
  };
  const met = conflict.activities.flatMap((index) => {
    const task = taskAt(index);
    return task === undefined ? [] : [{ task, modes: problem.activities[index]?.modes ?? [] }];
  });
  const demands = [...grouped(met, (m) => m.task).entries()].map(([task, group]) =>
    sayDemand(
      task,
      group.flatMap((g) => g.modes),
      names,
      compiled.ground.book,
    ),
  );
  const waits = conflict.lags.flatMap((index) => {
    const lag = problem.lags[index];
    const [from, to] = [taskAt(lag?.from), taskAt(lag?.to)];
    if (lag === undefined || from === undefined || to === undefined || from.id === to.id) return [];
    return [
      `${sayTask(to, names)} ${lag.most === undefined ? worded`not before` : worded`soon enough after`} ${sayTask(from, names)}`,
    ];
  });
  const means = conflict.resources.flatMap((index) => {
    const resource = problem.resources[index];
    return resource === undefined ? [] : [worded`${resource.name}: ${resource.capacity} at a time`];
  });
  return [...new Set([...demands, ...waits, ...means])];
}

function sayTogether(way: WayOut, names: Names, manner: Manner): string {
  const [first, ...more] = way;
  if (first === undefined) return '';
  if (more.length === 0) return sayChanges(way, names, manner);
  const pieces = way.flatMap((change) => (change.kind === 'without' ? [names.piece(change.piece)] : []));
  if (pieces.length === way.length) return worded`plan without ${joinedByAnd(pieces)} for now`;
  const skipped = way.flatMap((change) => (change.kind === 'skip' ? [change.task.replace('/', ' ')] : []));
  if (skipped.length === way.length)
    return worded`leave ${skipped.length} steps out (drybench skip ${skipped.join('; ')})`;
  if (first.kind !== 'open') return sayChanges(way, names, manner);
  const stretches = way.flatMap((change) => (change.kind === 'open' ? change.spans.map((s) => s.to - s.from) : []));
  return worded`be open for ${sayWork(Math.min(...stretches))} at a time, day after day`;
}

/** What frees it, tried one by one; what may, where nothing that was tried did. */
export function sayWaysOut(ways: readonly WayOut[], names: Names, manner: Manner): string {
  if (ways.length === 0) return translated(mayFree);
  const said = joinedByOr(ways.map((way) => sayTogether(way, names, manner)));
  return worded`to have a plan: ${said} (tried with these: there is one)`;
}
