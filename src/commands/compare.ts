import { minorDigits } from '../model/money.ts';
import { compareDocument, compareScreen } from '../reports/compare.ts';
import { namedIn, namesOf } from '../reports/names.ts';
import { harmless, harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { openShop, readMore } from './open-shop.ts';
import { planOf } from './plan-of.ts';
import { searchStoppably } from './search-stoppably.ts';
import { namedInWishes, wishesOf } from './wishes.ts';
import { joinedByAnd, worded } from '../words/worded.ts';

/** The plan beside the same shop with changes. Nothing is kept. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const { book } = await readMore(call, shop, namedInWishes(call));
  const wishes = wishesOf(call, book);
  const { plan } = await planOf(call, shop);
  const minorPerMajor = 10 ** minorDigits(shop.book.shop.currency);
  const ask = { book, now: shop.now, kept: plan, wishes, minorPerMajor };
  const compared = await searchStoppably(call, 'compare', ask, {
    saying: worded`planning …`,
    steps: plan.steps.length,
  });
  const unseen = wishes.slice(compared.variants.length).map((wish) => harmless(wish.said));
  if (unseen.length > 0) call.io.stderr.write(worded`drybench: not looked at any more: ${joinedByAnd(unseen)}\n`);
  if (wantsJson(call)) printJson(call, compareDocument(compared, shop.manner));
  else
    print(
      call,
      compareScreen(harmlessData(compared), namesOf(harmlessData(namedIn(book))), shop.manner, await answerLook(call)),
    );
  return 0;
}
