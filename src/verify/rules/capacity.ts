import type { Breach } from '../breach.ts';
import { isRags, type Fact } from '../fact.ts';
import { groups, type Ground } from '../ground.ts';
import { overloads, type Claim } from '../sweep.ts';

interface Shared {
  readonly name: string;
  readonly capacity: number;
  readonly claims: readonly Claim[];
}

function working(fact: Fact): Claim[] {
  return fact.step.spans.map((span) => ({ ...span, holder: fact.id, step: fact.id }));
}

/** Clamps stay on until the glue can be handled. */
function toolClaims(fact: Fact): Claim[] {
  if (fact.laid?.material.family !== 'glue') return working(fact);
  return [{ start: fact.start, end: fact.movableFrom, holder: fact.id, step: fact.id }];
}

/**
 * Where an object stands is where it was last worked on. What was done may have been moved too early, and that is a
 * fact; from then on all that lies wet on it keeps its new place.
 */
function lastSettled(members: readonly Fact[]): Fact | undefined {
  return members.filter((f) => f.settled).reduce<Fact | undefined>((a, b) => (a && a.end > b.end ? a : b), undefined);
}

function slotClaim(fact: Fact, members: readonly Fact[]): Claim {
  const own = Math.max(fact.end, fact.movableFrom);
  const claim = { start: fact.start, holder: fact.task.object, step: fact.id };
  if (!fact.settled) return { ...claim, end: own };
  const last = lastSettled(members);
  if (last === fact)
    return { ...claim, end: Math.max(...members.filter((f) => f.settled).map((f) => Math.max(f.end, f.movableFrom))) };
  return { ...claim, end: Math.max(fact.start, Math.min(own, last?.start ?? own)) };
}

function shared({ facts, byObject, situation, say }: Ground): Shared[] {
  const { hands, tools, stations } = situation.book.shop;
  const byHand = groups(facts, (f) => f.step.hands);
  const byTool = groups(facts, (f) => f.step.tools);
  const byStation = groups(
    facts.filter((f) => !isRags(f)),
    (f) => [f.station.id],
  );
  return [
    ...hands.map((h) => ({ name: h.name, capacity: 1, claims: (byHand.get(h.id) ?? []).flatMap(working) })),
    ...tools.map((t) => ({ name: t.name, capacity: t.count, claims: (byTool.get(t.id) ?? []).flatMap(toolClaims) })),
    ...stations.map((s) => ({
      name: s.name,
      capacity: s.slots,
      claims: (byStation.get(s.id) ?? []).map((f) => slotClaim(f, byObject.get(f.task.object) ?? [])),
    })),
    ...[...byObject.values()].map((members) => ({
      name: `the same object of ${say.piece(members[0]?.task.piece ?? '')}`,
      capacity: 1,
      claims: members.map((f) => ({ start: f.start, end: f.end, holder: f.id, step: f.id })),
    })),
  ];
}

function movedWet({ byObject, say }: Ground): Breach[] {
  return [...byObject.values()].flatMap((members) =>
    members.flatMap((wet) => {
      const { station } = (wet.settled ? lastSettled(members) : undefined) ?? wet;
      return members
        .filter((f) => f.start >= wet.end && f.start < wet.movableFrom && f.station.id !== station.id && !f.settled)
        .map((next): Breach => {
          const text =
            `${say.step(next.id)} at ${next.station.name} starts ${say.when(next.start)}, ` +
            `but ${say.step(wet.id)} is not safe to move from ${station.name} before ${say.when(wet.movableFrom)}`;
          return { rule: 'capacity', steps: [next.id, wet.id], at: next.start, text };
        });
    }),
  );
}

/** One hand, tool and slot at one time; what is not yet safe to move stays where it is, and keeps its slot. */
export function capacitiesKept(ground: Ground): Breach[] {
  const { byId, say } = ground;
  const tooMuch = shared(ground).flatMap(({ name, capacity, claims }) =>
    overloads(claims, capacity)
      .filter(({ steps }) => steps.some((id) => byId.get(id)?.settled === false))
      .map(({ at, holders, steps }): Breach => {
        const list = steps.map(say.step).join('; ');
        const text = `${say.when(at)}: ${holders} at once on ${name}, which has room for ${capacity}: ${list}`;
        return { rule: 'capacity', steps, at, text };
      }),
  );
  return [...tooMuch, ...movedWet(ground)];
}
