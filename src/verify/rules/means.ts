import type { Breach } from '../breach.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';

function sorted(list: readonly string[]): string {
  return [...list].sort().join(', ');
}

function faults({ step, task, way, station }: Fact, { situation }: Ground): string[] {
  const { hands, tools } = situation.book.shop;
  const found: string[] = [];
  if (!way.stations.includes(station.kind))
    found.push(`is at ${station.name}, a ${station.kind}, but needs ${way.stations.join(' or ')}`);
  if (step.room !== station.room)
    found.push(`is shown in the room ${step.room}, but ${station.name} is in ${station.room}`);
  if (step.hands.length !== task.people || new Set(step.hands).size !== task.people)
    found.push(`has ${new Set(step.hands).size} of the ${task.people} hands that it needs`);
  for (const id of step.hands)
    if (!hands.some((h) => h.id === id)) found.push(`is given to ${id}, whom the shop does not know`);
  const team = hands.filter((h) => step.hands.includes(h.id));
  const { skill } = way;
  if (skill !== undefined && !team.some((h) => h.skills.includes(skill)))
    found.push(`is given to ${team.map((h) => h.name).join(' and ')}, but needs the skill ${skill}`);
  for (const id of step.tools)
    if (!tools.some((t) => t.id === id)) found.push(`uses ${id}, a tool that the shop lacks`);
  if (sorted(step.tools) !== sorted(way.tools))
    found.push(`uses the tools [${sorted(step.tools)}], but needs [${sorted(way.tools)}]`);
  return found;
}

/** The right kind of station, and the hands, skill and tools that the chosen way asks for. */
export function meansKept(ground: Ground): Breach[] {
  return ground.facts
    .filter((f) => !f.settled)
    .flatMap((fact) =>
      faults(fact, ground).map((fault): Breach => ({
        rule: 'means',
        steps: [fact.id],
        at: fact.start,
        text: `${ground.say.step(fact.id)} at ${ground.say.when(fact.start)} ${fault}`,
      })),
    );
}
