import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { counted, worded } from '../words/worded.ts';

/** What was done about one broken file. */
export interface Repaired {
  readonly file: string;
  /** Name that the file as it was is kept under. */
  readonly copy: string;
  /** Records of a journal that stay; absent for a file that was set aside as a whole. */
  readonly kept?: number;
  readonly takenOut?: readonly { readonly line: number; readonly text: string }[];
}

const mostShown = 20;

function journalLines({ file, copy, kept = 0, takenOut = [] }: Repaired, look: Look, show: (t: string) => string) {
  const stay = counted(kept, '{0} record is whole and stays', '{0} records are whole and stay');
  const out = counted(takenOut.length, '{0} line was taken out', '{0} lines were taken out');
  const more = takenOut.length - mostShown;
  return [
    ...paragraph(`${file}: ${stay}, ${out}.`, look),
    ...takenOut
      .slice(0, mostShown)
      .flatMap((t) => paragraph(worded`line ${t.line}: ${show(t.text)}`, look, 2, look.paint.quiet)),
    ...(more > 0 ? [worded`  and ${more} more`] : []),
    ...paragraph(
      worded`The journal as it was is kept in ${copy}. Enter again what was taken out and did happen.`,
      look,
      2,
    ),
  ];
}

/** What `check --repair` did, file by file. `show` makes the text of a file harmless. */
export function repairScreen(repairs: readonly Repaired[], look: Look, show: (text: string) => string): string {
  if (repairs.length === 0) return worded`Nothing that Drybench itself wrote needs repair.\n`;
  const lines = repairs.flatMap((repair) =>
    repair.takenOut === undefined
      ? paragraph(worded`${repair.file} cannot be read and is set aside, as ${repair.copy}. It is made anew.`, look)
      : journalLines(repair, look, show),
  );
  return `${lines.join('\n')}\n`;
}
