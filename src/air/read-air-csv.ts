import type { Finding, Place } from '../model/finding.ts';
import type { AirSample } from '../model/shop.ts';
import { findColumns, type Columns } from './csv-columns.ts';
import { delimiterOf, splitLine, type Delimiter } from './csv-lines.ts';
import { readRow } from './csv-row.ts';
import { stampReader } from './csv-stamp.ts';
import { LONGEST_BRIDGE_MINUTES } from './fill-record.ts';
import { phrase, translated, worded } from '../words/worded.ts';

/** A file with more faults than this is the wrong file. */
const MOST_ERRORS = 20;
/** More warnings than this tell nothing new. */
const MOST_WARNINGS = 50;
/** A reading each minute for five months; what is longer is refused before any of it is read. */
const MOST_ROWS = 220_000;
/** No reading stands further right; what is longer is no record of air. */
const LONGEST_LINE = 1000;
const LONGEST_LINE_SHOWN = 400;
const HEADING_ADVICE = phrase(
  'begin with a heading like time,temp_c,rh and go on with rows like 2027-01-11T07:00,8.5,82',
);

export interface ReadAir {
  /** In order of time, no minute twice. */
  readonly samples: readonly AirSample[];
  readonly findings: readonly Finding[];
}

/** Puts a finding at a line and column, both counted from 0. */
type Tell = (
  severity: Finding['severity'],
  code: string,
  message: string,
  advice: string,
  line: number,
  column?: number,
) => void;

/**
 * Reads a logger's record or a forecast: a heading with a time, a temperature and a humidity column, then one row a
 * reading. Columns are parted by comma, semicolon or tab; decimals by point or comma. °F is what the heading or the
 * number itself says is °F. Times without an offset are on the wall clock of `timeZone`; where the autumn change repeats an hour, rows
 * in order are read as its first and then its second pass.
 *
 * A bad row is left out with an error; what was put right is told with a warning. `name` is the file's, for the places.
 */
export function readAirCsv(text: string, timeZone: string, name: string): ReadAir {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const findings: Finding[] = [];
  let warnings = 0;
  const tell: Tell = (severity, code, message, advice, line, column = 0) => {
    if (severity === 'warning' && warnings >= MOST_WARNINGS) return;
    if (severity === 'warning') warnings += 1;
    const place: Place = { file: name, line: line + 1, column: column + 1, ...shownAround(lines, line) };
    findings.push({ code, severity, message, advice, place });
  };
  const heading = lines.findIndex((line) => !isRemark(line));
  const headed = readHeading(lines[heading], heading, tell);
  if (headed === undefined) return { samples: [], findings };
  const samples = readRows(lines, heading, headed, timeZone, tell);
  if (samples.length > 0 && samples.every((s) => s.rhPercent <= 1))
    tell(
      'error',
      'air-range',
      worded`every humidity is 1 or less`,
      worded`write humidity in percent, not as a fraction`,
      heading,
    );
  if (samples.length === 0 && findings.length === 0)
    tell('error', 'air-empty', worded`there is a heading but no reading`, translated(HEADING_ADVICE), heading);
  return { samples, findings };
}

/** A line with the ones around it, as far as they are shown; behind the last line break there is no line. */
function shownAround(lines: readonly string[], line: number): Pick<Place, 'text' | 'before' | 'after'> {
  const shown = (index: number) => lines[index]?.slice(0, LONGEST_LINE_SHOWN);
  const [before, after] = [shown(line - 1), shown(line + 1)];
  const isEnd = line + 1 === lines.length - 1 && after === '';
  return {
    text: shown(line) ?? '',
    ...(before !== undefined && { before }),
    ...(after !== undefined && !isEnd && { after }),
  };
}

function isRemark(line: string): boolean {
  return line.trim() === '' || line.trimStart().startsWith('#');
}

interface Headed {
  readonly columns: Columns;
  readonly delimiter: Delimiter;
  /** Where in its line the heading of the temperature begins. */
  readonly tempColumn: number;
}

