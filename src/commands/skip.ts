import type { Call, ExitCode } from './call.ts';
import { enter, namedStep, refuseOilyRags, sayTask } from './enter.ts';
import { worded } from '../words/worded.ts';

/** A step is left out. */
export async function answer(call: Call): Promise<ExitCode> {
  const named = await namedStep(call, 'open');
  refuseOilyRags(named, worded`left out`);
  const { shop, task } = named;
  return enter(call, shop, 'skip', () => [{ kind: 'skipped', task: task.id }], worded`${sayTask(named)} left out`);
}
