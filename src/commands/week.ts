import { planDocument } from '../model/plan-document.ts';
import { movesOf } from '../planning/moved.ts';
import { movedScreen } from '../reports/moved.ts';
import { namesOf } from '../reports/names.ts';
import { weekScreen } from '../reports/week.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { isFlagged, numberFlag, type Call, type ExitCode } from './call.ts';
import { openShop } from './open-shop.ts';
import { keepPlan, planFor } from './plan-anew.ts';
import { planToFollow } from './plan-of.ts';
import { sheetOf } from './sheet-of.ts';

/**
 * Plans everything, near the plan that the shop follows, and keeps that from then on; shows what moved and the bench sheet
 * of the coming days.
 */
export async function answer(call: Call): Promise<ExitCode> {
  const days = numberFlag(call, 'days', 7, 1, 60);
  const shop = await openShop(call, { supplies: true });
  const seconds = numberFlag(call, 'for', 0, 1, 3600);
  const planned = seconds > 0 ? await planFor(call, shop, seconds) : await planToFollow(call, shop);
  if (!isFlagged(call, 'look')) keepPlan(call, shop, planned.plan);
  if (wantsJson(call)) printJson(call, planDocument(planned.plan));
  else {
    const writing = { manner: shop.manner, look: await answerLook(call) };
    const sheet = await sheetOf(call, shop, planned, days);
    const moves = planned.kept === undefined ? [] : harmlessData(movesOf(planned.kept, planned));
    print(
      call,
      movedScreen(moves, { ...writing, ...sheet, names: namesOf(sheet.book) }) +
        weekScreen(sheet, writing, days, isFlagged(call, 'picture')),
    );
  }
  return 0;
}
