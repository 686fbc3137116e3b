import { sayMoment } from '../reports/say-time.ts';
import type { Call, ExitCode } from './call.ts';
import { enter, namedStep, refuseOilyRags, sayTask } from './enter.ts';
import { timeOf } from './open-shop.ts';
import { worded } from '../words/worded.ts';

/** A step cannot be done before a time. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'open');
  refuseOilyRags(named, worded`put off`);
  const { shop, task } = named;
  const until = timeOf(call, 'UNTIL', call.words[2] ?? '', shop.book.shop.timeZone);
  const said = worded`${sayTask(named)} not before ${sayMoment(until, shop.manner)}`;
  return enter(call, shop, 'slip', () => [{ kind: 'slipped', task: task.id, until }], said);
}
