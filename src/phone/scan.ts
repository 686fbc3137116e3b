import { renderUnicodeCompact } from 'uqr';

export interface ScanLook {
  /** Width of the terminal; undefined where output is no terminal. */
  readonly columns: number | undefined;
  /** May colours be set? Then the light parts are forced light: many phones cannot read the reverse. */
  readonly colour: boolean;
  /** Only ASCII may be printed. */
  readonly plain: boolean;
}

// The blocks are the code's light parts.
const WHITE_ON_BLACK = '\u001b[97;40m';
const RESET = '\u001b[0m';

/** A code for a phone's camera, or nothing where it would not fit or could not be read. The URL always stands beside. */
export function scanCode(url: string, look: ScanLook): string {
  if (look.plain || look.columns === undefined) return '';
  const lines = renderUnicodeCompact(url, { border: 2 }).split('\n');
  const widest = Math.max(...lines.map((line) => line.length));
  if (widest > look.columns) return '';
  return lines.map((line) => (look.colour ? `${WHITE_ON_BLACK}${line}${RESET}` : line)).join('\n');
}
