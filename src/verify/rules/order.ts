import type { Breach } from '../breach.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

function afterOthers(fact: Fact, { byId, say }: Ground): Breach[] {
  return fact.task.needs.flatMap((need) => {
    if (need.kind === 'mark' || need.kind === 'window') return [];
    const other = byId.get(need.task);
    if (other === undefined) return [];
    const waitMinutes = need.kind === 'order' ? Math.round(need.waitHours * 60) : 0;
    const from = other.end + waitMinutes;
    if (fact.start >= from) return [];
    const waits = waitMinutes > 0 ? ` and ${lasting(waitMinutes)} must pass` : '';
    const text =
      `${say.step(fact.id)} starts ${say.when(fact.start)}, but it comes after ${say.step(other.id)}, ` +
      `which ends ${say.when(other.end)}${waits}: ${lasting(from - fact.start)} too early`;
    return [{ rule: 'order', steps: [fact.id, other.id], at: fact.start, text }];
  });
}

function notBefore(fact: Fact, { situation, say }: Ground): Breach[] {
  const piece = situation.book.pieces.find((p) => p.id === fact.task.piece);
  const floors = [
    { from: situation.now, why: 'it is already' },
    { from: piece?.arrives, why: 'the piece arrives only' },
    { from: situation.notBefore.get(fact.id), why: 'it was put off to' },
  ];
  return floors.flatMap(({ from, why }) =>
    from === undefined || fact.start >= from
      ? []
      : [
          {
            rule: 'order',
            steps: [fact.id],
            at: fact.start,
            text: `${say.step(fact.id)} starts ${say.when(fact.start)}, but ${why} ${say.when(from)}`,
          },
        ],
  );
}

/** Each step after what comes before it in its recipe or section, and none before it can begin at all. */
export function orderKept(ground: Ground): Breach[] {
  return ground.facts
    .filter((f) => !f.settled)
    .flatMap((fact) => [...afterOthers(fact, ground), ...notBefore(fact, ground)]);
}
