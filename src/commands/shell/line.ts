/** A blank, a quote or a backslash parts words or joins them; all else stands for itself. */
const parts = /\\(.)|'([^']*)('?)|"((?:[^"\\]|\\.)*)("?)|(\s+)|([^\s\\'"]+|\\)/gsu;

/**
 * The words of a line as a shell parts them, without running anything in it. The last one is that which is being typed:
 * empty behind a blank.
 */
export function wordsOf(line: string): readonly string[] {
  const words = [''];
  for (const [, escaped, single, , double, , blank, plain] of line.trimStart().matchAll(parts)) {
    if (blank !== undefined) words.push('');
    else words.push((words.pop() ?? '') + (escaped ?? single ?? double?.replaceAll(/\\(.)/gsu, '$1') ?? plain ?? ''));
  }
  return words;
}
