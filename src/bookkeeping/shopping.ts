import type { Book } from '../model/book.ts';
import { grainsOf, grainsPerUnit, grainsUp, type Quantity, type QuantityUnit } from '../model/quantity.ts';
import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { supplyOf } from '../model/supply.ts';
import type { Minute } from '../time/span.ts';
import { chooseContainers, type Size } from './containers.ts';
import { usedSince } from './used-since.ts';
import { usesOf } from './uses.ts';
import { workLeft, type WorkToDo } from './work-left.ts';

/** One use of something by one step. */
export interface DatedUse {
  readonly work: WorkToDo;
  /** Absent: nothing says how much. */
  readonly value?: number;
}

/** One thing that the work left needs: how much of it is there, and what is to be bought by when. */
export interface Purchase {
  readonly item: string;
  readonly name: string;
  readonly unit: QuantityUnit;
  readonly needed: number;
  readonly onShelf: number;
  /** Of what was counted, what has been used since then. */
  readonly usedSinceCount: number;
  /** In whole grains, so that nothing is bought for an error of reckoning; 0: the shelf has enough. */
  readonly toBuy: number;
  /** Start of the first step that the shelf does not suffice for. */
  readonly by?: Minute;
  /** Empty: nothing says in which sizes it is sold. */
  readonly containers: readonly { readonly holds: Quantity; readonly count: number }[];
  /** Of the containers, in minor units; absent where one of them has no price. */
  readonly costMinor?: number;
  readonly uses: readonly DatedUse[];
}

export interface ShoppingList {
  /** In order of the day they are needed by; then what the shelf has enough of. */
  readonly purchases: readonly Purchase[];
  /** What steps take, and nothing says how much of. */
  readonly unknown: readonly Pick<Purchase, 'item' | 'name' | 'uses'>[];
}

interface Gathered {
  readonly unit: QuantityUnit;
  readonly uses: DatedUse[];
}

function gather(book: Book, situation: Situation, plan: Plan, until: Minute): Map<string, Gathered> {
  const byItem = new Map<string, Gathered>();
  for (const work of workLeft(situation, plan)) {
    if (work.start >= until) continue;
    for (const { item, unit, value } of usesOf(book, situation.tasks, work.task, work.way, work.part)) {
      const gathered = byItem.get(item) ?? { unit, uses: [] };
      gathered.uses.push({ work, ...(value !== undefined && { value }) });
      byItem.set(item, gathered);
    }
  }
  return byItem;
}

/** What something is called, and the sizes that it is sold in: those that have a price, else those of its own file. */
export function soldAs(book: Book, item: string) {
  const material = book.materials.get(item);
  const supply = supplyOf(book.supplies, item);
  const prices = book.shop.prices?.[item];
  const sizes: readonly (Size & { readonly holds: Quantity })[] =
    prices?.map(({ minor, holds }) => ({ holds, minor, grains: grainsOf(holds) })) ??
    (material?.containers ?? supply?.packs ?? []).map((holds) => ({ holds, grains: grainsOf(holds) }));
  const isKnown = material !== undefined || supply !== undefined;
  const isFromTap = isKnown && sizes.length === 0;
  return { name: material?.name ?? supply?.name ?? item.replaceAll('-', ' '), sizes, isFromTap };
}

/** Start of the first use that what there is does not cover. */
function runsOut(uses: readonly DatedUse[], shelfGrains: number, unit: QuantityUnit): Minute | undefined {
  let used = 0;
  for (const { work, value = 0 } of uses) {
    used += value;
    if (grainsUp({ value: used, unit }) > shelfGrains) return work.start;
  }
  return undefined;
}

/** What is left on the shelf of what was counted. */
function shelfOf({ shop }: Book, item: string, unit: QuantityUnit, used: ReadonlyMap<string, number>) {
  const counted = shop.stock?.[item] ?? { value: 0, unit };
  const gone = Math.min(counted.value, used.get(item) ?? 0);
  return { shelf: { ...counted, value: counted.value - gone }, gone };
}

/** What to buy for the steps that start before `until`, less what is on the shelf. */
export function shoppingList(book: Book, situation: Situation, plan: Plan, until: Minute = Infinity): ShoppingList {
  const { stockCounted } = book.shop;
  const used = stockCounted === undefined ? new Map<string, number>() : usedSince(book, situation, stockCounted);
  const gathered = [...gather(book, situation, plan, until)];
  const unknown = gathered.flatMap(([item, { uses }]) => {
    const without = uses.filter((u) => u.value === undefined);
    return without.length === 0 ? [] : [{ item, name: soldAs(book, item).name, uses: without }];
  });
  const purchases = gathered.flatMap(([item, { unit, uses }]): Purchase[] => {
    const { name, sizes, isFromTap } = soldAs(book, item);
    const needed = uses.reduce((sum, { value = 0 }) => sum + value, 0);
    if (isFromTap || needed === 0) return [];
    const { shelf, gone } = shelfOf(book, item, unit, used);
    const grains = Math.max(0, grainsUp({ value: needed, unit }) - grainsOf(shelf));
    const chosen = chooseContainers(grains, sizes);
    const by = runsOut(uses, grainsOf(shelf), unit);
    const isPriced = chosen.length > 0 && chosen.every(({ size }) => size.minor !== undefined);
    return [
      {
        item,
        name,
        unit,
        needed,
        onShelf: shelf.value,
        usedSinceCount: gone,
        toBuy: grains / grainsPerUnit[unit],
        ...(by !== undefined && { by }),
        containers: chosen.map(({ size, count }) => ({ holds: size.holds, count })),
        ...(isPriced && { costMinor: chosen.reduce((sum, { size, count }) => sum + (size.minor ?? 0) * count, 0) }),
        uses: uses.filter((u) => u.value !== undefined),
      },
    ];
  });
  const order = (p: Purchase) => p.by ?? Infinity;
  return {
    purchases: purchases.sort((a, b) => (order(a) === order(b) ? (a.item < b.item ? -1 : 1) : order(a) - order(b))),
    unknown,
  };
}
