import { staysAway } from '../../model/away.ts';
import { WHOLE } from '../../model/expand.ts';
import { openSpans } from '../../model/hours.ts';
import { covers, type Span } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import { isRags, type Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';

/** From the start of the work until what it laid down is safe to move. */
function stayOf(fact: Fact): Span {
  return { start: fact.start, end: Math.max(fact.end, fact.movableFrom) };
}

function outOfRoom(fact: Fact, { situation, say }: Ground): string[] {
  const { rooms, timeZone } = situation.book.shop;
  const room = rooms.find((r) => r.id === fact.station.room);
  const stay = stayOf(fact);
  if (room?.open === undefined || covers(openSpans(room.open, timeZone, stay.start, stay.end), stay)) return [];
  return [`stands in ${room.name} until ${say.when(stay.end)}, but the room cannot be had for all of that`];
}

/** Sections of the same piece that cannot be taken apart from the fact's own; all of them for the whole piece. */
function withIt(fact: Fact, { tasks }: Ground): (section: string) => boolean {
  if (fact.task.section === WHOLE) return () => true;
  const together = new Set([...tasks.values()].filter((t) => t.object === fact.task.object).map((t) => t.section));
  return (section) => together.has(section);
}

function whileAway(fact: Fact, ground: Ground): string[] {
  const { situation, say } = ground;
  const piece = situation.book.pieces.find((p) => p.id === fact.task.piece);
  if (piece === undefined) return [];
  const stay = stayOf(fact);
  return staysAway(piece)
    .filter(({ away }) => away.start < stay.end && stay.start < away.end)
    .filter(({ section }) => section === undefined || withIt(fact, ground)(section))
    .map(
      ({ away }) =>
        `keeps it here until ${say.when(stay.end)}, but it is away at ${away.at} from ${say.when(away.start)} to ${say.when(away.end)}`,
    );
}

/** Nothing stands in a room that cannot be had, or here while it is away: from its start until it is safe to move. */
export function staysKept(ground: Ground): Breach[] {
  return ground.facts
    .filter((f) => !f.settled && !isRags(f))
    .flatMap((fact) =>
      [...outOfRoom(fact, ground), ...whileAway(fact, ground)].map((fault): Breach => ({
        rule: 'stay',
        steps: [fact.id],
        at: fact.start,
        text: `${ground.say.step(fact.id)} starts ${ground.say.when(fact.start)} and ${fault}`,
      })),
    );
}
