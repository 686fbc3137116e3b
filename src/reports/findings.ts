import type { Finding, Place } from '../model/finding.ts';
import { cut, paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { counted, phrase, translated, worded } from '../words/worded.ts';

const mostShown = 20;
const indent = 4;
const tab = '  ';

function placeText(place: Place | undefined): string {
  return place === undefined ? '' : `${place.file}:${place.line}:${place.column}: `;
}

/**
 * The line as it stands, and a caret under the place. A long line is shown from near the caret on.
 * `show` makes the text harmless; it works on what stands before the caret by itself, so that the caret stays right.
 */
function frame(place: Place, look: Look, show: (text: string) => string): string[] {
  const written = Array.from((place.text ?? '').replaceAll('\t', tab));
  const tabsBefore = Array.from(place.text ?? '')
    .slice(0, place.column - 1)
    .filter((c) => c === '\t').length;
  const caretAt = Math.max(0, place.column - 1 + tabsBefore * (tab.length - 1));
  const room = look.columns - indent;
  const from = caretAt > room - 20 ? caretAt - Math.floor(room / 3) : 0;
  const before = show(written.slice(from, caretAt).join(''));
  const line = cut(before + show(written.slice(caretAt, caretAt + room).join('')), room, look);
  const blank = ' '.repeat(indent);
  return [blank + line, blank + ' '.repeat(look.widthOf(before)) + look.paint.bad('^')];
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
