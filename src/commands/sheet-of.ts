import type { Sheet } from '../reports/bench.ts';
import { harmlessData } from '../terminal/harmless.ts';
import type { Call } from './call.ts';
import { shippedSafety } from './shipped-safety.ts';
import { coatingHours } from './coating-hours.ts';
import type { OpenShop } from './open-shop.ts';
import type { Planned } from './plan-grounds.ts';

/** What the bench sheet of `days` days from today is made of, with every text harmless. */
export async function sheetOf(call: Call, shop: OpenShop, planned: Planned, days: number): Promise<Sheet> {
  const { plan, situation } = planned;
  return harmlessData({
    book: shop.book,
    plan,
    tasks: situation.tasks,
    unfit: coatingHours(shop, planned, days),
    safety: await shippedSafety(call),
  });
}
