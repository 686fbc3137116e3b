import type { Finding } from '../model/finding.ts';
import type { AirSample } from '../model/shop.ts';
import { recordClock } from './record-time.ts';
import { placeAt, type SourceText } from './source-text.ts';
import { quoted } from './shapes/text.ts';

export interface AirRecord {
  /** In order of time, one a minute at most. */
  readonly samples: readonly AirSample[];
  readonly findings: readonly Finding[];
}

interface Columns {
  readonly separator: string;
  readonly time: number;
  readonly temp: number;
  readonly rh: number;
  readonly fahrenheit: boolean;
}

const MOST_ROWS = 300_000;
const MOST_FINDINGS = 20;
const COLDEST_C = -60;
const HOTTEST_C = 80;

function cells(line: string, separator: string): string[] {
  return line.split(separator).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
}

function columnsOf(header: string): Columns | undefined {
  const [separator = ','] = [';', '\t', ','].filter((s) => header.includes(s));
  const names = cells(header.toLowerCase(), separator);
  const time = names.findIndex((n) => n.startsWith('time') || n.startsWith('date'));
  const temp = names.findIndex((n) => n.startsWith('temp'));
  const rh = names.findIndex((n) => n === 'rh' || n.startsWith('rh-') || n.startsWith('rh ') || n.includes('humid'));
  if (time < 0 || temp < 0 || rh < 0) return undefined;
  const fahrenheit = /(?:^|[^a-z])f(?:[^a-z]|$)|fahrenheit/.test((names[temp] ?? '').slice('temp'.length));
  return { separator, time, temp, rh, fahrenheit };
}

function numberIn(cell: string, decimalComma: boolean): number | undefined {
  const text = decimalComma ? cell.replace(',', '.') : cell;
  return /^[+-]?\d{1,4}(?:\.\d{1,9})?$/.test(text) ? Number(text) : undefined;
}

interface Row {
  readonly offset: number;
  readonly line: string;
}

function* rowsOf(text: string): Generator<Row> {
  let offset = 0;
  while (offset < text.length) {
    const newline = text.indexOf('\n', offset);
    const end = newline < 0 ? text.length : newline;
    const line = text.slice(offset, text[end - 1] === '\r' ? end - 1 : end);
    if (line.trim() !== '' && !line.startsWith('#')) yield { offset, line };
    offset = end + 1;
  }
}

/** What a row says, or what is wrong with it. */
function sampleOf(cellsOfRow: readonly string[], columns: Columns, minute: number | undefined): AirSample | string {
  if (minute === undefined) return `${quoted(cellsOfRow[columns.time] ?? '')} is not a time like 2027-01-11T07:30`;
  const decimalComma = columns.separator !== ',';
  const temp = numberIn(cellsOfRow[columns.temp] ?? '', decimalComma);
  const rhPercent = numberIn(cellsOfRow[columns.rh] ?? '', decimalComma);
  if (temp === undefined) return `${quoted(cellsOfRow[columns.temp] ?? '')} is not a temperature`;
  if (rhPercent === undefined || rhPercent < 0 || rhPercent > 100)
    return `${quoted(cellsOfRow[columns.rh] ?? '')} is not a humidity from 0 to 100`;
  const tempC = columns.fahrenheit ? ((temp - 32) * 5) / 9 : temp;
  if (tempC < COLDEST_C || tempC > HOTTEST_C) return `${temp} is no temperature that a room has`;
  return { minute, tempC, rhPercent };
}

/** A logger's record or a forecast: a first row of names (time, temp-c or temp-f, rh-percent), then a row for each time. */
export function readAirCsv(source: SourceText, zone: string): AirRecord {
  const findings: Finding[] = [];
  const find = (severity: Finding['severity'], code: string, message: string, offset: number, advice?: string) => {
    if (findings.length < MOST_FINDINGS)
      findings.push({
        code,
        severity,
        message,
        place: placeAt(source, offset),
        ...(advice !== undefined && { advice }),
      });
  };
  const rows = rowsOf(source.text);
  const header = rows.next();
  const columns = header.done === true ? undefined : columnsOf(header.value.line.slice(0, 1000));
  if (columns === undefined) {
    find('error', 'bad-air-header', 'the first row does not name the columns', 0, 'write time,temp-c,rh-percent');
    return { samples: [], findings };
  }
  const clock = recordClock(zone);
  const samples: AirSample[] = [];
  let previous = -Infinity;
  let gaps = 0;
  for (const { offset, line } of rows) {
    if (samples.length >= MOST_ROWS) {
      find('error', 'too-big', `the record has more than ${MOST_ROWS} rows`, offset, 'keep the last year of it');
      break;
    }
    const row = cells(line.slice(0, 1000), columns.separator);
    if ((row[columns.temp] ?? '') === '' || (row[columns.rh] ?? '') === '') {
      gaps += 1;
      continue;
    }
    const sample = sampleOf(row, columns, clock(row[columns.time] ?? '', previous));
    if (typeof sample === 'string') find('error', 'bad-air-row', sample, offset);
    else if (sample.minute <= previous)
      find(
        'error',
        'air-out-of-order',
        'this row is not later than the one before it',
        offset,
        'sort the rows by time',
      );
    else {
      samples.push(sample);
      previous = sample.minute;
    }
  }
  if (gaps > 0) find('warning', 'air-gaps', `${gaps} rows without a reading were left out`, 0);
  if (samples.length === 0 && findings.length === 0) find('error', 'empty-file', 'the record has no rows', 0);
  return { samples, findings };
}
