/** One field of a line, unquoted and trimmed, and where in the line it begins (counted from 0). */
export interface Cell {
  readonly text: string;
  readonly column: number;
}

const delimiters = [';', '\t', ','] as const;
export type Delimiter = (typeof delimiters)[number];

/** The delimiter that parts a heading into most columns; of equals semicolon before tab before comma. */
export function delimiterOf(heading: string): Delimiter {
  const counts = delimiters.map((d) => splitLine(heading, d).length);
  return delimiters[counts.indexOf(Math.max(...counts))] ?? ',';
}

/** Splits one line; a field in double quotes may hold the delimiter, and a quote if doubled (RFC 4180). */
export function splitLine(line: string, delimiter: Delimiter): readonly Cell[] {
  const cells: Cell[] = [];
  let begin = 0;
  let quoted = false;
  for (let i = 0; i <= line.length; i += 1) {
    if (line[i] === '"') quoted = !quoted;
    if (i < line.length && (quoted || line[i] !== delimiter)) continue;
    const raw = line.slice(begin, i);
    const text = raw
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .replaceAll('""', '"')
      .trim();
    cells.push({ text, column: begin + raw.length - raw.trimStart().length });
    begin = i + 1;
  }
  return cells;
}

/** A number with a decimal point or comma and perhaps its unit behind it; undefined if it is none. */
export function readNumber(text: string): number | undefined {
  const match = /^([+\-−]?)(\d{1,6})(?:[.,](\d{1,9}))?\s*(?:°?[CF]|%|℃|℉)?$/i.exec(text);
  if (match === null) return undefined;
  const value = Number(`${match[2] ?? '0'}.${match[3] ?? '0'}`);
  return match[1] === '-' || match[1] === '−' ? -value : value;
}

/** The unit that stands behind a temperature; undefined if none does. */
export function tempUnit(text: string): 'C' | 'F' | undefined {
  const unit = /\d\s*(?:(?:°\s*)?([CF])|(℃|℉))$/i.exec(text);
  if (unit === null) return undefined;
  return unit[1]?.toUpperCase() === 'F' || unit[2] === '℉' ? 'F' : 'C';
}

/** What loggers write where they have no reading. */
export function isBlank(text: string): boolean {
  return /^(|-+|n\/?a|nan|null|none)$/i.test(text);
}
