/** Colours a text, or leaves it. */
export type Paint = (text: string) => string;

/** How a screen looks where it is read. */
export interface Look {
  /** Width of the screen. */
  readonly columns: number;
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
