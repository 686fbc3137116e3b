import { windowMaps } from '../../drying/windows.ts';
import type { Need, WindowChoice } from '../../model/task.ts';
import type { Minute } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

type WindowNeed = Extract<Need, { kind: 'window' }>;

/** One window of a film that lies, on the calendar. */
export interface OpenWindow {
  readonly choice: WindowChoice;
  readonly opens: Minute;
  readonly shuts?: Minute;
}

/** The windows of `need` as the film beneath really lies: opening by the slow end, shutting by the fast end. */
export function windowsOf(need: WindowNeed, beneath: Fact): OpenWindow[] {
  const { laid } = beneath;
  if (laid === undefined) return need.windows.map((choice) => ({ choice, opens: beneath.end }));
  return need.windows.map((choice) => {
    const maps = windowMaps(choice, laid.material, laid.film, laid.air, laid.factor);
    const opens = maps.opens.at(beneath.end);
    return maps.shuts === undefined ? { choice, opens } : { choice, opens, shuts: maps.shuts.at(beneath.end) };
  });
}

/** Is `start` in the window? Both edges belong to it. */
export function holds({ opens, shuts }: OpenWindow, start: Minute): boolean {
  return opens <= start && (shuts === undefined || start <= shuts);
}

/** Is the preparation that the window asks for done between the two coats, by the recipe or by a task of its own? */
export function prepared({ choice }: OpenWindow, beneath: Fact, coat: Fact, { byId }: Ground): boolean {
  if (choice.prepTask === undefined) return true;
  const work = byId.get(choice.prepTask);
  return work !== undefined && beneath.end <= work.start && work.end <= coat.start;
}

function spanText({ choice, opens, shuts }: OpenWindow, { say }: Ground): string {
  const until = shuts === undefined ? '' : ` until ${say.when(shuts)}`;
  const prep = choice.prep === undefined ? '' : ` after the preparation ${choice.prep}`;
  return `from ${say.when(opens)}${until}${prep}`;
}

function shut(windows: readonly OpenWindow[], coat: Fact, beneath: Fact, ground: Ground): string {
  const { say } = ground;
  const next = windows.filter((w) => w.opens > coat.start).sort((a, b) => a.opens - b.opens)[0];
  const amount = next === undefined ? '' : `: ${lasting(next.opens - coat.start)} too early`;
  const all = windows.map((w) => spanText(w, ground)).join(', or ');
  return `but ${say.step(beneath.id)} may be recoated only ${all}${amount}`;
}

function missed(need: WindowNeed, coat: Fact, ground: Ground): Breach[] {
  const { byId, say } = ground;
  const beneath = byId.get(need.task);
  if (beneath === undefined) return [];
  const windows = windowsOf(need, beneath);
  const open = windows.filter((w) => holds(w, coat.start));
  if (open.some((w) => prepared(w, beneath, coat, ground))) return [];
  const preps = open.flatMap((w) => w.choice.prep ?? []).join(' or ');
  const why =
    open.length === 0
      ? shut(windows, coat, beneath, ground)
      : `so late after ${say.step(beneath.id)} that it needs the preparation ${preps} between the two, which is not planned there`;
  const text = `${say.step(coat.id)} starts ${say.when(coat.start)}, ${why}`;
  return [{ rule: 'window', steps: [coat.id, beneath.id], at: coat.start, text }];
}

/** Does the coat go into a window that asks for this preparation? */
function asksFor(prepTask: string, coat: Fact, { byId }: Ground): boolean {
  return coat.task.needs.some((need) => {
    const beneath = need.kind === 'window' ? byId.get(need.task) : undefined;
    if (need.kind !== 'window' || beneath === undefined) return false;
    return windowsOf(need, beneath).some((w) => w.choice.prepTask === prepTask && holds(w, coat.start));
  });
}

function needless(work: Fact, ground: Ground): Breach[] {
  const { onlyFor } = work.task;
  if (onlyFor === undefined) return [];
  const coat = ground.byId.get(onlyFor);
  if (coat !== undefined && asksFor(work.id, coat, ground)) return [];
  const text = `${ground.say.step(work.id)} is planned, but ${ground.say.step(onlyFor)} is in no window that asks for it`;
  return [{ rule: 'window', steps: [work.id, onlyFor], at: work.start, text }];
}

/** Each coat inside a window of the coat beneath, with that window's preparation done, and no other. */
export function windowsKept(ground: Ground): Breach[] {
  return ground.facts
    .filter((f) => !f.settled)
    .flatMap((fact) => [
      ...fact.task.needs.flatMap((need) => (need.kind === 'window' ? missed(need, fact, ground) : [])),
      ...needless(fact, ground),
    ]);
}
