import type { Away } from '../../model/piece.ts';
import type { Appointment } from '../../model/shop.ts';
import { unite, type Span, type Spans } from '../../time/span.ts';
import { readStretch } from '../quantities/stretch.ts';
import { oneOrMany } from '../shapes/collections.ts';
import { may, must, record } from '../shapes/record.ts';
import { refined, type Shape, type ValueOf } from '../shapes/shape.ts';
import { written } from '../shapes/text.ts';
import { ids, instant, minutes, name } from './values.ts';
import { worded } from '../../words/worded.ts';

const stretch: Shape<Span> = written({
  wanted: 'a date like 2027-01-18, or from when to when like 2027-02-01 - 2027-02-05',
  code: 'bad-stretch',
  jsonSchema: {
    type: 'string',
    maxLength: 64,
    pattern: '^\\d{4}-\\d{2}-\\d{2}',
    examples: ['2027-01-18', '2027-02-01 - 2027-02-05', '2027-01-20T13:00 - 2027-01-20T17:30'],
  },
  read: (text, notes) => readStretch(text, notes.zone),
});

/** Days off, whole or in part. */
export const stretches: Shape<Spans> = refined(oneOrMany(stretch, 'days'), unite);

const stay = record('a stay away', {
  from: must(instant('first'), 'day or time that it leaves'),
  to: must(instant('end'), 'day or time that it is promised back; a day counts to its end'),
  at: must(name, 'with whom, or where'),
});

/** Stays of a piece or a section with somebody else. */
export const staysAway: Shape<readonly Away[]> = oneOrMany(
  refined(stay, ({ from, to, at }, here, notes): Away | undefined => {
    if (from < to) return { start: from, end: to, at };
    notes.error(here, {
      code: 'bad-away',
      message: worded`it is back before it leaves`,
      advice: worded`write a \`to\` that is later than \`from\``,
    });
    return undefined;
  }),
  'stays',
);

export const appointment = record('an appointment', {
  at: must(instant('first'), 'when it begins, like 2027-01-20T10:00'),
  lasts: must(minutes, 'how long, like 45 min'),
  what: must(name, 'what it is: delivery to the customer'),
  hands: may(ids, 'who takes part; all if left out'),
  brings: may(ids, 'pieces that come to the shop with it'),
  takes: may(ids, 'pieces that leave the shop with it: each is wanted by its beginning'),
});

/** `everyone`: ids of all hands, who take part where none is named. */
export function appointmentOf(doc: ValueOf<typeof appointment>, everyone: readonly string[]): Appointment {
  return {
    start: doc.at,
    end: doc.at + doc.lasts,
    what: doc.what,
    hands: doc.hands ?? everyone,
    brings: doc.brings ?? [],
    takes: doc.takes ?? [],
  };
}
