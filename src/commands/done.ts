import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { readAmount } from '../files/quantities/amount-bought.ts';
import { unitOfMaterial } from '../model/supply.ts';
import { sayClocks } from '../reports/say-time.ts';
import { pacedMinutes } from '../model/paced-work.ts';
import { doingOf } from './who-did-it.ts';
import { textFlag, CannotGoOn, type Call, type ExitCode } from './call.ts';
import { valueOf } from './flag-values.ts';
import { enter, namedStep, tellOpenBefore, refuseBehindGate, sayTask, type NamedStep } from './enter.ts';
import { tell, wantsJson } from './answers.ts';
import { shippedSafety } from './shipped-safety.ts';
import { readAir } from './read-air.ts';
import { timeOf } from './open-shop.ts';
import { worded } from '../words/worded.ts';

/** Its usual time before its end, but not before what was done on the same section until then. */
function beganAt({ situation, task }: NamedStep, to: Minute, usualMinutes: number): Minute {
  const before = situation.tasks
    .filter((t) => t.piece === task.piece && t.section === task.section)
    .flatMap((t) => situation.done.get(t.id)?.to ?? [])
    .filter((end) => end <= to);
  return Math.max(to - usualMinutes, ...before);
}

/** How much of its material the step took, as `--used` says. */
function usedOf(call: Call, { shop, task }: NamedStep): { readonly used?: number } {
  const written = textFlag(call, 'used');
  if (written === undefined) return {};
  const material = shop.book.materials.get(task.material ?? '');
  if (material === undefined)
    throw new CannotGoOn(worded`${task.section}/${task.step} uses no material`, worded`leave --used out`);
  const amount = valueOf('--used', written, readAmount(written));
  const unit = unitOfMaterial(material);
  if (amount.unit === unit) return { used: amount.value };
  throw new CannotGoOn(
    worded`--used "${written}" does not fit ${material.name}`,
    unit === 'm' ? worded`write metres, like "4 m"` : worded`write a volume, like "0.35 L"`,
  );
}

/** A step is done: from when to when, by whom, and in what air. Times that were stated teach the pace of who did it. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'open');
  refuseBehindGate(named);
  const { shop, situation, task } = named;
  const zone = shop.book.shop.timeZone;
  const [fromText, toText, air] = [textFlag(call, 'from'), textFlag(call, 'to'), textFlag(call, 'air')];
  const to = toText === undefined ? shop.now : timeOf(call, '--to', toText, zone);
  const doing = doingOf(call, shop, task);
  const usual = Math.min(...task.ways.map((way) => pacedMinutes(way.workMinutes, doing.hands ?? [], situation.paces)));
  const begun = fromText === undefined ? situation.atWork.get(task.id) : timeOf(call, '--from', fromText, zone);
  const from = begun ?? beganAt(named, to, usual);
  if (to > shop.now) throw new CannotGoOn(worded`--to lies in the future`, worded`write when the step was over`);
  if (from > to) throw new CannotGoOn(worded`the step would end before it begins`, worded`write --from before --to`);
  const timed = begun === undefined ? {} : ({ ...doing, timed: true } as const);
  const measured = air === undefined ? {} : { air: readAir('--air', air) };
  const used = usedOf(call, named);
  const exitCode = await enter(
    call,
    shop,
    'done',
    () => [{ kind: 'done', task: task.id, from, to, ...timed, ...used, ...measured }],
    worded`${sayTask(named)} done ${sayClocks({ start: from, end: to }, shop.manner)}`,
  );
  const rags = situation.tasks.find((t) => t.atOnceAfter === task.id && !situation.done.has(t.id));
  if (rags !== undefined && !wantsJson(call)) await tell(call, await ragsAtOnce(call, rags));
  await tellOpenBefore(call, named);
  return exitCode;
}

/** The step that follows each oil: until it is entered, it stands in every plan. */
async function ragsAtOnce(call: Call, { piece, section, step }: Task): Promise<string> {
  const how = (await shippedSafety(call)).find((p) => p.when === 'oily-rags')?.short ?? '';
  return worded`Now at once: ${how}\nWhen they are away: drybench done ${piece} ${section}/${step}\n`;
}
