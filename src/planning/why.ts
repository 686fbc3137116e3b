import type { ShopAir } from '../air/shop-air.ts';
import { dryMap } from '../drying/dry-marks.ts';
import { applicationStarts } from '../drying/fit-hours.ts';
import type { Breach as AirBreach } from '../drying/air-limits.ts';
import { hindrances } from '../drying/why-unfit.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import { freeSpans, openSpans } from '../model/hours.ts';
import type { Mark } from '../model/mark.ts';
import { pacedMinutes } from '../model/paced-work.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { intersect, type Minute, type Span, type Spans } from '../time/span.ts';
import { pausingStarts, unbrokenStarts } from '../schedule/work-hours.ts';
import { coldCause, type ColdCause } from './why-cold.ts';
import { standingCause, type StandingCause } from './why-standing.ts';

/** What keeps a step from starting earlier. `by` is the step that is in the way, where there is one. */
export type Cause =
  | { readonly kind: 'done' | 'at-work' | 'now' }
  | { readonly kind: 'arrival' | 'put-off'; readonly until: Minute }
  | { readonly kind: 'order'; readonly by: string; readonly until: Minute }
  | { readonly kind: 'dry'; readonly by: string; readonly mark: Mark; readonly until: Minute }
  | { readonly kind: 'window'; readonly by: string; readonly until: Minute; readonly shuts?: Minute }
  | {
      readonly kind: 'hand' | 'tool' | 'place';
      readonly id: string;
      readonly name: string;
      readonly by: string;
      readonly until: Minute;
    }
  | { readonly kind: 'dust'; readonly by: string; readonly until: Minute }
  /** Laid in one go with `by`, to mix and wash up once, which spares so many minutes in all. */
  | { readonly kind: 'session'; readonly by: string; readonly until: Minute; readonly savedMinutes: number }
  /** Nobody is in before `until`; the step could else have gone on from `since`. */
  | { readonly kind: 'hours'; readonly since: Minute; readonly until: Minute }
  | {
      readonly kind: 'air';
      readonly room: string;
      readonly since: Minute;
      readonly until: Minute;
      readonly breaches: readonly AirBreach[];
    }
  | StandingCause
  | ColdCause
  /** It could start earlier by itself; the plan as a whole is better so. */
  | { readonly kind: 'better-so'; readonly couldFrom: Minute };

export interface WhyLink {
  readonly step: PlannedStep;
  readonly start: Minute;
  readonly cause: Cause;
  /** When the last of what it waited for was over; now, where it waited for nothing. */
  readonly waited: Minute;
}

interface Scene {
  readonly situation: Situation;
  readonly air: ShopAir;
  readonly plan: Plan;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly steps: ReadonlyMap<string, PlannedStep>;
}

function startOf(step: PlannedStep): Minute {
  return step.spans[0]?.start ?? 0;
}

function endOf(step: PlannedStep): Minute {
  return step.spans.at(-1)?.end ?? 0;
}

function overlap(a: Span, b: Span): boolean {
  return a.start < b.end && b.start < a.end;
}

/** The latest of what the step had to wait for. */
function lastWait(scene: Scene, step: PlannedStep): { cause: Cause; until: Minute } {
  const { situation, plan } = scene;
  const arrives = situation.book.pieces.find((p) => p.id === step.piece)?.arrives;
  const putOff = situation.notBefore.get(step.id);
  const waits: { cause: Cause; until: Minute }[] = [
    { cause: { kind: 'now' }, until: plan.from },
    ...(arrives === undefined ? [] : [{ cause: { kind: 'arrival', until: arrives } as const, until: arrives }]),
    ...(putOff === undefined ? [] : [{ cause: { kind: 'put-off', until: putOff } as const, until: putOff }]),
    ...step.after.map(({ step: by, mark, notBefore: until }): { cause: Cause; until: Minute } => {
      if (mark === undefined) return { cause: { kind: 'order', by, until }, until };
      const { window } = step;
      if (window?.of !== by || mark !== 'recoat') return { cause: { kind: 'dry', by, mark, until }, until };
      return {
        cause: { kind: 'window', by, until, ...(window.shuts !== undefined && { shuts: window.shuts }) },
        until,
      };
    }),
  ];
  return waits.reduce((last, wait) => (wait.until >= last.until ? wait : last));
}

