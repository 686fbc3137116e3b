/** Colours a text, or leaves it. */
export type Paint = (text: string) => string;

/** How a screen looks where it is read. */
export interface Look {
  /** Width of the screen; Infinity in a pipe or a file, where each line is read by itself. */
  readonly columns: number;
  /** Width of what is drawn, in a pipe as well. */
  readonly pictureColumns: number;
  /** Only ASCII signs of our own. */
  readonly ascii: boolean;
  readonly paint: {
    readonly strong: Paint;
    readonly quiet: Paint;
    readonly good: Paint;
    readonly warn: Paint;
    readonly bad: Paint;
  };
  /** Columns that a text takes. */
  readonly widthOf: (text: string) => number;
  /** A text as what a reader takes for single characters. */
  readonly graphemes: (text: string) => string[];
}

/** Is each line read by itself? Then it is a whole record, however long, and says all that a screen has said above it. */
export function isByLine(look: Look): boolean {
  return look.columns === Infinity;
}

/** What stands on the first of lines that go together; to a reader by line, on each. */
export function saidOnce(text: string, index: number, look: Look): string {
  return index === 0 || isByLine(look) ? text : '';
}

/** How many of a list are shown where a screen has room for `count`; to a reader by line, all. */
export function mostShown(count: number, look: Look): number {
  return isByLine(look) ? Infinity : count;
}

const inAscii: Readonly<Record<string, string>> = {
  '–': '-',
  '—': '-',
  '…': '...',
  '·': ',',
  '°': 'deg ',
  '²': '2',
  '³': '3',
  '×': 'x',
  '−': '-',
  '→': '>',
  '’': "'",
  '“': '"',
  '”': '"',
  '≤': '<=',
  '≥': '>=',
};

/** Our own signs in ASCII where the look asks for it; letters of names stay. */
export function signs(text: string, look: Look): string {
  if (!look.ascii) return text;
  return text.replaceAll(' ·', ',').replace(/[–—…·°²³×−→’“”≤≥]/g, (sign) => inAscii[sign] ?? sign);
}
