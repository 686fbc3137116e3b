import type { Minute } from '../time/span.ts';
import { sayClocks } from '../reports/say-time.ts';
import { pacedMinutes } from '../model/paced-work.ts';
import { doingOf } from './who-did-it.ts';
import { textFlag, CannotGoOn, type Call, type ExitCode } from './call.ts';
import { enter, namedStep, sayTask, type NamedStep } from './enter.ts';
import { readAir } from './read-air.ts';
import { timeOf } from './open-shop.ts';

/** Its usual time before its end, but not before what was done on the same section until then. */
function beganAt({ situation, task }: NamedStep, to: Minute, usualMinutes: number): Minute {
  const before = situation.tasks
    .filter((t) => t.piece === task.piece && t.section === task.section)
    .flatMap((t) => situation.done.get(t.id)?.to ?? [])
    .filter((end) => end <= to);
  return Math.max(to - usualMinutes, ...before);
}

/** A step is done: from when to when, by whom, and in what air. Times that were stated teach the pace of who did it. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'open');
  const { shop, situation, task } = named;
  const zone = shop.book.shop.timeZone;
  const [fromText, toText, air] = [textFlag(call, 'from'), textFlag(call, 'to'), textFlag(call, 'air')];
  const to = toText === undefined ? shop.now : timeOf(call, '--to', toText, zone);
  const doing = doingOf(call, shop, task);
  const usual = Math.min(...task.ways.map((way) => pacedMinutes(way.workMinutes, doing.hands ?? [], situation.paces)));
  const begun = fromText === undefined ? situation.atWork.get(task.id) : timeOf(call, '--from', fromText, zone);
  const from = begun ?? beganAt(named, to, usual);
  if (to > shop.now) throw new CannotGoOn('--to lies in the future', 'write when the step was over');
  if (from > to) throw new CannotGoOn('the step would end before it begins', 'write --from before --to');
  const timed = begun === undefined ? {} : ({ ...doing, timed: true } as const);
  const measured = air === undefined ? {} : { air: readAir('--air', air) };
  return enter(
    call,
    shop,
    'done',
    () => [{ kind: 'done', task: task.id, from, to, ...timed, ...measured }],
    `${sayTask(named)} done ${sayClocks({ start: from, end: to }, shop.manner)}`,
  );
}
