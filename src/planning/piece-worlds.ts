import { at } from '../at.ts';
import { type Dose, doseOf } from '../drying/dose.ts';
import { reached } from '../drying/dose-map.ts';
import { filmFactor } from '../drying/film-factor.ts';
import { deviates } from '../drying/random.ts';
import { rateLaw } from '../drying/rate-law.ts';
import { drawing } from '../drying/spread.ts';
import type { AirSeries } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import type { Mark, Spread } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import { endOf, startOf, type PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Need, Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';

/** How often a piece's plan is lived through: puts a 90 % date within about 1.5 % of its chance. */
export const WORLDS = 400;
const SEED = 20270111;
/** Standard deviation of the logarithm of the air's drying speed, and the can's share of a material's variance: as in drying/chance. */
const AIR_DEVIATION = 0.1;
const SHARE_OF_THE_CAN = 0.5;

/** What is looked up for all pieces. */
export interface Scene {
  readonly situation: Situation;
  readonly air: ShopAir;
  readonly factors: ReadonlyMap<string, number>;
  readonly tasks: ReadonlyMap<string, Task>;
  /** The next minute from `t` on at which the shop is open. */
  readonly open: (t: Minute) => Minute;
}

interface LaidFilm {
  readonly material: Material;
  readonly film: Film;
  readonly air: AirSeries;
  readonly scale: number;
}

/** Hours of drying that something waits for: what the sheet says, scaled, against what the plan gives it. */
interface Wait {
  readonly on: number;
  readonly hoursAt: (deviate: number) => number;
  readonly dose: Dose;
  readonly given: number;
}

interface Node {
  readonly step: PlannedStep;
  readonly start: Minute;
  readonly end: Minute;
  readonly laid?: LaidFilm;
  readonly orders: readonly { readonly on: number; readonly minutes: number }[];
  readonly waits: readonly Wait[];
}

/** One way in which it may go: how each film dries, and when each step is then over. */
export interface World {
  readonly ends: readonly Minute[];
  /** Standard normal deviates of the steps' films, and what the air makes of all hours. */
  readonly deviates: readonly number[];
  readonly airFactor: number;
}

function laidBy(scene: Scene, step: PlannedStep): LaidFilm | undefined {
  const film = scene.tasks.get(step.id)?.ways.find((w) => w.name === step.way)?.film;
  const material = film && scene.situation.book.materials.get(film.material);
  const air = scene.air.get(step.room);
  if (film === undefined || material === undefined || air === undefined) return undefined;
  return { material, film, air, scale: filmFactor(material, film) * (scene.factors.get(step.id) ?? 1) };
}

/** The hours that a need asks of the film beneath: of windows, of the last that was open by the planned start. */
function askedOf(need: Need, laid: LaidFilm, given: (mark: Mark) => number): { sheet: Spread; mark: Mark } | undefined {
  if (need.kind === 'mark') {
    const mark = effectiveMark(laid.material, need.mark);
    const sheet = mark && laid.material.marks[mark];
    return mark === undefined || sheet === undefined ? undefined : { sheet, mark };
  }
  if (need.kind !== 'window') return undefined;
  const open = need.windows.filter((w) => w.opens.high * laid.scale <= given('recoat') + 0.01);
  const last = open.sort((a, b) => a.opens.high - b.opens.high).at(-1);
  return last && { sheet: last.opens, mark: 'recoat' };
}

function nodeOf(scene: Scene, step: PlannedStep, index: ReadonlyMap<string, number>, nodes: readonly Node[]): Node {
  const [start, end] = [startOf(step), endOf(step)];
  const needs = step.done === true || step.atWork === true ? [] : (scene.tasks.get(step.id)?.needs ?? []);
  const orders: { on: number; minutes: number }[] = [];
  const waits: Wait[] = [];
  for (const need of needs) {
    const on = index.get(need.task);
    const other = on === undefined ? undefined : nodes[on];
    if (on === undefined || other === undefined || need.kind === 'within') continue;
    if (need.kind === 'order') orders.push({ on, minutes: Math.round(need.waitHours * 60) });
    const { laid } = other;
    if (laid === undefined) continue;
    const doseTo = (mark: Mark) => doseOf(laid.air, rateLaw(laid.material, mark));
    const given = (mark: Mark) => doseTo(mark).hoursAt(start) - doseTo(mark).hoursAt(other.end);
    const asked = askedOf(need, laid, given);
    if (asked === undefined) continue;
    waits.push({
      on,
      hoursAt: drawing(asked.sheet),
      dose: doseTo(asked.mark),
      // The plan works in whole minutes, and a film may be dry within the minute.
      given: given(asked.mark) / laid.scale + 1e-3,
    });
  }
  const laid = laidBy(scene, step);
  return { step, start, end, orders, waits, ...(laid && { laid }) };
}

/** The steps of one piece in order of start, each knowing what it waits for. */
export function nodesOf(scene: Scene, steps: readonly PlannedStep[]): readonly Node[] {
  const nodes: Node[] = [];
  const index = new Map<string, number>();
  for (const step of steps) {
    nodes.push(nodeOf(scene, step, index, nodes));
    index.set(step.id, nodes.length - 1);
  }
  return nodes;
}

function live(scene: Scene, nodes: readonly Node[], world: Omit<World, 'ends'>): Minute[] {
  const ends: Minute[] = [];
  nodes.forEach((node, i) => {
    let start = node.start;
    for (const { on, minutes } of node.orders) {
      const end = at(ends, on);
      if (end > at(nodes, on).end) start = Math.max(start, end + minutes);
    }
    for (const { on, hoursAt, dose, given } of node.waits) {
      const end = at(ends, on);
      const hours = hoursAt(at(world.deviates, on)) * world.airFactor;
      if (end === at(nodes, on).end && hours <= given) continue;
      start = Math.max(start, reached(dose, hours * (at(nodes, on).laid?.scale ?? 1)).at(end));
    }
    const late = start > node.start ? scene.open(start) - node.start : 0;
    ends[i] = start >= NEVER ? NEVER : node.end + late;
  });
  return ends;
}

/**
 * What may become of a piece's plan. Where a film takes longer than the plan gives it, its next step waits until it is
 * dry and the shop is open, and all that comes after moves with it. That steps of other pieces may then be in the way is
 * left out, and so is a window that such a delay would miss.
 */
export function worldsOf(scene: Scene, nodes: readonly Node[], worlds = WORLDS): readonly World[] {
  const random = deviates(SEED);
  return Array.from({ length: worlds }, () => {
    const airFactor = Math.exp(AIR_DEVIATION * random.normal());
    const cans = new Map<string, number>();
    const drawnFor = nodes.map(({ laid }) => {
      if (laid === undefined) return 0;
      const can = cans.get(laid.material.id) ?? random.normal();
      cans.set(laid.material.id, can);
      return Math.sqrt(SHARE_OF_THE_CAN) * can + Math.sqrt(1 - SHARE_OF_THE_CAN) * random.normal();
    });
    return { airFactor, deviates: drawnFor, ends: live(scene, nodes, { airFactor, deviates: drawnFor }) };
  });
}
