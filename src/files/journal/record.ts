import { coatFaults, sightings, type Deed, type Entry } from '../../model/journal.ts';
import { isoWriter } from '../../time/iso.ts';
import { marks } from '../../model/mark.ts';
import { jsonNumber, jsonText, jsonTime as time, nodeOfJson } from '../shapes/json.ts';
import { may, must, record, type Fields } from '../shapes/record.ts';
import type { Notes, Shape } from '../shapes/shape.ts';
import { listOf } from '../shapes/collections.ts';
import { choice } from '../shapes/text.ts';
import { yes, yesNo } from '../formats/values.ts';
import { entryOf } from '../yaml/tree.ts';
import { worded } from '../../words/worded.ts';

/** Version of the form of a record. A reader refuses a higher one rather than guess. */
export const JOURNAL_VERSION = 1;

const task = must(jsonText, 'id of the task');
const air = record('air', { tempC: must(jsonNumber, '°C'), rhPercent: must(jsonNumber, '%') });

function deedShape<const F extends Fields>(fields: F) {
  return record('a record', fields, { open: true });
}

function withKind<K extends Deed['kind'], T extends object>(kind: K, shape: Shape<T>) {
  return {
    read(node: Parameters<Shape<T>['read']>[0], notes: Notes) {
      const value = shape.read(node, notes);
      return value === undefined ? undefined : { kind, ...value };
    },
  };
}

const deeds: Readonly<Record<Deed['kind'], Pick<Shape<Deed>, 'read'>>> = {
  done: withKind(
    'done',
    deedShape({
      task,
      from: must(time, 'begun'),
      to: must(time, 'ended'),
      station: may(jsonText, 'where'),
      way: may(jsonText, 'how'),
      hands: may(listOf(jsonText, 'hands'), 'who did it'),
      timed: may(yes, 'the times are as somebody stated them'),
      used: may(jsonNumber, 'how much of its material it took'),
      air: may(air, 'as the meter showed it'),
    }),
  ),
  begun: withKind('begun', deedShape({ task, from: must(time, 'begun') })),
  seen: withKind(
    'seen',
    deedShape({
      task,
      sighting: must(choice('a sighting', sightings), 'what was seen'),
      mark: may(choice('a dry mark', marks), 'that it stands for'),
    }),
  ),
  slipped: withKind('slipped', deedShape({ task, until: must(time, 'not before') })),
  skipped: withKind('skipped', deedShape({ task })),
  repeated: withKind('repeated', deedShape({ task })),
  failed: withKind('failed', deedShape({ task, fault: must(choice('a fault', coatFaults), 'what went wrong') })),
  'lead-test': withKind(
    'lead-test',
    deedShape({ piece: must(jsonText, 'id of the piece'), found: must(yesNo, 'was lead found') }),
  ),
  undo: withKind('undo', deedShape({ entry: must(jsonNumber, 'number of the entry taken back') })),
};

function isKind(kind: string): kind is Deed['kind'] {
  return Object.hasOwn(deeds, kind);
}

const frame = record(
  'a record',
  { n: must(jsonNumber, 'number'), at: must(time, 'when it was written') },
  { open: true },
);

export type ReadRecord =
  { readonly ok: true; readonly entry: Entry } | { readonly ok: false; readonly newer: boolean; readonly why: string };

/** The entry that a record of the journal stands for. */
export function entryOfRecord(data: object): ReadRecord {
  const node = nodeOfJson(data);
  const textAt = (key: string) => {
    const value = entryOf(node, key)?.value;
    return value?.kind === 'text' ? value.text : '';
  };
  if (Number(textAt('v')) > JOURNAL_VERSION) return { ok: false, newer: true, why: worded`has version ${textAt('v')}` };
  let why = worded`is not a record`;
  const notes: Notes = {
    zone: 'UTC',
    currency: 'EUR',
    error: (_, remark) => void (why = remark.message),
    warn: () => undefined,
  };
  const kind = textAt('kind');
  if (!isKind(kind)) return { ok: false, newer: true, why: worded`is of an unknown kind, "${kind.slice(0, 40)}"` };
  const base = frame.read(node, notes);
  const deed = deeds[kind].read(node, notes);
  if (base === undefined || deed === undefined) return { ok: false, newer: false, why };
  return { ok: true, entry: { number: base.n, at: base.at, deed } };
}

/** An entry as a record: times on the wall clock of `zone` with their offset. */
export function recordOfEntry(entry: Entry, zone: string): object {
  const iso = isoWriter(zone);
  const { deed } = entry;
  return {
    v: JOURNAL_VERSION,
    n: entry.number,
    at: iso(entry.at),
    ...deed,
    ...('from' in deed && { from: iso(deed.from) }),
    ...('to' in deed && { to: iso(deed.to) }),
    ...('until' in deed && { until: iso(deed.until) }),
  };
}
