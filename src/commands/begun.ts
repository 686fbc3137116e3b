import type { Call, ExitCode } from './call.ts';
import { enter, namedStep, tellOpenBefore, refuseBehindGate, sayTask } from './enter.ts';
import { sayMoment } from '../reports/say-time.ts';
import { worded } from '../words/worded.ts';

/** A step is begun and goes on. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'open');
  refuseBehindGate(named);
  const { shop, task } = named;
  const said = worded`${sayTask(named)} begun ${sayMoment(shop.now, shop.manner)}`;
  const exitCode = await enter(call, shop, 'begun', () => [{ kind: 'begun', task: task.id, from: shop.now }], said);
  await tellOpenBefore(call, named);
  return exitCode;
}
