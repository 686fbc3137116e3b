import { nearestChange, toldOf, type ToldNearest } from '../planning/nearest-change.ts';
import { lateCoats } from '../planning/remedies.ts';
import { whyChain } from '../planning/why.ts';
import { namedIn, namesOf } from '../reports/names.ts';
import { nearestScreen, spokenOf, whyDocument, whyScreen } from '../reports/why.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { whileSaying } from '../terminal/progress.ts';
import { isoWriter } from '../time/iso.ts';
import { answerLook, printAsKnown, printJson, wantsJson } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { choosePiece, chooseTask } from './name-things.ts';
import { situationOf } from '../planning/situation-of.ts';
import { openShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';
import { worded } from '../words/worded.ts';

/** What holds a step where it is. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const [pieceWord = '', stepWord = ''] = call.words;
  const piece = await choosePiece(call, shop.book.pieces, pieceWord);
  const standing = await planOf(call, shop);
  const { plan, situation, air } = standing;
  const planned = new Set(plan.steps.map((s) => s.id));
  const choices = situation.tasks.filter((t) => t.piece === piece.id && planned.has(t.id));
  const task = await chooseTask(call, choices, stepWord);
  const chain = whyChain(situation, air, plan, task.id);
  const late = lateCoats(situation, standing).filter((l) =>
    chain.some(({ step }) => step.id === l.coat.id || step.id === l.remedy.id),
  );
  const search = async (): Promise<ToldNearest> => {
    const nearest = await whileSaying(call.io, worded`trying what would let it begin sooner …`, ({ tick }) =>
      nearestChange({ standing, made: situationOf(shop.book, plan.from), now: shop.now }, chain, tick),
    );
    return toldOf(nearest);
  };
  if (wantsJson(call)) {
    const document = whyDocument(chain, late, await search(), isoWriter(shop.manner.zone), shop.manner);
    printJson(call, document);
    return 0;
  }
  const spoken = spokenOf(chain, late);
  const steps = plan.steps.filter((s) => spoken.has(s.id));
  const shown = harmlessData({ named: namedIn(shop.book), plan: { ...plan, steps }, chain, late });
  const desk = { plan: shown.plan, names: namesOf(shown.named), look: await answerLook(call), manner: shop.manner };
  // The search may take a second: what holds the step need not wait for it.
  await printAsKnown(call, whyScreen(shown.chain, shown.late, desk), async () =>
    nearestScreen(shown.chain[0], harmlessData(await search()), desk),
  );
  return 0;
}
