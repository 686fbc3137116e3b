import { createHash } from 'node:crypto';

// A line is {"sum":"<16 hex>",<rest>. The sum is of the sum before it and the rest as it stands, byte for byte: it
// catches a changed line, and a lost or moved one as well.
/** How every line begins, and nothing within one: quotes in a text are written with a backslash. */
export const OPENING = '{"sum":"';
const AFTER_SUM = '",';
const SUM_DIGITS = 16;
const PREFIX_BYTES = OPENING.length + SUM_DIGITS + AFTER_SUM.length;

/** The sum before the first line. */
export const FIRST_SUM = '0'.repeat(SUM_DIGITS);

/** No line is longer, in bytes. */
export const LONGEST_LINE = 65_536;

function sumOf(previous: string, rest: Uint8Array): string {
  return createHash('sha256').update(previous).update(rest).digest('hex').slice(0, SUM_DIGITS);
}

/** One record as a line with its newline, and its sum for the next one. */
export function writeLine(previous: string, record: object): { readonly line: string; readonly sum: string } {
  const rest = JSON.stringify(record).slice(1);
  const sum = sumOf(previous, Buffer.from(rest, 'utf8'));
  const line = `${OPENING}${sum}${AFTER_SUM}${rest}\n`;
  if (Buffer.byteLength(line) > LONGEST_LINE)
    throw new RangeError(`a record of the journal is longer than ${LONGEST_LINE} bytes`);
  return { line, sum };
}

/** The sum that a line states, whether it is right or not; undefined where it states none. */
export function statedSum(bytes: Uint8Array): string | undefined {
  const prefix = Buffer.from(bytes.subarray(0, PREFIX_BYTES)).toString('latin1');
  const sum = prefix.slice(OPENING.length, OPENING.length + SUM_DIGITS);
  return prefix === `${OPENING}${sum}${AFTER_SUM}` && /^[0-9a-f]{16}$/.test(sum) ? sum : undefined;
}

const RETURN = 0x0d;

/** A line as it was written: what keeps versions of files may have put CRLF at the ends of lines, and that changes no record. */
function asWritten(bytes: Uint8Array): Uint8Array {
  return bytes.at(-1) === RETURN ? bytes.subarray(0, -1) : bytes;
}

/** The sum that a line would state if it had been written after the one with the sum `previous`. */
export function dueSum(previous: string, bytes: Uint8Array): string {
  return sumOf(previous, asWritten(bytes).subarray(PREFIX_BYTES));
}

/** The record of a line without its newline; undefined where it is not what was once written. */
export function readLine(
  previous: string,
  line: Uint8Array,
): { readonly record: object; readonly sum: string } | undefined {
  const bytes = asWritten(line);
  if (bytes.length <= PREFIX_BYTES || bytes.length > LONGEST_LINE) return undefined;
  const prefix = Buffer.from(bytes.subarray(0, PREFIX_BYTES)).toString('latin1');
  const sum = sumOf(previous, bytes.subarray(PREFIX_BYTES));
  if (prefix !== `${OPENING}${sum}${AFTER_SUM}`) return undefined;
  try {
    const record: unknown = JSON.parse(Buffer.from(bytes).toString('utf8'));
    return typeof record === 'object' && record !== null ? { record, sum } : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
