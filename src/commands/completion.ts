import { print, printJson, wantsJson } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { scriptFor, shells } from './shell/scripts.ts';
import { wordOf } from './word-of.ts';
import { worded } from '../words/worded.ts';

/** The script that has a shell complete what is typed behind `drybench`. Needs no shop. */
export async function answer(call: Call): Promise<ExitCode> {
  const shell = wordOf(worded`shell`, call.words[0] ?? '', shells);
  const script = scriptFor(shell);
  if (wantsJson(call)) printJson(call, { format: 'drybench.completion/1', shell, script });
  else print(call, script);
  return Promise.resolve(0);
}
