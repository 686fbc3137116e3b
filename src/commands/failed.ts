import { coatFaults } from '../model/journal.ts';
import type { Call, ExitCode } from './call.ts';
import { enter, namedStep, sayTask } from './enter.ts';
import { wordOf } from './word-of.ts';
import { worded } from '../words/worded.ts';

/** A coat failed: it is to be sanded back and laid again. */
export async function answer(call: Call): Promise<ExitCode> {
  const fault = wordOf(worded`fault`, call.words[2] ?? '', coatFaults);
  const named = await namedStep(call, 'done');
  const { shop, task } = named;
  return enter(
    call,
    shop,
    'failed',
    () => [{ kind: 'failed', task: task.id, fault }],
    worded`${sayTask(named)} failed: ${fault}`,
  );
}
