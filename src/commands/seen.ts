import { sightings } from '../model/journal.ts';
import type { Call, ExitCode } from './call.ts';
import { enter, namedStep, sayTask } from './enter.ts';
import { wordOf } from './word-of.ts';
import { worded } from '../words/worded.ts';

/** How a film looked and felt. */
export async function answer(call: Call): Promise<ExitCode> {
  const sighting = wordOf(worded`sighting`, call.words[2] ?? '', sightings);
  const named = await namedStep(call, 'done');
  const { shop, task } = named;
  return enter(
    call,
    shop,
    'seen',
    () => [{ kind: 'seen', task: task.id, sighting }],
    worded`${sayTask(named)} is ${sighting}`,
  );
}
