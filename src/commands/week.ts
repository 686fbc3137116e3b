import { planDocument } from '../model/plan-document.ts';
import { weekScreen } from '../reports/week.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { numberFlag, type Call, type ExitCode } from './call.ts';
import { coatingHours } from './coating-hours.ts';
import { openShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';

/** Plans everything, and shows the bench sheet of the coming days. */
export async function answer(call: Call): Promise<ExitCode> {
  const days = numberFlag(call, 'days', 7, 1, 60);
  const shop = await openShop(call);
  const planned = planOf(call, shop);
  const { plan, situation } = planned;
  if (wantsJson(call)) printJson(call, planDocument(plan));
  else {
    const sheet = harmlessData({
      book: shop.book,
      plan,
      tasks: situation.tasks,
      unfit: coatingHours(shop, planned, days),
    });
    print(call, weekScreen(sheet, { manner: shop.manner, look: await answerLook(call) }, days));
  }
  return 0;
}
