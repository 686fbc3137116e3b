import type { Resource, Use } from '../engine/problem.ts';
import type { Book } from '../model/book.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Session } from '../model/session.ts';
import { RAG_MINUTES } from '../model/oily-rags.ts';
import { isInLine } from '../model/section-tasks.ts';
import type { Task } from '../model/task.ts';
import type { Minute, Spans } from '../time/span.ts';
import { inTurn, shift, type TimeMap } from '../time/time-map.ts';
import { oncePer } from '../once-per.ts';
import { type Once, remembering } from './once.ts';
import { keptSessions } from './kept-sessions.ts';
import { type Place, placesOf } from './places.ts';
import { sharingTasks } from './sharing-tasks.ts';
import { roomSpans } from './standing.ts';
import type { ShopDrying } from './shop-drying.ts';
import type { WorkHours } from './work-hours.ts';

/** What all parts of a compilation look up. */
export interface Ground {
  readonly situation: Situation;
  readonly book: Book;
  readonly from: Minute;
  readonly to: Minute;
  readonly drying: ShopDrying;
  readonly hours: WorkHours;
  /** Room id -> when it can be had; rooms that always can be had are not in it. */
  readonly roomOpen: ReadonlyMap<string, Spans>;
  readonly once: Once;
  readonly places: readonly Place[];
  readonly resources: readonly Resource[];
  /** Step of the plan that the shop follows now, by task id. */
  readonly kept: ReadonlyMap<string, PlannedStep>;
  /** Sessions of that plan that can still be gone on with. */
  readonly sessions: readonly Session[];
  /** Ids of the tasks that may share their mixing and wash-up with others. */
  readonly shares: ReadonlySet<string>;
  /** The shop's own factor on the hours of a task's film. */
  factorOf(task: string): number;
  /** The next task of the same section, which takes over its place. */
  readonly nextOf: ReadonlyMap<string, Task>;
  /** The tasks of its section in order, without optional ones. */
  sectionTasks(task: Task): readonly Task[];
  /** The oily rags that are put away right after a coat still to be done: its activity lasts so much longer. */
  ragsAfter(coat: string): Task | undefined;
  /** How much longer; 0 where none follow. */
  ragMinutes(coat: string): number;
  /** How a film dries, as a map from the end of its activity, which may hold the rags' minutes. */
  fromActivity(coat: string, map: TimeMap): TimeMap;
  placeUse(place: Place): Use;
  handUses(hands: readonly string[]): Use[];
  toolUses(tools: readonly string[]): Use[];
  /** Sections of one object are never worked on at once; nothing where an object has one section. */
  objectUses(task: Task): Use[];
  placeOfStation(station: string | undefined): Place | undefined;
}

function bySection(tasks: readonly Task[]): Map<string, Task[]> {
  const sections = new Map<string, Task[]>();
  for (const task of tasks) {
    if (!isInLine(task)) continue;
    const key = sectionKey(task);
    const section = sections.get(key);
    if (section === undefined) sections.set(key, [task]);
    else section.push(task);
  }
  return sections;
}

function sectionKey(task: Task): string {
  return `${task.piece}/${task.section}`;
}

function nextOf(sections: ReadonlyMap<string, readonly Task[]>): Map<string, Task> {
  const next = new Map<string, Task>();
  for (const tasks of sections.values())
    tasks.slice(1).forEach((task, k) => {
      const before = tasks[k];
      if (before !== undefined) next.set(before.id, task);
    });
  return next;
}

function sharedObjects(tasks: readonly Task[]): string[] {
  const sections = new Map<string, Set<string>>();
  for (const task of tasks) sections.set(task.object, (sections.get(task.object) ?? new Set()).add(task.section));
  return [...sections].filter(([, names]) => names.size > 1).map(([object]) => object);
}

/** The oily rags that are still to be put away after coats that are still to be done, by coat. */
function ragsByCoat({ tasks, done, atWork }: Situation): Map<string, Task> {
  return new Map(
    tasks.flatMap((task): [string, Task][] => {
      const { id, atOnceAfter: coat } = task;
      return coat === undefined || done.has(coat) || done.has(id) || atWork.has(id) ? [] : [[coat, task]];
    }),
  );
}

const beforeRags = oncePer((map: TimeMap) => inTurn([shift(-RAG_MINUTES), map]));

/** Numbers the shop's places, tools, hands and shared objects as resources. */
export function layGround(
  situation: Situation,
  span: { readonly from: Minute; readonly to: Minute },
  drying: ShopDrying,
  hours: WorkHours,
  factors: ReadonlyMap<string, number>,
  kept: Plan | undefined,
): Ground {
  const { book, tasks } = situation;
  const places = placesOf(book.shop);
  const sections = bySection(tasks);
  const sessions = keptSessions(situation, kept);
  const resources: Resource[] = [];
  const numbers = new Map<string, number>();
  const add = (key: string, name: string, capacity: number) => {
    numbers.set(key, resources.length);
    resources.push({ name, capacity });
  };
  for (const place of places) add(`place ${place.room} ${place.kind}`, `${place.kind} in ${place.room}`, place.slots);
  for (const tool of book.shop.tools) add(`tool ${tool.id}`, tool.name, tool.count);
  for (const hand of book.shop.hands) add(`hand ${hand.id}`, hand.name, 1);
  for (const object of sharedObjects(tasks)) add(`object ${object}`, object, 1);
  const use = (key: string): Use[] => {
    const resource = numbers.get(key);
    return resource === undefined ? [] : [{ resource, units: 1 }];
  };
  const certain = (key: string): Use => {
    const [found] = use(key);
    if (found === undefined) throw new Error(`there is no ${key}, though the files were checked`);
    return found;
  };
  const rags = ragsByCoat(situation);
  return {
    situation,
    book,
    ...span,
    drying,
    hours,
    roomOpen: new Map(
      book.shop.rooms.flatMap((room): [string, Spans][] => {
        const open = roomSpans(room, book.shop, span.from, span.to);
        return open === undefined ? [] : [[room.id, open]];
      }),
    ),
    once: remembering(),
    places,
    resources,
    sessions,
    shares: sharingTasks(situation, sessions),
    kept: new Map((kept?.steps ?? []).map((step) => [step.id, step])),
    factorOf: (task) => factors.get(task) ?? 1,
    nextOf: nextOf(sections),
    sectionTasks: (task) => sections.get(sectionKey(task)) ?? [],
    ragsAfter: (coat) => rags.get(coat),
    ragMinutes: (coat) => (rags.has(coat) ? RAG_MINUTES : 0),
    fromActivity: (coat, map) => (rags.has(coat) ? beforeRags(map, undefined) : map),
    placeUse: (place) => certain(`place ${place.room} ${place.kind}`),
    handUses: (hands) => hands.map((id) => certain(`hand ${id}`)),
    toolUses: (tools) => tools.map((id) => certain(`tool ${id}`)),
    objectUses: (task) => use(`object ${task.object}`),
    placeOfStation: (station) => places.find((p) => p.stations.some((s) => s.id === station)),
  };
}
