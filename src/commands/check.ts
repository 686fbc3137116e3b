import { journalFindings } from '../planning/situation-of.ts';
import { countFindings, findingsScreen } from '../reports/findings.ts';
import { harmless } from '../terminal/harmless.ts';
import { repairShop } from '../files/repair-shop.ts';
import { strayCopies } from '../files/stray-copies.ts';
import { repairScreen } from '../reports/repair.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { isFlagged, type Call, type ExitCode } from './call.ts';
import { readShop, shopFolder } from './open-shop.ts';
import { toldFile } from './told-calendar.ts';
import { counted, worded } from '../words/worded.ts';

/**
 * Are the files of the shop right; and if not, where, and what to write instead. Of the shop's own files those, too,
 * that no piece uses yet; of the shipped ones only those in use, for no shop has the tools of all. With `--repair` what is
 * broken of the files that Drybench itself writes is set aside first.
 */
export async function answer(call: Call): Promise<ExitCode> {
  const repairs = isFlagged(call, 'repair') ? repairShop(shopFolder(call), [toldFile], { disk: call.disk }) : undefined;
  const { folder, book, findings: inFiles } = await readShop(call, { allOwn: true });
  const journal = book === undefined ? [] : journalFindings(book);
  const findings = [...strayCopies(call.disk, folder), ...inFiles, ...journal];
  if (repairs !== undefined && !wantsJson(call))
    print(call, `${repairScreen(repairs, await answerLook(call), harmless)}\n`);
  const wrong = findings.some((f) => f.severity === 'error');
  if (wantsJson(call))
    printJson(call, { format: 'drybench.check/1', ...(repairs && { repairs }), right: !wrong, findings });
  else if (findings.length > 0)
    print(call, `${findingsScreen(findings, await answerLook(call), harmless)}\n${countFindings(findings)}\n`);
  else print(call, worded`All is right: ${count(book?.pieces.length ?? 0)}.\n`);
  return wrong ? 2 : 0;
}

const count = (pieces: number) => counted(pieces, '{0} piece', '{0} pieces');
