import { sayMoment } from '../reports/say-time.ts';
import { CannotGoOn, type Call, type ExitCode } from './call.ts';
import { enter, namedStep, refuseOilyRags, sayTask } from './enter.ts';
import { timeOf } from './open-shop.ts';
import { harmless } from '../terminal/harmless.ts';
import { worded } from '../words/worded.ts';

/** A step cannot be done before a time. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'open');
  refuseOilyRags(named, worded`put off`);
  const { shop, task } = named;
  const written = call.words[2] ?? '';
  const until = timeOf(call, 'UNTIL', written, shop.book.shop.timeZone);
  const { manner } = shop;
  if (until <= manner.now)
    throw new CannotGoOn(
      worded`"${harmless(written)}" is over already`,
      worded`write a time after ${sayMoment(manner.now, manner)}`,
    );
  const said = worded`${sayTask(named)} not before ${sayMoment(until, manner)}`;
  return enter(call, shop, 'slip', () => [{ kind: 'slipped', task: task.id, until }], said);
}
