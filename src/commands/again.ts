import type { Call, ExitCode } from './call.ts';
import { enter, namedStep, refuseOilyRags, sayTask } from './enter.ts';
import { worded } from '../words/worded.ts';

/** A step that is over is to be done once more. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'done');
  refuseOilyRags(named, worded`planned without their coat`);
  const { shop, task } = named;
  return enter(call, shop, 'again', () => [{ kind: 'repeated', task: task.id }], worded`${sayTask(named)} once more`);
}
