import type { Span } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import type { Ground } from '../ground.ts';

interface Engagement extends Span {
  readonly hand: string;
  readonly why: string;
}

function engagements({ situation }: Ground): Engagement[] {
  const { hands, appointments = [] } = situation.book.shop;
  return hands.flatMap(({ id, name, off = [] }) => [
    ...off.map((span) => ({ ...span, hand: id, why: `${name} is off` })),
    ...appointments
      .filter((a) => a.hands.includes(id))
      .map(({ start, end, what }) => ({ start, end, hand: id, why: `${name} has an appointment (${what})` })),
  ]);
}

/** Nobody works on a day off, or during an appointment. */
export function engagementsKept(ground: Ground): Breach[] {
  const { facts, say } = ground;
  const all = engagements(ground);
  return facts
    .filter((f) => !f.settled)
    .flatMap(({ id, step }) =>
      step.spans.flatMap((span) =>
        all
          .filter((e) => step.hands.includes(e.hand) && e.start < span.end && span.start < e.end)
          .map((e): Breach => {
            const text =
              `${say.step(id)} goes from ${say.when(span.start)} to ${say.when(span.end)}, ` +
              `but ${e.why} from ${say.when(e.start)} to ${say.when(e.end)}`;
            return { rule: 'hours', steps: [id], at: span.start, text };
          }),
      ),
    );
}
