import type { Finding, Place } from '../model/finding.ts';
import { cut, paragraph } from './layout.ts';
import { signs, type Look } from './look.ts';
import { counted, phrase, translated, worded } from '../words/worded.ts';

const mostShown = 20;
const tab = '  ';

function placeText(place: Place | undefined): string {
  return place === undefined ? '' : `${place.file}:${place.line}:${place.column}: `;
}

/** What is before the caret, as shown: all of it, or of a long line the end behind …. */
function shownBefore(written: readonly string[], room: number, look: Look, show: (text: string) => string): string {
  const third = Math.floor(room / 3);
  const whole = show(written.join(''));
  if (look.widthOf(whole) <= Math.max(room - 20, third)) return whole;
  const more = signs('…', look);
  let shown = '';
  for (let from = written.length - 1; from >= 0; from -= 1) {
    const longer = show(written.slice(from).join(''));
    if (look.widthOf(more + longer) > third) break;
    shown = longer;
  }
  return more + shown;
}

/** So many columns stand before the number of a line, and between it and the line. */
const mark = '  > ';
const gap = '  ';

/**
 * The line as it stands with the ones around it, each behind its number: the line itself is marked, and a caret stands under
 * the place. A long line is shown from near the caret on.
 * `harmless` works on what stands before the caret by itself, so that the caret stays right.
 */
function frame(place: Place, look: Look, harmless: (text: string) => string): string[] {
  const show = (written: string) => signs(harmless(written), look);
  const { line, column, text = '', before, after } = place;
  const digits = String(line + (after === undefined ? 0 : 1)).length;
  const head = (number: number | string, sign = '') => sign.padEnd(mark.length) + `${number}`.padStart(digits) + gap;
  const room = look.pictureColumns - mark.length - digits - gap.length;
  const around = (number: number, other: string | undefined) =>
    other === undefined
      ? []
      : [look.paint.quiet((head(number) + cut(show(other.replaceAll('\t', tab)), room, look)).trimEnd())];
  const written = Array.from(text);
  const untabbed = (part: readonly string[]) => Array.from(part.join('').replaceAll('\t', tab));
  const lead = shownBefore(untabbed(written.slice(0, column - 1)), room, look, show);
  const rest = show(untabbed(written.slice(column - 1, column - 1 + room)).join(''));
  return [
    ...around(line - 1, before),
    head(line, mark) + cut(lead + rest, room, look),
    head('') + ' '.repeat(look.widthOf(lead)) + look.paint.bad('^'),
    ...around(line + 1, after),
  ];
}

const severityWords = { error: phrase('error'), warning: phrase('warning') };

function findingLines(finding: Finding, look: Look, show: (text: string) => string): string[] {
  const { place, severity, message, advice } = finding;
  const paint = severity === 'error' ? look.paint.bad : look.paint.warn;
  return [
    ...paragraph(show(`${placeText(place)}${translated(severityWords[severity])}: ${message}`), look, 0, paint, 2),
    ...(place?.text === undefined ? [] : frame(place, look, show)),
    ...(advice === undefined ? [] : paragraph(show(advice), look, 2)),
  ];
}

/** `2 errors, 1 warning` */
export function countFindings(findings: readonly Finding[]): string {
  const errors = findings.filter((f) => f.severity === 'error').length;
  const warnings = findings.length - errors;
  return `${counted(errors, '{0} error', '{0} errors')}, ${counted(warnings, '{0} warning', '{0} warnings')}`;
}

function order(a: Finding, b: Finding): number {
  const severity = (f: Finding) => (f.severity === 'error' ? 0 : 1);
  const file = (f: Finding) => f.place?.file ?? '';
  if (severity(a) !== severity(b)) return severity(a) - severity(b);
  if (file(a) !== file(b)) return file(a) < file(b) ? -1 : 1;
  return (a.place?.line ?? 0) - (b.place?.line ?? 0) || (a.place?.column ?? 0) - (b.place?.column ?? 0);
}

/** Findings, errors first, then by place; the first twenty in full. Their texts come as written: `show` tames them. */
export function findingsScreen(findings: readonly Finding[], look: Look, show: (text: string) => string): string {
  const sorted = findings.toSorted(order);
  const more = sorted.length - mostShown;
  return sorted
    .slice(0, mostShown)
    .map((f) => findingLines(f, look, show).join('\n') + '\n')
    .concat(more > 0 ? [worded`and ${more} more: mend these first, then drybench check tells of them\n`] : [])
    .join('\n');
}
