import type { ShopAir } from '../air/shop-air.ts';
import { warmedThrough } from '../drying/carry-in.ts';
import type { BroughtIn, PlannedStep } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';
import type { Ground } from './ground.ts';

interface Scene {
  readonly ground: Ground;
  readonly air: ShopAir;
  readonly carry: TimeMap;
  /** When a step is over and what it laid can be moved. */
  readonly releasedAt: (step: PlannedStep) => Minute;
  readonly thicknessMm: number | undefined;
}

const startOf = (step: PlannedStep): Minute => step.spans[0]?.start ?? 0;
const endOf = (step: PlannedStep): Minute => step.spans.at(-1)?.end ?? 0;

/** The latest that work from the room `from` can come so that it is warm for `coat`. */
function latestFor(coat: PlannedStep, from: string, { ground, air, thicknessMm = 0 }: Scene): Minute {
  const [there, here] = [air.get(from), air.get(coat.room)];
  const material = coat.material === undefined ? undefined : ground.book.materials.get(coat.material);
  if (there === undefined || here === undefined || material === undefined) return startOf(coat);
  return warmedThrough(there, here, thicknessMm, material).latest(startOf(coat));
}

/** How the work of one section, whose steps are given in order, comes to the `k`-th of them. */
function comes(section: readonly PlannedStep[], k: number, scene: Scene): BroughtIn | undefined {
  const { ground, carry, releasedAt } = scene;
  const step = section[k];
  const last = section[k - 1];
  if (step === undefined || last === undefined || step.done || step.atWork || last.room === step.room) return undefined;
  const there = section.slice(0, k).filter((s) => s.room === last.room);
  const since = last.done === true ? (ground.situation.carried?.get(last.id) ?? ground.from) : endOf(last);
  const at = Math.min(startOf(step), carry.at(Math.max(since, ...there.map(releasedAt))));
  const here = section.slice(k);
  const leaves = here.findIndex((s) => s.room !== step.room);
  const coats = here.slice(0, leaves < 0 ? undefined : leaves);
  const by = Math.min(startOf(step), ...coats.map((coat) => latestFor(coat, last.room, scene)));
  return { from: last.room, at, by: Math.max(at, by) };
}

/** The steps, given in order of start, with how work comes from another room before them. */
export function withBroughtIn(
  steps: readonly PlannedStep[],
  thicknessOf: (step: PlannedStep) => number | undefined,
  scene: Omit<Scene, 'thicknessMm'>,
): PlannedStep[] {
  const sections = new Map<string, PlannedStep[]>();
  for (const step of steps) {
    if (step.atOnceAfter !== undefined) continue;
    const key = `${step.piece}/${step.section}`;
    const known = sections.get(key);
    if (known === undefined) sections.set(key, [step]);
    else known.push(step);
  }
  return steps.map((step) => {
    const section = step.atOnceAfter === undefined ? (sections.get(`${step.piece}/${step.section}`) ?? []) : [];
    const broughtIn = comes(section, section.indexOf(step), { ...scene, thicknessMm: thicknessOf(step) });
    return broughtIn === undefined ? step : { ...step, broughtIn };
  });
}