function readHeading(line: string | undefined, number: number, tell: Tell): Headed | undefined {
  if (line === undefined) {
    tell('error', 'air-empty', worded`the file holds nothing`, translated(HEADING_ADVICE), 0);
    return undefined;
  }
  const delimiter = delimiterOf(line.slice(0, LONGEST_LINE));
  const cells = splitLine(line.slice(0, LONGEST_LINE), delimiter);
  const found = findColumns(cells.map((cell) => cell.text));
  if (!found.ok) {
    const missing = found.missing.map(translated).join(worded`, no `);
    tell('error', 'air-heading', worded`the heading names no ${missing} column`, translated(HEADING_ADVICE), number);
    return undefined;
  }
  const tempColumn = cells[found.columns.temp]?.column ?? 0;
  return { columns: found.columns, delimiter, tempColumn };
}

interface Numbered extends AirSample {
  readonly line: number;
}

function readRows(
  lines: readonly string[],
  heading: number,
  { columns, delimiter, tempColumn }: Headed,
  timeZone: string,
  tell: Tell,
): readonly AirSample[] {
  if (lines.length - heading - 1 > MOST_ROWS && lines.filter((l) => !isRemark(l)).length - 1 > MOST_ROWS) {
    tell('error', 'air-too-long', worded`more than ${MOST_ROWS} rows`, worded`keep the weeks that matter`, heading);
    return [];
  }
  const byMinute = new Map<number, Numbered>();
  const readStamp = stampReader(columns.utc ? 'UTC' : timeZone);
  let before: number | undefined;
  let errors = 0;
  let rows = 0;
  let blanks = 0;
  let unitless = 0;
  for (const [line, written] of lines.entries()) {
    if (line <= heading || isRemark(written)) continue;
    rows += 1;
    const { sample, namesUnit, fault } = readRow(
      splitLine(written.slice(0, LONGEST_LINE), delimiter),
      columns,
      readStamp,
      before,
    );
    if (fault !== undefined) {
      tell(fault.severity, fault.code, fault.message, fault.advice, line, fault.column);
      if (fault.severity === 'error') errors += 1;
      if (errors < MOST_ERRORS) continue;
      tell(
        'error',
        'air-too-many-faults',
        worded`too many faults: the rest was not read`,
        translated(HEADING_ADVICE),
        line,
      );
      break;
    }
    if (sample === undefined) {
      blanks += 1;
      continue;
    }
    if (namesUnit !== true) unitless += 1;
    const same = byMinute.get(sample.minute);
    if (same !== undefined && (same.tempC !== sample.tempC || same.rhPercent !== sample.rhPercent)) {
      const message = worded`line ${same.line + 1} has the same time with another reading; this one was taken`;
      tell('warning', 'air-repeated', message, worded`give each time one row`, line);
    }
    byMinute.set(sample.minute, { ...sample, line });
    before = sample.minute;
  }
  if (columns.guessedUnit && unitless > 0) {
    const advice = worded`write °C or °F into the heading, e.g. temp_c`;
    tell(
      'warning',
      'air-unit',
      worded`nothing names the unit of temperature: °C was taken`,
      advice,
      heading,
      tempColumn,
    );
  }
  if (blanks > 0)
    tell(
      'warning',
      'air-blank',
      worded`${blanks} of ${rows} rows have no reading`,
      worded`they are filled as holes`,
      heading,
    );
  const ordered = [...byMinute.values()].sort((a, b) => a.minute - b.minute);
  tellHoles(ordered, tell);
  return ordered.map(({ minute, tempC, rhPercent }) => ({ minute, tempC, rhPercent }));
}

function tellHoles(samples: readonly Numbered[], tell: Tell): void {
  for (const [i, sample] of samples.entries()) {
    const next = samples[i + 1];
    if (next === undefined || next.minute - sample.minute <= LONGEST_BRIDGE_MINUTES) continue;
    const message = worded`nothing on record for ${((next.minute - sample.minute) / 60).toFixed(1)} h before this row`;
    tell('warning', 'air-hole', message, worded`the same hours of the nearest day stand in`, next.line);
  }
}
