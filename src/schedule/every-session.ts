import { at } from '../at.ts';
import { sessionKey } from '../model/session.ts';
import type { Session } from '../model/session.ts';
import type { Task } from '../model/task.ts';
import type { Compiled } from './compiled.ts';
import type { Manner } from './manners.ts';
import { type Agreed, alike } from './session-problem.ts';

/** More choices than these are not all tried, nor where the problem is large: as many activities in all. */
const MOST_CHOICES = 80;
const MOST_ACTIVITIES = 2000;

interface Coat {
  readonly task: Task;
  /** In which it could share, one of each that are alike. */
  readonly manners: readonly Manner[];
}

function coatsOf({ meanings, ground }: Compiled): Coat[] {
  return meanings.flatMap((meaning): Coat[] => {
    if (meaning.kind !== 'task' || !ground.shares.has(meaning.task.id)) return [];
    const sharing = meaning.manners.filter((m) => m.part !== undefined && sessionKey(m.way) !== undefined);
    const manners = sharing.filter((m, k) => sharing.findIndex((other) => alike(other, m)) === k);
    return manners.length === 0 ? [] : [{ task: meaning.task, manners }];
  });
}

/** The manners in which all of `coats` could be laid in one go; two coats of one section dry between. */
function mannersFor(coats: readonly Coat[]): readonly Manner[] {
  const sections = new Set(coats.map(({ task }) => `${task.piece}/${task.section}`));
  if (sections.size < coats.length) return [];
  return at(coats, 0).manners.filter((m) => coats.every((c) => c.manners.some((other) => alike(other, m))));
}

/** Adds a coat to lists of coats: by itself, or at any place of a list in which all could be laid in one go. */
function withCoat(lists: readonly (readonly Coat[])[], coat: Coat): Coat[][][] {
  const own = [...lists.map((l) => [...l]), [coat]];
  const joined = lists.flatMap((list, k) =>
    mannersFor([...list, coat]).length === 0
      ? []
      : Array.from({ length: list.length + 1 }, (_, place) =>
          lists.map((other, j) => (j === k ? list.toSpliced(place, 0, coat) : [...other])),
        ),
  );
  return [own, ...joined];
}

/** Every choice of a manner for each list of several coats. */
function inEveryManner(lists: readonly (readonly Coat[])[]): Agreed[][] {
  return lists
    .filter((list) => list.length > 1)
    .reduce<Agreed[][]>(
      (choices, list) => {
        const session: Session = list.map((coat) => coat.task.id);
        return choices.flatMap((choice) => mannersFor(list).map((manner) => [...choice, { session, manner }]));
      },
      [[]],
    );
}

/**
 * Every choice of which coats are laid in one go, in which order, where and by whom; the first is that none are. Undefined
 * where these are too many, or where a session has begun, which can only go on.
 */
export function everyAgreed(compiled: Compiled): Agreed[][] | undefined {
  const { sessions, situation } = compiled.ground;
  if (sessions.flat().some((id) => situation.done.has(id) || situation.atWork.has(id))) return undefined;
  let partitions: Coat[][][] = [[]];
  for (const coat of coatsOf(compiled)) {
    partitions = partitions.flatMap((lists) => withCoat(lists, coat));
    if (partitions.length > MOST_CHOICES) return undefined;
  }
  const choices = partitions.flatMap(inEveryManner);
  const work = choices.length * compiled.problem.activities.length;
  return choices.length > MOST_CHOICES || work > MOST_ACTIVITIES ? undefined : choices;
}
