import { join } from 'node:path';
import type { Disk } from '../files/disk.ts';
import { withLock } from '../files/lock.ts';
import { pieceFileText, sayEstimate } from '../files/new-piece.ts';
import { meansOf, type ShopMeans } from '../files/means.ts';
import { hasSchema } from '../files/schema-files.ts';
import { writeNewText } from '../files/write-new-text.ts';
import type { Answers } from '../intake/answers.ts';
import { propose, type Proposal, type ProposedSection } from '../intake/propose.ts';
import { proposalScreen } from '../reports/intake.ts';
import { harmlessData, harmless } from '../terminal/harmless.ts';
import { answerLook, print, printJson, tell, wantsJson } from './answers.ts';
import { CannotGoOn, type Call, type ExitCode } from './call.ts';
import { knowPiece } from './intake-answers.ts';
import { measureWords } from './intake-sections.ts';
import { openShop, readShop, type OpenShop } from './open-shop.ts';
import { asking, yesOrNo } from './questions.ts';
import { worded } from '../words/worded.ts';

/** What is to stand in the file has to pass `check`. */
function insistSound(proposal: Proposal, means: ShopMeans): void {
  const wrong = means.check(proposal.piece).filter((complaint) => complaint.severity === 'error');
  if (wrong.length === 0) return;
  const details = wrong.map(({ message, advice }) => (advice === undefined ? message : `${message}: ${advice}`));
  throw new CannotGoOn(
    worded`${proposal.piece.name} cannot be planned like this: nothing was written`,
    undefined,
    2,
    [],
    details,
  );
}

function writePiece(disk: Disk, { folder }: OpenShop, file: string, text: string): void {
  withLock(disk, folder, 'intake', () => {
    writeNewText(disk, folder, file, text);
  });
}

function nextSteps({ lead, id }: Answers): string {
  const test =
    lead === 'may'
      ? worded`  Test the old finish for lead first, and enter what it says: drybench lead-test ${id} none\n`
      : '';
  return worded`${test}  Look it through, then: drybench check, drybench week\n`;
}

/**
 * Takes in a piece: asks what it is, what was found and what is wanted, or takes it from options; proposes recipes and
 * repairs, and writes the file of the piece, all of it at the very end.
 */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const means = meansOf(shop.book, (await readShop(call)).libraries);
  const look = await answerLook(call);
  return asking(call, worded`nothing was written`, async (asker): Promise<ExitCode> => {
    const answers = await knowPiece(call, asker, shop, means);
    const proposed = propose(answers, means);
    insistSound(proposed, means);
    // Who was asked has seen how each area was reckoned, and agreed to it.
    const howMade = ({ agreed }: ProposedSection) =>
      asker.asks ? [] : sayEstimate(agreed, measureWords(shop.book.shop.units)).map((text) => worded`area: ${text}`);
    const screen = proposalScreen(harmlessData(proposed), means.recipes, shop.manner, look, howMade);
    const file = join('pieces', `${answers.id}.yaml`);
    if (asker.asks) {
      asker.say(`\n${screen}`);
      const write = await asker.know({ ask: worded`Write ${file}, yes or no`, usual: worded`yes`, read: yesOrNo });
      if (!write) throw new CannotGoOn(worded`nothing was written`, worded`begin again with: drybench intake`, 1);
    }
    writePiece(
      call.disk,
      shop,
      file,
      pieceFileText(answers, proposed, means.recipes, shop.book.shop, hasSchema(call.disk, shop.folder, 'piece')),
    );
    if (wantsJson(call)) {
      const { piece, left } = proposed;
      printJson(call, {
        format: 'drybench.intake/1',
        piece: piece.id,
        file,
        sections: piece.sections,
        notPlanned: left,
      });
    } else {
      if (!asker.asks) print(call, screen);
      await tell(call, `${harmless(worded`Written: ${file}`)}\n${nextSteps(answers)}`);
    }
    return 0;
  });
}
