import { minorDigits } from '../model/money.ts';
import { compareWith } from '../planning/compare.ts';
import { compareDocument, compareScreen } from '../reports/compare.ts';
import { namesOf } from '../reports/names.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { whileSaying } from '../terminal/progress.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { openShop, readMore } from './open-shop.ts';
import { seed } from './plan-grounds.ts';
import { planOf } from './plan-of.ts';
import { namedInWishes, wishesOf } from './wishes.ts';
import { worded } from '../words/worded.ts';

/** The plan beside the same shop with changes. Nothing is kept. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const { book } = await readMore(call, shop, namedInWishes(call));
  const wishes = wishesOf(call, book);
  const { plan } = await planOf(call, shop);
  const minorPerMajor = 10 ** minorDigits(shop.book.shop.currency);
  const compared = await whileSaying(call.io, worded`planning …`, ({ say }) => {
    const onPlan = (one: number, of: number) => {
      say(worded`planning … ${one} of ${of}`);
    };
    return compareWith(book, shop.now, plan, wishes, { seed, minorPerMajor, onPlan });
  });
  if (wantsJson(call)) printJson(call, compareDocument(compared, shop.manner));
  else
    print(
      call,
      compareScreen(harmlessData(compared), namesOf(harmlessData(book)), shop.manner, await answerLook(call)),
    );
  return 0;
}
