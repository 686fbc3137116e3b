import { todayDocument } from '../reports/today-document.ts';
import { todayScreen } from '../reports/today.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { isFlagged, type Call, type ExitCode } from './call.ts';
import { openShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';
import { sheetOf } from './sheet-of.ts';

/** What to do now, next and after; what opens and shuts; when not to coat. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const sheet = sheetOf(shop, planOf(call, shop), 1);

  if (wantsJson(call)) printJson(call, todayDocument(sheet, shop.manner));
  else print(call, todayScreen(sheet, { manner: shop.manner, look: await answerLook(call) }, isFlagged(call, 'care')));
  return 0;
}