function handHours({ situation, plan }: Scene, step: PlannedStep, from: Minute, to: Minute): Spans {
  const { shop } = situation.book;
  const opening = openSpans(shop.opening, plan.timeZone, from, to);
  return shop.hands
    .filter((h) => step.hands.includes(h.id))
    .map((h) => freeSpans(shop, h, from, to))
    .reduce((all, spans) => intersect(all, spans), opening);
}

interface Allowed {
  readonly hours: Spans;
  readonly air: Spans;
  readonly work: { readonly minutes: number; readonly hours: Spans };
}

/** The starts from `from` to `to` that the hands' hours allow, and of these those that the air allows. */
function allowedStarts(scene: Scene, step: PlannedStep, from: Minute, to: Minute): Allowed {
  const task = scene.tasks.get(step.id);
  const way = task?.ways.find((w) => w.name === step.way);
  const minutes =
    way === undefined ? endOf(step) - startOf(step) : pacedMinutes(way.workMinutes, step.hands, scene.situation.paces);
  const open = handHours(scene, step, from, to + minutes);
  const byHours = task?.mayPause === true ? pausingStarts(open, minutes) : unbrokenStarts(open, minutes);
  const work = { minutes, hours: open };
  const hours = intersect(byHours, [{ start: from, end: to }]);
  const material = way?.film && scene.situation.book.materials.get(way.film.material);
  const air = scene.air.get(step.room);
  if (way?.film === undefined || material === undefined || air === undefined) return { hours, air: hours, work };
  return {
    hours,
    work,
    air: intersect(hours, applicationStarts(material, way.film, air, minutes, from, to, task?.thicknessMm)),
  };
}

/** The coat that the step is laid together with, right behind it. */
function sessionCause({ plan, steps }: Scene, step: PlannedStep): Cause | undefined {
  const session = plan.sessions?.find((s) => s.steps.includes(step.id));
  const by = session && steps.get(session.steps[session.steps.indexOf(step.id) - 1] ?? '');
  if (session === undefined || by === undefined) return undefined;
  return { kind: 'session', by: by.id, until: endOf(by), savedMinutes: session.savedMinutes };
}

/** What stands in the way if the step started at `start` instead. */
function blocker(scene: Scene, step: PlannedStep, start: Minute): Cause | undefined {
  const { shop, materials } = scene.situation.book;
  const task = scene.tasks.get(step.id);
  const film = task?.ways.find((w) => w.name === step.way)?.film;
  const span = { start, end: Math.max(start + 1, start + endOf(step) - startOf(step)) };
  const others = scene.plan.steps.filter((s) => s.id !== step.id && s.done !== true);
  const busy = others.filter((s) => s.spans.some((x) => overlap(x, span)));
  for (const hand of step.hands) {
    const by = busy.find((s) => s.hands.includes(hand));
    if (by !== undefined)
      return {
        kind: 'hand',
        id: hand,
        name: shop.hands.find((h) => h.id === hand)?.name ?? hand,
        by: by.id,
        until: endOf(by),
      };
  }
  for (const tool of step.tools) {
    const using = busy.filter((s) => s.tools.includes(tool));
    const known = shop.tools.find((t) => t.id === tool);
    const by = using[0];
    if (by !== undefined && using.length >= (known?.count ?? 1))
      return { kind: 'tool', id: tool, name: known?.name ?? tool, by: by.id, until: endOf(by) };
  }
  const station = shop.stations.find((s) => s.id === step.station);
  const alike = shop.stations.filter((s) => s.room === station?.room && s.kind === station.kind);
  const slots = alike.reduce((sum, s) => sum + s.slots, 0);
  const standing = others.filter(
    (s) => alike.some((a) => a.id === s.station) && overlap({ start: startOf(s), end: s.holdsStationUntil }, span),
  );
  const first = [...standing].sort((a, b) => a.holdsStationUntil - b.holdsStationUntil)[0];
  if (first !== undefined && standing.length >= slots)
    return {
      kind: 'place',
      id: step.station,
      name: station?.name ?? step.station,
      by: first.id,
      until: first.holdsStationUntil,
    };
  const wetUntil = (s: PlannedStep): Minute => s.dry?.['dust-free']?.late ?? s.dry?.touch?.late ?? endOf(s);
  const roomMates = others.filter((s) => s.room === step.room);
  if (task?.dusty === true) {
    const by = roomMates.find(
      (s) => s.material !== undefined && overlap({ start: startOf(s), end: wetUntil(s) }, span),
    );
    if (by !== undefined) return { kind: 'dust', by: by.id, until: wetUntil(by) };
  }
  const material = film && materials.get(film.material);
  const air = scene.air.get(step.room);
  if (film !== undefined && material !== undefined && air !== undefined) {
    const mark = effectiveMark(material, 'dust-free');
    const dustFree = mark === undefined ? span.end : dryMap(material, mark, 'late', film, air).at(span.end);
    const wet = { start, end: dustFree };
    const by = roomMates.find(
      (s) => scene.tasks.get(s.id)?.dusty === true && overlap({ start: startOf(s), end: endOf(s) }, wet),
    );
    if (by !== undefined) return { kind: 'dust', by: by.id, until: endOf(by) };
  }
  return undefined;
}

