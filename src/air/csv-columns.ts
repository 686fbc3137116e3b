import { phrase } from '../words/worded.ts';
/** Which column of a record holds what, counted from 0. */
export interface Columns {
  /** One column, or a date and a time apart. */
  readonly time: readonly [number] | readonly [number, number];
  readonly utc: boolean;
  readonly temp: number;
  readonly fahrenheit: boolean;
  /** The heading named no unit of temperature. */
  readonly guessedUnit: boolean;
  readonly rh: number;
}

export type FindColumns =
  | { readonly ok: true; readonly columns: Columns }
  | { readonly ok: false; readonly missing: readonly ('time' | 'temperature' | 'humidity')[] };

/** `Temp_C`, `TempC` and `temp (°C)` all give `temp`, `c`. */
function wordsOf(name: string): readonly string[] {
  return name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll('℃', ' c ')
    .replaceAll('℉', ' f ')
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '');
}

const timeWords = ['time', 'datetime', 'timestamp', 'stamp', 'when', 'utc'];
const tempWords = ['temp', 'temperature', 'tempc', 'tempf', 't', 'celsius', 'fahrenheit'];
const rhWords = ['rh', 'humidity', 'hum', 'relhum'];
/** A dew point or an absolute humidity is not what is looked for. */
const otherWords = ['dew', 'dewpoint', 'point', 'wet', 'feels', 'apparent', 'surface', 'absolute', 'specific'];

/** Finds the columns by the common names, in any case, with or without a unit; of several the first. */
export function findColumns(names: readonly string[]): FindColumns {
  const headings = names.map(wordsOf);
  const find = (wanted: readonly string[]): number =>
    headings.findIndex((words) => words.some((w) => wanted.includes(w)) && !words.some((w) => otherWords.includes(w)));
  const time = find(timeWords);
  const date = find(['date', 'day']);
  const temp = find(tempWords);
  const rh = find(rhWords);
  const missing: ('time' | 'temperature' | 'humidity')[] = [];
  if (time < 0 && date < 0) missing.push(phrase('time'));
  if (temp < 0) missing.push(phrase('temperature'));
  if (rh < 0) missing.push(phrase('humidity'));
  if (missing.length > 0) return { ok: false, missing };
  const has = (column: number, ...wanted: string[]): boolean =>
    (headings[column] ?? []).some((word) => wanted.includes(word));
  const fahrenheit = has(temp, 'f', 'fahrenheit', 'tempf', 'degf');
  return {
    ok: true,
    columns: {
      time: time < 0 ? [date] : date < 0 || date === time ? [time] : [date, time],
      utc: has(time, 'utc', 'gmt', 'z'),
      temp,
      fahrenheit,
      guessedUnit: !fahrenheit && !has(temp, 'c', 'celsius', 'tempc', 'degc'),
      rh,
    },
  };
}
