import { describe, expect, test } from 'vitest';
import type { PlannedStep } from '../../src/model/plan.ts';
import type { Task } from '../../src/model/task.ts';
import type { RuleName } from '../../src/verify/breach.ts';
import { verify } from '../../src/verify/verify.ts';
import { evidenceOf, on, planOf, situationOf, step } from './fixture.ts';
import { alone, laid, last, legs, other, seat, session, sprayed, tasks, top } from './session-base.ts';

function rulesBroken(steps: readonly PlannedStep[], sessions: readonly (typeof session)[], of = Object.values(tasks)) {
  const situation = situationOf(of);
  return new Set(verify(evidenceOf(situation), planOf(steps, { sessions })).map((b) => b.rule));
}

describe('a session', () => {
  test('of two coats keeps every rule', () => {
    expect([...rulesBroken([top, last, alone, other], [session])]).toEqual([]);
  });

  const cases: readonly {
    what: string;
    breaks: RuleName;
    steps: readonly PlannedStep[];
    sessions?: (typeof session)[];
  }[] = [
    {
      what: 'set-up left out',
      breaks: 'hours',
      steps: [laid(tasks.top, on('mon', '08:20'), 30, 'booth'), last, alone, other],
    },
    { what: 'wash-up left out', breaks: 'hours', steps: [top, legs, alone, other] },
    {
      what: 'no session though the minutes are shared',
      breaks: 'hours',
      steps: [top, last, alone, other],
      sessions: [],
    },
    {
      what: 'too long between',
      breaks: 'session',
      steps: [top, laid(tasks.legs, on('mon', '09:11'), 40, 'booth-2'), alone, other],
    },
    { what: 'other hands', breaks: 'session', steps: [top, { ...last, hands: ['friend'] }, alone, other] },
    {
      what: 'another place',
      breaks: 'session',
      steps: [top, laid(tasks.legs, on('mon', '09:00'), 40, 'rack'), alone, other],
    },
    {
      what: 'the tool used between',
      breaks: 'session',
      steps: [top, last, alone, step(tasks.other, { at: on('mon', '08:50'), station: 'bench-1', hands: ['helper'] })],
    },
    {
      what: 'a wrong sum',
      breaks: 'session',
      steps: [top, last, alone, other],
      sessions: [{ ...session, savedMinutes: 60 }],
    },
    { what: 'a step in two', breaks: 'session', steps: [top, last, alone, other], sessions: [session, session] },
    {
      what: 'only one step',
      breaks: 'session',
      steps: [top, last, alone, other],
      sessions: [{ ...session, steps: [top.id] }],
    },
    {
      what: 'a step with nothing to share',
      breaks: 'session',
      steps: [top, last, alone, other],
      sessions: [session, { steps: [seat.id, other.id], savedMinutes: 0 }],
    },
  ];
  for (const { what, breaks, steps, sessions } of cases)
    test(`${what}: ${breaks}`, () => {
      expect([...rulesBroken(steps, sessions ?? [session])]).toContain(breaks);
    });

  test('other material: session', () => {
    const glued: Task = { ...tasks.legs, ways: [{ ...sprayed, film: { material: 'putty', thickness: 1 } }] };
    const of = [tasks.top, glued, tasks.seat, tasks.other];
    const broken = rulesBroken([top, { ...last, material: 'putty' }, alone, other], [session], of);
    expect([...broken]).toContain('session');
  });

  test('past its pot life: pot-life, though each coat by itself is short enough', () => {
    const situation = situationOf(Object.values(tasks));
    const enamel = situation.book.materials.get('enamel')!;
    const withPotLife = (hours: number) => {
      const potLife = { low: hours, typical: hours, high: hours, source: 'invented for the test' };
      const materials = new Map([...situation.book.materials, ['enamel', { ...enamel, potLife }] as const]);
      const evidence = evidenceOf({ ...situation, book: { ...situation.book, materials } });
      return verify(evidence, planOf([top, last, alone, other], { sessions: [session] })).map((b) => b.rule);
    };
    expect(withPotLife(1.75)).toEqual([]);
    expect(withPotLife(1.5)).toEqual(['pot-life']);
  });
});
