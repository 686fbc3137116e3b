import { pacedMinutes, type Paces } from '../model/paced-work.ts';
import { minutesAs } from '../model/session.ts';
import type { SessionPart } from '../model/session-part.ts';
import type { Hand, Shop } from '../model/shop.ts';
import type { Task, Way } from '../model/task.ts';
import { oncePer } from '../once-per.ts';
import type { Place } from './places.ts';

/** One complete manner of doing a task: which way, where, by whom. */
export interface Manner {
  readonly way: Way;
  readonly place: Place;
  readonly hands: readonly string[];
  /**
   * Begun while a film beneath cannot be moved yet: it keeps the place until the section's next step takes it over, or
   * until it and all that lies beneath can be moved; the next step begins no sooner then.
   */
  readonly inPlace?: 'until-next' | 'until-movable';
  /** Its coat shares mixing and wash-up, as this part of a session. */
  readonly part?: SessionPart;
}

interface Doers {
  readonly people: number;
  readonly skill: string | undefined;
}

/** Every team of so many of the hands in which one has the skill. */
const teams = oncePer(teamsOf, ({ people, skill }: Doers) => `${people} ${skill ?? ''}`);

function teamsOf(hands: readonly Hand[], { people, skill }: Doers): string[][] {
  const choose = (from: number, left: number): Hand[][] =>
    left === 0
      ? [[]]
      : hands.slice(from).flatMap((hand, i) => choose(from + i + 1, left - 1).map((rest) => [hand, ...rest]));
  return choose(0, people)
    .filter((team) => skill === undefined || team.some((hand) => hand.skills.includes(skill)))
    .map((team) => team.map((hand) => hand.id));
}

function paced(way: Way, hands: readonly string[], paces: Paces, part?: SessionPart): Way {
  const workMinutes = pacedMinutes(minutesAs(way, part), hands, paces);
  return workMinutes === way.workMinutes ? way : { ...way, workMinutes };
}

/**
 * Every manner in which the shop could do the task: ways × places × teams; how long it takes is the team's own pace.
 * `part`: as that part of a session, in the ways that have something to share.
 */
export function mannersOf(
  task: Task,
  shop: Shop,
  places: readonly Place[],
  paces: Paces,
  part?: SessionPart,
): Manner[] {
  const ways = part === undefined ? task.ways : task.ways.filter((way) => way.inSession !== undefined);
  return ways.flatMap((way) => {
    const doers = teams(shop.hands, { people: task.people, skill: way.skill }).map((hands) => ({
      way: paced(way, hands, paces, part),
      hands,
      ...(part !== undefined && { part }),
    }));
    return places
      .filter((place) => way.stations.includes(place.kind))
      .flatMap((place) => doers.map((doer) => ({ ...doer, place })));
  });
}
