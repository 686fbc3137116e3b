import type { Account, SoFar } from '../bookkeeping/accounts.ts';
import type { KindEarns } from '../bookkeeping/by-kind.ts';
import { decimalText } from '../model/money.ts';
import type { Manner } from './say-time.ts';

const MINUTES_PER_HOUR = 60;

/** What pieces cost and bring as a document: money as decimal text, times in hours. */
export function priceDocument(accounts: readonly Account[], kinds: readonly KindEarns[], { currency }: Manner) {
  const money = (minor: number) => decimalText(minor, currency);
  const sums = ({ soFar, toCome }: SoFar) => ({
    soFar: money(soFar),
    toCome: money(toCome),
    atEnd: money(soFar + toCome),
  });
  return {
    format: 'drybench.price/1',
    currency,
    pieces: accounts.map(({ sale, ...a }) => ({
      id: a.piece,
      name: a.name,
      kind: a.kind,
      purchase: money(a.purchase),
      materials: sums(a.materials),
      pay: sums(a.pay),
      overhead: sums(a.overhead),
      cost: sums(a.cost),
      benchHours: {
        soFar: a.minutes.soFar / MINUTES_PER_HOUR,
        plannedForThat: a.plannedMinutes / MINUTES_PER_HOUR,
        toCome: a.minutes.toCome / MINUTES_PER_HOUR,
      },
      days: a.days,
      ...(a.lowestPrice !== undefined && { losesBelow: money(a.lowestPrice) }),
      ...(sale && {
        priceHopedFor: money(sale.price),
        sellingFee: money(sale.fee),
        margin: money(sale.margin),
        ...(sale.perBenchHour !== undefined && { earnedPerBenchHour: money(sale.perBenchHour) }),
        ...(sale.perDayHeld !== undefined && { earnedPerDayHeld: money(sale.perDayHeld) }),
      }),
      unpriced: a.unpriced,
      stepsHeldByLeadTest: a.heldSteps,
    })),
    ...(kinds.length > 0 && {
      kinds: kinds.map((k) => ({
        kind: k.kind,
        pieces: k.pieces,
        benchHours: k.minutes / MINUTES_PER_HOUR,
        daysHeld: k.days,
        margin: money(k.margin),
        earnedPerBenchHour: money(k.perBenchHour),
        ...(k.perDayHeld !== undefined && { earnedPerDayHeld: money(k.perDayHeld) }),
      })),
    }),
  };
}
