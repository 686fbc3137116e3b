import type { ShopAir } from '../air/shop-air.ts';
import { warmedThrough } from '../drying/carry-in.ts';
import type { Plan, PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';

/** Work that came from a colder room: its surface is not warm enough for the coat before `until`. */
export interface ColdCause {
  readonly kind: 'cold-work';
  /** Id of the room that it came from. */
  readonly from: string;
  /** When the plan takes it to be carried, and the latest that would do for what is planned. */
  readonly carried: Minute;
  readonly latest: Minute;
  readonly until: Minute;
}

export interface ColdScene {
  readonly situation: Situation;
  readonly air: ShopAir;
  readonly plan: Plan;
}

/** How the section of `step` came into the room where it now is; undefined where it has not come from another. */
function coming({ plan }: ColdScene, step: PlannedStep): PlannedStep['broughtIn'] {
  const own = plan.steps.filter((s) => s.piece === step.piece && s.section === step.section);
  const upTo = own.slice(0, own.findIndex((s) => s.id === step.id) + 1);
  const others = upTo.findLastIndex((s) => s.room !== step.room);
  return upTo.slice(others + 1).find((s) => s.broughtIn !== undefined)?.broughtIn;
}

/** Until when the cold of the work itself forbids the coat; undefined where it does not, or where nothing is laid. */
export function coldCause(scene: ColdScene, step: PlannedStep, task: Task | undefined): ColdCause | undefined {
  const brought = coming(scene, step);
  const material = step.material === undefined ? undefined : scene.situation.book.materials.get(step.material);
  const [there, here] = [scene.air.get(brought?.from ?? ''), scene.air.get(step.room)];
  if (brought === undefined || material === undefined || there === undefined || here === undefined) return undefined;
  const until = warmedThrough(there, here, task?.thicknessMm ?? 0, material).at(brought.at);
  const { from, at: carried, by: latest } = brought;
  return until <= carried ? undefined : { kind: 'cold-work', from, carried, latest, until };
}
