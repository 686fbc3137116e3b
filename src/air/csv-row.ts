import type { Finding } from '../model/finding.ts';
import type { AirSample } from '../model/shop.ts';
import type { Minute } from '../time/span.ts';
import type { Columns } from './csv-columns.ts';
import { isBlank, readNumber, tempUnit, type Cell } from './csv-lines.ts';
import type { StampReader } from './csv-stamp.ts';
import { worded } from '../words/worded.ts';

/** Something wrong at one field of a row; `column` counts from 0. */
export interface Fault {
  readonly severity: Finding['severity'];
  readonly code: string;
  readonly message: string;
  readonly advice: string;
  readonly column: number;
}

/** A row that is left out without a `fault` has no reading. */
export interface Row {
  readonly sample?: AirSample;
  /** The row itself says whether its temperature is °C or °F. */
  readonly namesUnit?: boolean;
  readonly fault?: Fault;
}

/** Air outside of these is a fault of the sensor or of the column, not weather. */
const LEAST_TEMP_C = -60;
const MOST_TEMP_C = 80;
/** Sensors overshoot a little at saturation: up to this is taken as 100 %. */
const MOST_RH_PERCENT = 105;

/** Reads one row. `before` is the minute of the row above, which tells the two passes of a repeated hour apart. */
export function readRow(
  cells: readonly Cell[],
  columns: Columns,
  readStamp: StampReader,
  before: Minute | undefined,
): Row {
  const cellAt = (index: number): Cell => cells[index] ?? { text: '', column: 0 };
  const fault = (column: number, code: string, message: string, advice: string): Row => ({
    fault: { severity: 'error', code, message, advice, column: cellAt(column).column },
  });
  const [first] = columns.time;
  const written = columns.time.map((i) => cellAt(i).text).join(' ');
  const time = readStamp(written, before);
  if (!time.ok) {
    if (time.skipped) {
      const column = cellAt(first).column;
      const advice = worded`a logger that keeps winter time needs stamps with an offset, e.g. 2027-07-11T07:00+00:00`;
      const message = worded`"${written}" does not exist on this clock; the row was left out`;
      return { fault: { severity: 'warning', code: 'air-skipped-hour', message, advice, column } };
    }
    return fault(
      first,
      'air-time',
      worded`"${written}" is no time: ${time.why}`,
      worded`write a time like 2027-01-11T07:30`,
    );
  }
  const tempText = cellAt(columns.temp).text;
  const rhText = cellAt(columns.rh).text;
  if (isBlank(tempText) || isBlank(rhText)) return {};
  const temp = readNumber(tempText);
  if (temp === undefined)
    return fault(columns.temp, 'air-number', worded`"${tempText}" is no temperature`, worded`write a number like 8.5`);
  const unit = tempUnit(tempText);
  const fahrenheit = unit === undefined ? columns.fahrenheit : unit === 'F';
  const tempC = fahrenheit ? ((temp - 32) * 5) / 9 : temp;
  if (tempC < LEAST_TEMP_C || tempC > MOST_TEMP_C)
    return fault(
      columns.temp,
      'air-range',
      worded`no room has ${String(temp)} °${fahrenheit ? 'F' : 'C'}`,
      worded`is it °F?`,
    );
  const rh = readNumber(rhText);
  if (rh === undefined)
    return fault(columns.rh, 'air-number', worded`"${rhText}" is no humidity`, worded`write a number like 82`);
  if (rh < 0 || rh > MOST_RH_PERCENT)
    return fault(
      columns.rh,
      'air-range',
      worded`humidity of ${rhText} is outside 0 to 100 %`,
      worded`write percent, e.g. 82`,
    );
  return { sample: { minute: time.minute, tempC, rhPercent: Math.min(100, rh) }, namesUnit: unit !== undefined };
}