function last(spans: Spans): Minute | undefined {
  const span = spans.at(-1);
  return span === undefined ? undefined : span.end - 1;
}

function causeOf(scene: Scene, step: PlannedStep): Cause {
  if (step.done === true) return { kind: 'done' };
  if (step.atWork === true) return { kind: 'at-work' };
  const start = startOf(step);
  const wait = lastWait(scene, step);
  if (wait.until >= start) return wait.cause;
  const session = sessionCause(scene, step);
  if (session !== undefined) return session;
  const { hours, air: ofAir, work } = allowedStarts(scene, step, wait.until, start);
  const task = scene.tasks.get(step.id);
  const cold = coldCause(scene, step, task);
  const air = cold === undefined ? ofAir : intersect(ofAir, [{ start: Math.min(cold.until, start), end: start }]);
  if (cold !== undefined && air.length === 0 && ofAir.length > 0) return cold;
  const around = { start: wait.until, end: start };
  const standing = standingCause(scene, step, task, air, work, around);
  if (standing !== undefined) return standing;
  const candidate = last(air);
  if (candidate !== undefined) return blocker(scene, step, candidate) ?? { kind: 'better-so', couldFrom: candidate };
  const inHours = last(hours);
  if (inHours === undefined) return { kind: 'hours', since: wait.until, until: start };
  const material = step.material === undefined ? undefined : scene.situation.book.materials.get(step.material);
  const series = scene.air.get(step.room);
  const why =
    material === undefined || series === undefined ? [] : hindrances(material, series, inHours, task?.thicknessMm);
  return { kind: 'air', room: step.room, since: inHours, until: start, breaches: why };
}

/** Which step the cause leads on to. */
function leadsTo(scene: Scene, step: PlannedStep, cause: Cause): PlannedStep | undefined {
  switch (cause.kind) {
    case 'order':
    case 'dry':
    case 'window':
    case 'hand':
    case 'tool':
    case 'place':
    case 'dust':
    case 'session':
      return scene.steps.get(cause.by);
    case 'hours':
    case 'away':
    case 'room':
    case 'cold-work':
    case 'air': {
      const wait = lastWait(scene, step).cause;
      return 'by' in wait ? scene.steps.get(wait.by) : undefined;
    }
    case 'done':
    case 'at-work':
    case 'now':
    case 'arrival':
    case 'put-off':
    case 'better-so':
      return undefined;
  }
}

/** What holds `stepId` where it is, and what holds that, back along the chain to now. Empty for an unknown step. */
export function whyChain(situation: Situation, air: ShopAir, plan: Plan, stepId: string): WhyLink[] {
  const scene: Scene = {
    situation,
    air,
    plan,
    tasks: new Map(situation.tasks.map((t) => [t.id, t])),
    steps: new Map(plan.steps.map((s) => [s.id, s])),
  };
  const chain: WhyLink[] = [];
  const seen = new Set<string>();
  let step = scene.steps.get(stepId);
  while (step !== undefined && !seen.has(step.id)) {
    seen.add(step.id);
    const cause = causeOf(scene, step);
    chain.push({ step, start: startOf(step), cause, waited: lastWait(scene, step).until });
    step = leadsTo(scene, step, cause);
  }
  return chain;
}
