import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import type { PlannedStep } from '../../src/model/plan.ts';
import { comingForward } from '../../src/planning/come-forward.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { whyChain } from '../../src/planning/why.ts';
import type { Minute } from '../../src/time/span.ts';
import { verify } from '../../src/verify/verify.ts';
import { anyBook, now as randomNow } from '../support/random-shop.ts';
import { demoBook, demoNow } from './demo.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

/** The step a minute sooner, by itself. What it shows is no longer so, which is not what is asked here. */
function aMinuteSooner(step: PlannedStep): PlannedStep {
  return { ...step, spans: step.spans.map(({ start, end }) => ({ start: start - 1, end: end - 1 })) };
}

/** Causes that leave a step free to begin sooner by itself: the plan as a whole, or what it is laid in one go with. */
const free: ReadonlySet<string> = new Set(['better-so', 'session', 'session-waits']);

interface Tally {
  readonly causes: Map<string, number>;
  /** How often only the planner says that the step is held, who keeps to the safe side of the verifier. */
  byPlannerAlone: number;
}

function holds(book: Book, now: Minute, tally: Tally): void {
  const situation = situationOf(book, now);
  const made = makePlan(situation, { seed: 1, steps: 200 });
  if (made.kind !== 'plan') return;
  const { plan, air, factors } = made;
  for (const step of plan.steps) {
    if (step.atOnceAfter !== undefined) continue;
    const [link] = whyChain(situation, air, plan, step.id);
    const kind = link?.cause.kind ?? 'unknown';
    tally.causes.set(kind, (tally.causes.get(kind) ?? 0) + 1);
    if (free.has(kind)) continue;
    const steps = plan.steps.map((s) => (s.id === step.id ? aMinuteSooner(s) : s));
    const broken = verify({ situation, air, factors }, { ...plan, steps }).filter(
      ({ rule }) => rule !== 'shown' && rule !== 'rags',
    );
    if (broken.length > 0) continue;
    tally.byPlannerAlone += 1;
    const wanted = { step: step.id, by: link!.start - 1 };
    const sooner = comingForward({ standing: made, made: situation, now }, [], new Set([step.id]), wanted)?.held([]);
    expect(sooner, `${step.id} is held by ${kind}`).toBeUndefined();
  }
}

test('what is said to be held cannot begin a minute sooner by itself, says the verifier', () => {
  const tally: Tally = { causes: new Map(), byPlannerAlone: 0 };
  fc.assert(
    fc.property(anyBook(3, 4), (book) => {
      holds(book, randomNow, tally);
    }),
    { seed: 20270121, numRuns: long ? 150 : 6 },
  );
  holds(demoBook(), demoNow, tally);
  for (const kind of ['hours', 'order', 'hand', 'dry', 'place', 'tool', 'object'])
    expect(tally.causes.get(kind) ?? 0, kind).toBeGreaterThan(0);
  const all = [...tally.causes.values()].reduce((sum, n) => sum + n, 0);
  expect(tally.byPlannerAlone).toBeLessThan(all / 20);
  // Hardly anything is left to "the plan as a whole".
  expect(tally.causes.get('better-so') ?? 0).toBeLessThan(all / 25);
});
