import { flowYaml, textAsYaml } from './write.ts';
import type { Plain } from './tree.ts';

/** A line of a YAML file that explains itself. */
export type CommentedLine =
  /** A comment alone, indented as it is; an empty one is an empty line. */
  | string
  | { readonly indent: number; readonly key: string; readonly value?: Plain; readonly why?: string }
  | { readonly indent: number; readonly item: Plain; readonly why?: string };

/** Comments begin in this column, where the line before them leaves it free. */
const COMMENT_COLUMN = 34;

/** Words of a person or of another file, as a comment may hold them: on one line, nothing that YAML refuses. */
function asComment(text: string): string {
  return `# ${text.replace(/[\p{C}\p{Zl}\p{Zp}]+/gu, ' ').trim()}`;
}

function statement(line: Exclude<CommentedLine, string>): string {
  if ('item' in line) return `- ${flowYaml(line.item)}`;
  const { key, value } = line;
  if (value === undefined) return `${textAsYaml(key)}:`;
  return `${textAsYaml(key)}: ${typeof value === 'string' ? textAsYaml(value) : flowYaml(value)}`;
}

/** The text of a file: values as they must be quoted, comments one below the other. */
export function commentedYaml(lines: readonly CommentedLine[]): string {
  const written = lines.map((line) => {
    if (typeof line === 'string') return line === '' ? '' : line.slice(0, line.search(/\S/)) + asComment(line);
    const said = ' '.repeat(line.indent) + statement(line);
    return line.why === undefined ? said : `${said.padEnd(COMMENT_COLUMN - 2)}  ${asComment(line.why)}`;
  });
  return `${written.join('\n')}\n`;
}
