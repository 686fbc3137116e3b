import type { AirSource } from '../../model/shop.ts';
import { readClock } from '../quantities/clock.ts';
import { read, refuse, type Read } from '../quantities/read.ts';
import { listOf, namedBy, type Named } from '../shapes/collections.ts';
import { may, must, oneOfForms, record } from '../shapes/record.ts';
import { byKind, later, refined, type Remark, type Shape } from '../shapes/shape.ts';
import { written } from '../shapes/text.ts';
import { differenceK, hours, percent, tempC } from './values.ts';
import { worded } from '../../words/worded.ts';

/** Air as shop.yaml states it: records of a logger are named, not yet read. */
export type WrittenAir =
  | { readonly kind: 'csv'; readonly file: string }
  | Exclude<AirSource, { readonly kind: 'series' | 'heated' | 'for-a-while' }>
  | (Omit<Extract<AirSource, { readonly kind: 'heated' }>, 'outdoors'> & { readonly outdoors: WrittenAir });

/** A file of the shop, named from its folder: it can lead nowhere else. */
function readCsvName(text: string): Read<string> {
  const write = worded`write a file of the shop like air/garage.csv`;
  if (text.length > 120 || !text.toLowerCase().endsWith('.csv')) return refuse(worded`is not a CSV file`, write);
  const parts = text.split('/');
  const sound = parts.every(
    (part) => /^[\p{L}\p{N}_ .-]+$/u.test(part) && !part.startsWith('.') && part.trim() === part,
  );
  return sound ? read(text) : refuse(worded`is not a file inside the shop`, write);
}

const csv: Shape<WrittenAir> = refined(
  written({
    wanted: 'a CSV file like air/garage.csv',
    code: 'bad-file-name',
    jsonSchema: { type: 'string', examples: ['air/garage.csv'], pattern: '\\.[cC][sS][vV]$' },
    read: readCsvName,
  }),
  (file) => ({ kind: 'csv', file }),
);

const point = record('the air', {
  temp: must(tempC, 'temperature, like 20 °C'),
  rh: must(percent, 'relative humidity, like 50 %'),
});

const month = record('a month', {
  temp: must(tempC, 'mean temperature, like 5 °C'),
  rh: must(percent, 'mean relative humidity, like 80 %'),
  swing: may(differenceK, 'from the coldest to the warmest hour of a day, like 6 K'),
});

function byClock<T>(curve: readonly Named<number, T>[]): Named<number, T>[] {
  return [...curve].sort((a, b) => a.key - b.key);
}

const dailyCurve = namedBy(readClock, point, 'times of day', 'bad-time-of-day');
const setPoints = namedBy(readClock, tempC, 'times of day', 'bad-time-of-day');

function emptyCurve(wanted: string): Remark {
  return { code: 'wrong-kind', message: worded`${wanted} must stand here`, advice: worded`write ${wanted}` };
}

/** Hours in which a room follows a new set-point where the file names none: common practice, no source. */
const USUAL_LAG_HOURS = 2;

const constant: Shape<WrittenAir> = refined(
  record('constant air', { constant: must(point, 'always the same air') }),
  (doc) => ({ kind: 'constant', tempC: doc.constant.temp, rhPercent: doc.constant.rh }),
);

const daily: Shape<WrittenAir> = refined(
  record('daily air', { daily: must(dailyCurve, 'one day, by time of day') }),
  (doc, here, notes) => {
    if (doc.daily.length === 0) {
      notes.error(here, emptyCurve(worded`at least one time of day`));
      return undefined;
    }
    return {
      kind: 'daily',
      curve: byClock(doc.daily).map((p) => ({ clock: p.key, tempC: p.value.temp, rhPercent: p.value.rh })),
    };
  },
);

const monthly: Shape<WrittenAir> = refined(
  record('monthly air', { monthly: must(listOf(month, 'months'), 'twelve months, January first') }),
  (doc, here, notes) => {
    if (doc.monthly.length !== 12) {
      notes.error(here, {
        code: 'not-twelve-months',
        message: worded`${doc.monthly.length} months stand here`,
        advice: worded`write twelve, January first`,
      });
      return undefined;
    }
    return {
      kind: 'monthly',
      months: doc.monthly.map((m) => ({
        tempC: m.temp,
        rhPercent: m.rh,
        ...(m.swing !== undefined && { swingK: m.swing }),
      })),
    };
  },
);

const heated: Shape<WrittenAir> = refined(
  record('heated air', {
    'heated-from': must(
      later(() => air),
      'the air outdoors',
    ),
    'set-points': must(setPoints, 'temperature from a time of day on'),
    'dried-to': may(percent, 'a drier keeps the room at most this humid'),
    lag: may(hours, 'time in which the room goes 63 % of the way to a new set-point'),
  }),
  (doc, here, notes) => {
    if (doc['set-points'].length === 0) {
      notes.error(here, emptyCurve(worded`at least one set-point`));
      return undefined;
    }
    return {
      kind: 'heated',
      outdoors: doc['heated-from'],
      setPoints: byClock(doc['set-points']).map((p) => ({ clock: p.key, tempC: p.value })),
      lagHours: doc.lag ?? USUAL_LAG_HOURS,
      ...(doc['dried-to'] !== undefined && { driedToRhPercent: doc['dried-to'] }),
    };
  },
);

const keyed = oneOfForms([constant, daily, monthly, heated], {
  code: 'unknown-air',
  message: 'these keys are no form of air',
  advice: 'write one of constant, daily, monthly, heated-from, or a CSV file like air/garage.csv',
});

/** Where the air of a room is known from. */
export const air: Shape<WrittenAir> = byKind(
  { text: csv, map: keyed },
  'a CSV file, or one of constant, daily, monthly, heated-from',
);
