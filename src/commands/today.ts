import { shoppingList, type Purchase } from '../bookkeeping/shopping.ts';
import { earlyWindows } from '../planning/closing-windows.ts';
import { eveningFor, nextWorkDay } from '../planning/evening.ts';
import { lateCoats } from '../planning/remedies.ts';
import type { Ahead } from '../reports/what-is-ahead.ts';
import type { Sheet } from '../reports/bench.ts';
import { todayDocument } from '../reports/today-document.ts';
import { todayScreen } from '../reports/today.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { isFlagged, type Call, type ExitCode } from './call.ts';
import { openShop, type OpenShop } from './open-shop.ts';
import type { Planned } from './plan-grounds.ts';
import { planOf } from './plan-of.ts';
import { sheetOf } from './sheet-of.ts';

const DAY_MINUTES = 24 * 60;

/** What is to be bought and brought into the warm; a shop that writes down no stock is not told what it lacks. */
function aheadOf(shop: OpenShop, planned: Planned): Ahead {
  const { plan, situation, air } = planned;
  const isCounted = shop.book.shop.stock !== undefined;
  const { book } = shop;
  const until = nextWorkDay(plan, shop.now).end;
  const list = isCounted ? shoppingList(book, situation, plan, until).purchases : [];
  const isMaterial = ({ item }: Purchase) => book.materials.has(item);
  const short = list.filter((p) => p.toBuy > 0).sort((a, b) => Number(isMaterial(b)) - Number(isMaterial(a)));
  return {
    short,
    late: lateCoats(situation, planned),
    early: earlyWindows(situation, planned, shop.now + DAY_MINUTES),
    ...eveningFor(situation, air, plan),
  };
}

/** What to do now, next and after; what opens and shuts; when not to coat. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call, { supplies: true });
  const planned = await planOf(call, shop);
  const sheet: Sheet = { ...(await sheetOf(call, shop, planned, 1)), ahead: harmlessData(aheadOf(shop, planned)) };

  if (wantsJson(call)) printJson(call, todayDocument(sheet, shop.manner));
  else print(call, todayScreen(sheet, { manner: shop.manner, look: await answerLook(call) }, isFlagged(call, 'care')));
  return 0;
}
