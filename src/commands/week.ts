import { planDocument } from '../model/plan-document.ts';
import { weekScreen } from '../reports/week.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { isFlagged, numberFlag, type Call, type ExitCode } from './call.ts';
import { openShop } from './open-shop.ts';
import { keepPlan, planOf } from './plan-of.ts';
import { sheetOf } from './sheet-of.ts';

/** Plans everything, and shows the bench sheet of the coming days. */
export async function answer(call: Call): Promise<ExitCode> {
  const days = numberFlag(call, 'days', 7, 1, 60);
  const shop = await openShop(call);
  const planned = planOf(call, shop);
  if (isFlagged(call, 'keep')) keepPlan(shop, planned.plan);
  if (wantsJson(call)) printJson(call, planDocument(planned.plan));
  else
    print(call, weekScreen(sheetOf(shop, planned, days), { manner: shop.manner, look: await answerLook(call) }, days));
  return 0;
}
