import { stationKinds } from '../../model/shop.ts';
import { marks } from '../../model/mark.ts';
import { localDay, readTime } from '../../time/zone.ts';
import type { Minute } from '../../time/span.ts';
import { readAmount, readContainerPrice } from '../quantities/amount-bought.ts';
import { readHours, readMinutes } from '../quantities/duration.ts';
import {
  readActivationKJPerMol,
  readAreaM2,
  readLengthMm,
  readPercent,
  readRoomM3,
  readSolventGPerL,
} from '../quantities/measure.ts';
import { readMoneyMinor } from '../quantities/money.ts';
import { decimalReader, readId, readYesNo, wholeReader } from '../quantities/plain.ts';
import { read, refuse } from '../quantities/read.ts';
import { readStepLink } from '../quantities/step-link.ts';
import { readDifferenceK, readTempC } from '../quantities/temperature.ts';
import { oneOrMany } from '../shapes/collections.ts';
import { refined, type Shape } from '../shapes/shape.ts';
import { choice, quantity, words, written } from '../shapes/text.ts';
import { worded } from '../../words/worded.ts';

/** A number, and its unit behind it. */
const WITH_UNIT = '\\d.*[^\\d\\s./]';

export const name = words(120);
export const sentence = words(2000);
export const id = quantity('an id', 'bad-id', readId, 'front-door', '^[a-z0-9]+(-[a-z0-9]+)*$');
export const minutes = quantity('a length of time', 'bad-duration', readMinutes, '45 min', WITH_UNIT);
export const hours = quantity('a length of time', 'bad-duration', readHours, '2 h', WITH_UNIT);
export const lengthMm = quantity('a length', 'bad-length', readLengthMm, '19 mm', WITH_UNIT);
export const areaM2 = quantity('an area', 'bad-area', readAreaM2, '0.9 m2', WITH_UNIT);
export const roomM3 = quantity('the volume of a room', 'bad-volume', readRoomM3, '90 m3', WITH_UNIT);
export const tempC = quantity('a temperature', 'bad-temperature', readTempC, '18 °C', WITH_UNIT);
export const differenceK = quantity('a difference of temperature', 'bad-difference', readDifferenceK, '3 K', WITH_UNIT);
export const percent = quantity('a share', 'bad-percent', readPercent, '65 %', WITH_UNIT);
export const activation = quantity(
  'an activation energy',
  'bad-activation',
  readActivationKJPerMol,
  '50 kJ/mol',
  WITH_UNIT,
);
export const solvent = quantity('a content of solvent', 'bad-solvent', readSolventGPerL, '350 g/L', WITH_UNIT);

export const yesNo = written({
  wanted: 'yes or no',
  code: 'bad-yes-no',
  jsonSchema: { type: ['string', 'boolean'], enum: ['yes', 'no', true, false] },
  read: readYesNo,
});

/** What is left out where it is not so. */
export const yes = refined(yesNo, (value, node, notes) => {
  if (!value) notes.error(node, { code: 'bad-yes-no', message: worded`only yes can stand here` });
  return value || undefined;
});

/** A whole number from `least` to `most`. */
export function whole(least: number, most: number): Shape<number> {
  return written({
    wanted: () => worded`a whole number from ${least} to ${most}`,
    code: 'bad-number',
    jsonSchema: { type: ['number', 'string'] },
    read: wholeReader(least, most),
  });
}

export function decimal(least: number, most: number): Shape<number> {
  return written({
    wanted: () => worded`a number from ${least} to ${most}`,
    code: 'bad-number',
    jsonSchema: { type: ['number', 'string'] },
    read: decimalReader(least, most),
  });
}

export const money: Shape<number> = written({
  wanted: 'an amount of money like 240 EUR',
  code: 'bad-money',
  jsonSchema: { type: 'string', maxLength: 64, examples: ['240 EUR'] },
  read: (text, notes) => readMoneyMinor(text, notes.currency),
});

/** What is bought: litres, metres, or a number of pieces. */
export const amount = written({
  wanted: 'an amount like 2.5 L, 50 m, or a number of pieces',
  code: 'bad-amount',
  jsonSchema: { type: ['string', 'number'], examples: ['2.5 L', '50 m'] },
  read: readAmount,
});

export const containerPrice = written({
  wanted: 'the price of a container, like 38 EUR for 1 L',
  code: 'bad-price',
  jsonSchema: { type: 'string', maxLength: 64, examples: ['38 EUR for 1 L'] },
  read: (text, notes) => readContainerPrice(text, notes.currency),
});

export const mark = choice('a dry mark', marks);
export const stations = oneOrMany(choice('a kind of station', stationKinds), 'kinds of station');
export const links = oneOrMany(quantity('a step', 'bad-step-link', readStepLink, 'legs/stain @ tape'), 'steps');
export const ids = oneOrMany(id, 'ids');

/** A date, or a date and time, on the shop's wall clock. A date alone is its first minute, its last, or the end of it. */
export function instant(dateMeans: 'first' | 'last' | 'end'): Shape<Minute> {
  const text = written({
    wanted: 'a date like 2027-01-16 or a time like 2027-01-16T17:00',
    code: 'bad-time',
    jsonSchema: {
      type: 'string',
      maxLength: 40,
      pattern: '^\\d{4}-\\d{2}-\\d{2}',
      examples: ['2027-01-16', '2027-01-16T17:00'],
    },
    read: (text, notes) => {
      const time = readTime(text, notes.zone);
      return time.ok ? read(time) : refuse(worded`cannot be read as a time`, time.why);
    },
  });
  return refined(text, (time, here, notes) => {
    if (time.notice !== undefined) notes.warn(here, { code: 'time-shown-twice', message: time.notice });
    if (!time.dateOnly || dateMeans === 'first') return time.minute;
    return localDay(time.minute, notes.zone).end - (dateMeans === 'last' ? 1 : 0);
  });
}
