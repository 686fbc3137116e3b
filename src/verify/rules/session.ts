import { SESSION_GAP_MINUTES } from '../../model/session.ts';
import type { PlannedSession } from '../../model/plan.ts';
import type { Breach } from '../breach.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

function sorted(list: readonly string[]): string {
  return [...list].sort().join(', ');
}

/** What keeps `next` from being laid with what was mixed and set up for `before`. */
function between(before: Fact, next: Fact, { say }: Ground): string[] {
  const found: string[] = [];
  const [was, is] = [before.laid?.material, next.laid?.material];
  if (was?.id !== is?.id) found.push(`lays ${is?.name ?? 'nothing'}, but ${was?.name ?? 'nothing'} was mixed`);
  if (sorted(before.step.tools) !== sorted(next.step.tools)) found.push('uses other tools than the coat before it');
  if (sorted(before.step.hands) !== sorted(next.step.hands))
    found.push('is done by other hands than the coat before it');
  const [from, to] = [before.station, next.station];
  if (from.room !== to.room || from.kind !== to.kind)
    found.push(`is at ${to.name}, but the coat before it at ${from.name}`);
  const gap = next.start - before.end;
  if (gap < 0) found.push('begins before the coat before it is over');
  if (gap > SESSION_GAP_MINUTES)
    found.push(`begins ${lasting(gap)} after ${say.step(before.id)}: what is left in the tool has begun to dry`);
  return found;
}

/** Between set-up and wash-up the tools are not free for anything else. */
function intruders(members: readonly Fact[], { facts, situation, say }: Ground): { fact: Fact; text: string }[] {
  const [first, last] = [members[0], members.at(-1)];
  const own = new Set(members.map((m) => m.id));
  return (first?.step.tools ?? []).flatMap((id) => {
    const tool = situation.book.shop.tools.find((t) => t.id === id);
    if (tool === undefined || tool.count > 1 || first === undefined || last === undefined) return [];
    return facts
      .filter((f) => !own.has(f.id) && f.step.tools.includes(id) && f.start < last.end && f.end > first.start)
      .map((fact) => ({ fact, text: `uses ${tool.name} between ${say.step(first.id)} and ${say.step(last.id)}` }));
  });
}

function saved(members: readonly Fact[], { situation }: Ground): number {
  return members.reduce((sum, { way, step, part }) => {
    const pace = Math.max(...step.hands.map((h) => situation.paces.get(h)?.factor ?? 1));
    const needed = (minutes: number) =>
      pace === 1 ? minutes : 5 * Math.max(1, Math.ceil(Math.round((minutes * pace * 1000) / 5) / 1000));
    const shared = part === undefined ? way.workMinutes : (way.inSession?.[part] ?? way.workMinutes);
    return sum + needed(way.workMinutes) - needed(shared);
  }, 0);
}

function faults(session: PlannedSession, ground: Ground): Breach[] {
  const { byId, say } = ground;
  const members = session.steps.flatMap((id) => byId.get(id) ?? []);
  const start = members[0]?.start ?? ground.plan.from;
  const breach = (steps: readonly string[], at: number, text: string): Breach => ({ rule: 'session', steps, at, text });
  if (session.steps.length < 2 || members.length < session.steps.length || new Set(session.steps).size < members.length)
    return [breach(session.steps, start, 'a session has too few steps, one twice, or some that are not in the plan')];
  const found: Breach[] = [];
  for (const member of members)
    if (member.way.inSession === undefined)
      found.push(breach([member.id], member.start, `${say.step(member.id)} has nothing to share with other coats`));
  members.slice(1).forEach((next, k) => {
    const before = members[k];
    if (before === undefined || next.settled) return;
    for (const fault of between(before, next, ground))
      found.push(breach([next.id, before.id], next.start, `${say.step(next.id)} ${fault}`));
  });
  for (const { fact, text } of intruders(members, ground))
    if (!fact.settled) found.push(breach([fact.id], fact.start, `${say.step(fact.id)} ${text}`));
  if (session.savedMinutes !== saved(members, ground))
    found.push(
      breach(
        session.steps,
        start,
        `a session is shown to save ${session.savedMinutes} min, but saves ${saved(members, ground)}`,
      ),
    );
  return found;
}

/**
 * Coats share one mixing, set-up and wash-up only where they follow one another with one material, one set of tools, the
 * same hands and one place, and nothing else goes through the tools between.
 */
export function sessionsKept(ground: Ground): Breach[] {
  const sessions = ground.plan.sessions ?? [];
  const times = new Map<string, number>();
  for (const id of sessions.flatMap((s) => [...new Set(s.steps)])) times.set(id, (times.get(id) ?? 0) + 1);
  const twice = [...times].filter(([, count]) => count > 1).map(([id]) => id);
  return [
    ...twice.map((id): Breach => ({
      rule: 'session',
      steps: [id],
      at: ground.byId.get(id)?.start ?? ground.plan.from,
      text: `${ground.say.step(id)} is in ${times.get(id) ?? 0} sessions`,
    })),
    ...sessions.flatMap((session) => faults(session, ground)),
  ];
}
