import type { Breach } from '../breach.ts';
import { openSpans } from '../../model/hours.ts';
import type { Hours } from '../../model/shop.ts';
import { minutesAs } from '../../model/session.ts';
import { covers, lengthOf, type Spans } from '../../time/span.ts';
import { isRags, type Fact } from '../fact.ts';
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

/** The usual minutes, of a session's coat without what it shares, at the pace of the slowest of the hands, to the next five; at the usual pace as they stand. */
function asksFor(fact: Fact, { situation }: Ground): number {
  const { way, step, part } = fact;
  const usual = minutesAs(way, part);
  if (isRags(fact)) return usual;
  const slowest = step.hands.reduce((most, id) => Math.max(most, situation.paces.get(id)?.factor ?? 1), 0);
  if (slowest === 0 || slowest === 1) return usual;
  const fives = Math.round((usual * slowest * 1000) / 5) / 1000;
  return 5 * Math.max(1, Math.ceil(fives));
}

function length(fact: Fact, ground: Ground): Breach[] {
  const { say } = ground;
  const asked = asksFor(fact, ground);
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
    ...(minutes === asked ? [] : breach(`is given ${lasting(minutes)} of work, but takes ${lasting(asked)}`)),
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
