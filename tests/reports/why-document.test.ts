import { expect, test } from 'vitest';
import type { Change } from '../../src/planning/change.ts';
import type { WhyLink } from '../../src/planning/why.ts';
import { namesOf } from '../../src/reports/names.ts';
import { sayHeld, whyDocument } from '../../src/reports/why.ts';
import { isoWriter } from '../../src/time/iso.ts';
import { published } from '../support/published.ts';
import { book, look, manner, on, plan, steps, zone } from './sample.ts';

const during = { start: on(11, '08:00'), end: on(11, '10:00') };
const date = '2027-01-11';
const spans = [{ from: 480, to: 510 }];

/** What is never tried when somebody asks why. */
type NotTried = 'open' | 'skip' | 'instead' | 'material' | 'without';

/** One of each kind that is. */
const changes: { readonly [Kind in Exclude<Change['kind'], NotTried>]: Extract<Change, { kind: Kind }> } = {
  warmer: { kind: 'warmer', room: 'shed', byK: 3, during },
  drier: { kind: 'drier', room: 'shed', toRhPercent: 50, during },
  slot: { kind: 'slot', station: 'bench', more: 1 },
  station: { kind: 'station', room: 'shed', place: 'bench', slots: 1 },
  helper: { kind: 'helper', date, spans, skills: ['spray'] },
  in: { kind: 'in', hand: 'owner', date, spans },
  tool: { kind: 'tool', tool: 'sander', more: 1 },
  arrives: { kind: 'arrives', piece: 'stool', at: on(12, '08:00') },
  back: { kind: 'back', piece: 'stool', left: on(12, '08:00'), at: on(14, '08:00') },
  room: { kind: 'room', room: 'shed', during },
  'not-put-off': { kind: 'not-put-off', task: 'stool/seat/scuff' },
};

const [step, other] = steps;
if (step === undefined || other === undefined) throw new Error('the sample has no steps');
const start = on(12, '13:15');
const until = on(11, '11:50');
const busy: WhyLink = {
  step,
  start,
  waited: until,
  cause: { kind: 'hand', id: 'owner', name: 'Owner', by: other.id, until },
  then: { kind: 'hours', since: until, until: start },
};

test('each change that is tried is as its schema says, with its times in ISO 8601', () => {
  for (const change of Object.values(changes)) {
    const nearest = { kind: 'change', changes: [change], start: on(11, '09:00'), along: [] } as const;
    const document = whyDocument([busy], [], nearest, isoWriter(zone), manner);
    const plain: unknown = JSON.parse(JSON.stringify(document));
    expect(published(plain), change.kind).toEqual({ name: 'why', errors: [] });
    expect(plain).toMatchObject({ chain: [{ then: { kind: 'hours', until: '2027-01-12T13:15:00+00:00' } }] });
  }
});

test('what holds a step after its cause is over is said with it', () => {
  const desk = { plan, names: namesOf(book), look: look(120), manner };
  expect(sayHeld(busy, desk)).toMatch(
    /^Owner is busy with .* until today 11:50; then nobody is in, or not for long enough, until tomorrow 13:15$/,
  );
  expect(sayHeld({ step, cause: busy.cause }, desk)).toMatch(/ until today 11:50$/);
  const damp = { kind: 'air', room: step.room, since: until, until: start, breaches: [] } as const;
  expect(sayHeld({ ...busy, then: damp }, desk)).toMatch(/ until today 11:50; then the air of .* forbids it until /);
});
