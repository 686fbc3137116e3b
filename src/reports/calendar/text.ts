/** Longest text of one property, in code points: phones show little of more. */
const LONGEST = 1000;

/** Octets of one line without its end, RFC 5545 section 3.1. */
const LINE_OCTETS = 75;

const lineEnds = /\r\n|[\r\n\u2028\u2029]/gu;
// C0 except the newline, DEL, C1: no calendar text may hold them (RFC 5545 section 3.1, CONTROL).
const controls = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/gu;
const loneSurrogates = /\p{Surrogate}/gu;

/** What a calendar may show of any text: whole characters in NFC, line breaks as `\n`, no control characters. */
export function calendarText(text: string): string {
  const clean = text
    .replace(lineEnds, '\n')
    .replace(/\t/gu, ' ')
    .replace(controls, '')
    .replace(loneSurrogates, '\uFFFD')
    .normalize('NFC');
  const points = Array.from(clean);
  return points.length <= LONGEST ? clean : `${points.slice(0, LONGEST - 1).join('')}…`;
}

/** The value of a TEXT property, RFC 5545 section 3.3.11. */
export function escaped(text: string): string {
  return calendarText(text)
    .replace(/[\\;,]/gu, '\\$&')
    .replaceAll('\n', '\\n');
}

/** Octets of a code point in UTF-8, RFC 3629 section 3. */
function octets(point: string): number {
  const code = point.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}

/** One content line with its end, folded between code points, never inside one (RFC 5545 section 3.1). */
export function folded(line: string): string {
  let text = '';
  let room = LINE_OCTETS;
  for (const point of line) {
    const size = octets(point);
    if (size > room) {
      text += '\r\n ';
      room = LINE_OCTETS - 1;
    }
    text += point;
    room -= size;
  }
  return `${text}\r\n`;
}
