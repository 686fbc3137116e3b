import type { Breach } from '../breach.ts';
import { openSpans } from '../../model/hours.ts';
import type { Hours } from '../../model/shop.ts';
import { covers, lengthOf, type Spans } from '../../time/span.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

interface Calendar {
  readonly of: string;
  readonly open: Spans;
}

function calendars({ facts, situation }: Ground): { shop: Calendar; hands: ReadonlyMap<string, Calendar> } {
  const { shop } = situation.book;
  const from = facts.reduce((least, f) => Math.min(least, f.start), situation.now);
  const to = facts.reduce((most, f) => Math.max(most, f.end), situation.now);
  const calendar = (of: string, hours: Hours): Calendar => ({ of, open: openSpans(hours, shop.timeZone, from, to) });
  return {
    shop: calendar('the shop is open', shop.opening),
    hands: new Map(shop.hands.map((h) => [h.id, calendar(`${h.name} is in`, h.hours)])),
  };
}

function outside(fact: Fact, calendar: Calendar, { say }: Ground): Breach[] {
  return fact.step.spans
    .filter((span) => !covers(calendar.open, span))
    .map((span) => ({
      rule: 'hours',
      steps: [fact.id],
      at: span.start,
      text:
        `${say.step(fact.id)} goes from ${say.when(span.start)} to ${say.when(span.end)}, ` +
        `but not all of that is while ${calendar.of}`,
    }));
}

function length(fact: Fact, { say }: Ground): Breach[] {
  const breach = (text: string): Breach[] => [
    {
      rule: 'hours',
      steps: [fact.id],
      at: fact.start,
      text: `${say.step(fact.id)} at ${say.when(fact.start)} ${text}`,
    },
  ];
  const minutes = lengthOf(fact.step.spans);
  return [
    ...(minutes === fact.way.workMinutes
      ? []
      : breach(`is given ${lasting(minutes)} of work, but takes ${lasting(fact.way.workMinutes)}`)),
    ...(fact.task.mayPause || fact.step.spans.length === 1 ? [] : breach('pauses, but must be done in one go')),
  ];
}

/** Hands-on work while the shop is open and the hand is in, as long as it takes; only some work may pause. */
export function hoursKept(ground: Ground): Breach[] {
  const { shop, hands } = calendars(ground);
  return ground.facts
    .filter((f) => !f.settled)
    .flatMap((fact) => [
      ...length(fact, ground),
      ...[shop, ...fact.step.hands.flatMap((id) => hands.get(id) ?? [])].flatMap((c) => outside(fact, c, ground)),
    ]);
}
