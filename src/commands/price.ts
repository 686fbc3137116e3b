import { accountsOf } from '../bookkeeping/accounts.ts';
import { earnedByKind } from '../bookkeeping/by-kind.ts';
import { namedIn, namesOf } from '../reports/names.ts';
import { priceDocument } from '../reports/price-document.ts';
import { accountScreen, accountsScreen } from '../reports/price.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { choosePiece } from './name-things.ts';
import { openShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';

/** What one piece has cost and brings, or all pieces in a line each and which kind earns most. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call, { supplies: true });
  const [word] = call.words;
  const one = word === undefined ? undefined : await choosePiece(call, shop.book.pieces, word);
  const { plan, situation } = await planOf(call, shop);
  const { book } = shop;
  const all = accountsOf(book, situation, plan);
  const shown = all.filter((a) => one === undefined || a.piece === one.id);
  const kinds = one === undefined ? earnedByKind(all) : [];
  if (wantsJson(call)) {
    printJson(call, priceDocument(shown, kinds, shop.manner));
    return 0;
  }
  const desk = { names: namesOf(harmlessData(namedIn(book))), manner: shop.manner, look: await answerLook(call) };
  const feePercent = shop.book.shop.sellingFeePercent ?? 0;
  const accounts = harmlessData(shown);
  const [account] = accounts;
  print(
    call,
    one !== undefined && account !== undefined
      ? accountScreen(account, feePercent, desk)
      : accountsScreen(accounts, harmlessData(kinds), desk),
  );
  return 0;
}
