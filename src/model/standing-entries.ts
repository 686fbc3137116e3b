import type { Finding } from './finding.ts';
import type { Entry } from './journal.ts';
import { worded } from '../words/worded.ts';

export interface Standing {
  /** In the order in which they were entered; without those that were taken back, and without the taking back. */
  readonly entries: readonly Entry[];
  readonly findings: readonly Finding[];
}

/** An entry that was taken back does not count; nor does a taking back that was itself taken back. */
export function standingEntries(entries: readonly Entry[]): Standing {
  const numbers = new Set(entries.map((e) => e.number));
  const takenBack = new Set<number>();
  const standing: Entry[] = [];
  const findings: Finding[] = [];
  for (const entry of entries.toReversed()) {
    const { number, deed } = entry;
    if (takenBack.has(number)) continue;
    if (deed.kind !== 'undo') standing.push(entry);
    else if (numbers.has(deed.entry) && deed.entry < number) takenBack.add(deed.entry);
    else
      findings.push({
        code: 'journal-undo',
        severity: 'warning',
        message: worded`journal entry ${number} takes back entry ${deed.entry}, which does not come before it`,
      });
  }
  return { entries: standing.reverse(), findings: findings.reverse() };
}
