import type { DatedUse, ShoppingList } from '../bookkeeping/shopping.ts';
import { decimalText } from '../model/money.ts';
import type { Piece } from '../model/piece.ts';
import { isoWriter } from '../time/iso.ts';
import { localDay } from '../time/zone.ts';
import type { Manner } from './say-time.ts';

/** What to buy as a document: amounts in the unit named, money as decimal text, days as ISO 8601 dates. */
export function buyDocument(list: ShoppingList, heldPieces: readonly Piece[], { zone, currency }: Manner) {
  const iso = isoWriter(zone);
  const usesOf = (uses: readonly DatedUse[]) =>
    uses.map(({ work, value }) => ({
      step: work.task.id,
      start: iso(work.start),
      ...(value !== undefined && { value }),
    }));
  return {
    format: 'drybench.buy/1',
    timeZone: zone,
    currency,
    items: list.purchases.map((p) => ({
      id: p.item,
      name: p.name,
      unit: p.unit,
      needed: p.needed,
      onShelf: p.onShelf,
      usedSinceCount: p.usedSinceCount,
      toBuy: p.toBuy,
      ...(p.by !== undefined && { by: localDay(p.by, zone).date }),
      containers: p.containers.map(({ holds, count }) => ({ count, size: holds.value })),
      ...(p.costMinor !== undefined && { cost: decimalText(p.costMinor, currency) }),
      uses: usesOf(p.uses),
    })),
    unknown: list.unknown.map(({ item, name, uses }) => ({ id: item, name, uses: usesOf(uses) })),
    heldByLeadTest: heldPieces.map((p) => p.id),
  };
}
