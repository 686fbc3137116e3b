import { todayScreen } from '../reports/today.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print } from './answers.ts';
import type { Call, ExitCode } from './call.ts';
import { coatingHours } from './coating-hours.ts';
import { openShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';

/** What to do now, next and after. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const planned = planOf(call, shop);
  const { plan, situation } = planned;
  const sheet = harmlessData({ book: shop.book, plan, tasks: situation.tasks, unfit: coatingHours(shop, planned, 1) });
  print(call, todayScreen(sheet, { manner: shop.manner, look: await answerLook(call) }));
  return 0;
}
