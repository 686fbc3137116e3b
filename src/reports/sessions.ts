import type { PlannedStep, Plan } from '../model/plan.ts';
import type { Span } from '../time/span.ts';
import type { Names } from './names.ts';
import { counted, worded } from '../words/worded.ts';

function sayMember({ piece, section }: PlannedStep, first: PlannedStep, names: Names): string {
  const part = names.section(piece, section);
  if (piece === first.piece && part !== '') return part;
  return part === '' ? names.piece(piece) : `${names.piece(piece)}, ${part}`;
}

/** What is shared, for each step of a session: whom the first mixes for, and when the tools are washed. */
export function sessionNotes({ steps, sessions = [] }: Plan, names: Names): ReadonlyMap<string, string> {
  const byId = new Map(steps.map((step) => [step.id, step]));
  return new Map(
    sessions.flatMap((session): [string, string][] => {
      const members = session.steps.flatMap((id) => byId.get(id) ?? []);
      const [first] = members;
      if (first === undefined) return [];
      const whose = members.map((step) => sayMember(step, first, names)).join(worded`, then `);
      const all = members.length === 2 ? worded`both` : worded`all ${members.length}`;
      const wash = first.tools.length === 0 ? '' : worded`, wash up after the last`;
      return members.map((step, k): [string, string] => [
        step.id,
        k === 0 ? worded`Mix once for ${all}: ${whose}${wash}` : worded`With what is mixed already`,
      ]);
    }),
  );
}

/** Minutes that the sessions begun in `within` save; of the whole plan where it is left out. */
export function savedMinutes({ steps, sessions = [] }: Plan, within?: Span): number {
  const startOf = new Map(steps.map((step) => [step.id, step.spans[0]?.start ?? 0]));
  return sessions
    .filter((session) => {
      const start = startOf.get(session.steps[0] ?? '') ?? 0;
      return within === undefined || (start >= within.start && start < within.end);
    })
    .reduce((sum, session) => sum + session.savedMinutes, 0);
}

/** `Mixing and washing up once for several coats saves 60 min in these 7 days, 90 min in the whole plan.`; empty where nothing. */
export function saySaved(plan: Plan, shown: Span, days: number): string {
  const all = savedMinutes(plan);
  if (all === 0) return '';
  const here = savedMinutes(plan, shown);
  if (here === 0) return worded`Mixing and washing up once for several coats saves ${all} min in the whole plan.`;
  const time = counted(days, 'today', 'in these {0} days');
  return worded`Mixing and washing up once for several coats saves ${here} min ${time}, ${all} min in the whole plan.`;
}
