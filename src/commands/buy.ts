import { shoppingList } from '../bookkeeping/shopping.ts';
import { heldTasks } from '../model/gates.ts';
import { buyDocument } from '../reports/buy-document.ts';
import { buyScreen } from '../reports/buy.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { localDay } from '../time/zone.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { isFlagged, textFlag, type Call, type ExitCode } from './call.ts';
import { openShop, timeOf, type OpenShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';

/** The end of the day that `--until` names. */
function untilOf(call: Call, { book }: OpenShop): number | undefined {
  const written = textFlag(call, 'until');
  const zone = book.shop.timeZone;
  return written === undefined ? undefined : localDay(timeOf(call, '--until', written, zone), zone).end;
}

function countedOf({ book }: OpenShop): { readonly counted?: { readonly at?: number } } {
  const { stock, stockCounted } = book.shop;
  if (stock === undefined) return {};
  return { counted: stockCounted === undefined ? {} : { at: stockCounted } };
}

/** What to buy for the work left, how much, and by which day. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call, { supplies: true });
  const { book } = shop;
  const until = untilOf(call, shop);
  const { plan, situation } = await planOf(call, shop);
  const list = shoppingList(book, situation, plan, until);
  const held = heldTasks(situation);
  const heldPieces = book.pieces.filter((p) => situation.tasks.some((t) => t.piece === p.id && held.has(t.id)));
  if (wantsJson(call)) printJson(call, buyDocument(list, heldPieces, shop.manner));
  else {
    const shown = {
      list,
      heldPieces,
      withSteps: isFlagged(call, 'steps'),
      ...(until !== undefined && { until }),
      ...countedOf(shop),
    };
    print(call, buyScreen(harmlessData(shown), harmlessData(book), shop.manner, await answerLook(call)));
  }
  return 0;
}
