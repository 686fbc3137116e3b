import { cut } from './layout.ts';
import type { Look } from './look.ts';
import { worded } from '../words/worded.ts';

function painted(line: string, look: Look): string {
  if (/^(---|\+\+\+|rename|Binary) /.test(line)) return look.paint.strong(line);
  if (line.startsWith('@@ ')) return look.paint.quiet(line);
  if (line.startsWith('+')) return look.paint.good(line);
  return line.startsWith('-') ? look.paint.bad(line) : line;
}

/**
 * A unified diff line by line, each harmless by `show`. `whole`: as it is, for a file or another program; else lines are cut to
 * the screen. Tabs and carriage returns at the end of a line are shown as the space that they take.
 */
export function diffScreen(diff: string, look: Look, show: (text: string) => string, whole: boolean): string {
  if (diff === '') return worded`Nothing would be written.\n`;
  const lines = diff.replace(/\n$/, '').split('\n');
  const most = 4 * look.columns;
  return lines
    .map((written) => {
      const line = written.replace(/\r$/, '').replaceAll('\t', '  ');
      return painted(whole ? show(line) : cut(show(line.slice(0, most)), look.columns, look), look) + '\n';
    })
    .join('');
}
