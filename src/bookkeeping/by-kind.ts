import type { Account } from './accounts.ts';
import { ratePer } from './sale.ts';

/** What the pieces of one kind earn together. Money in minor units. */
export interface KindEarns {
  readonly kind: string;
  readonly pieces: number;
  readonly minutes: number;
  readonly days: number;
  readonly margin: number;
  readonly perBenchHour: number;
  readonly perDayHeld?: number;
}

/** Kinds of piece that have a price hoped for, those that earn most a bench hour first. */
export function earnedByKind(accounts: readonly Account[]): KindEarns[] {
  const kinds = new Map<string, Account[]>();
  for (const account of accounts) {
    if (account.sale === undefined) continue;
    kinds.set(account.kind, [...(kinds.get(account.kind) ?? []), account]);
  }
  const sum = (list: readonly Account[], of: (a: Account) => number) => list.reduce((s, a) => s + of(a), 0);
  return [...kinds]
    .flatMap(([kind, list]): KindEarns[] => {
      const minutes = sum(list, (a) => a.minutes.soFar + a.minutes.toCome);
      const days = sum(list, (a) => a.days.soFar + a.days.toCome);
      const margin = sum(list, (a) => a.sale?.margin ?? 0);
      const perBenchHour = ratePer(margin, minutes, 60);
      const perDayHeld = ratePer(margin, days);
      if (perBenchHour === undefined) return [];
      return [
        {
          kind,
          pieces: list.length,
          minutes,
          days,
          margin,
          perBenchHour,
          ...(perDayHeld !== undefined && { perDayHeld }),
        },
      ];
    })
    .sort((a, b) => b.perBenchHour - a.perBenchHour || (a.kind < b.kind ? -1 : 1));
}
