import { countFindings, findingsScreen } from '../reports/findings.ts';
import { harmless } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { readShop } from './open-shop.ts';

/** Are the files of the shop right; and if not, where, and what to write instead. */
export async function answer(call: Call): Promise<ExitCode> {
  const { book, findings } = readShop(call, true);
  const wrong = book === undefined || findings.some((f) => f.severity === 'error');
  if (wantsJson(call)) printJson(call, { format: 'drybench.check/1', right: !wrong, findings });
  else if (findings.length === 0) print(call, `All is right: ${book?.pieces.length ?? 0} pieces.\n`);
  else print(call, `${findingsScreen(findings, await answerLook(call), harmless)}\n${countFindings(findings)}\n`);
  return wrong ? 2 : 0;
}
