import type { Io } from './io.ts';
import { graphemes, widthOf } from './width.ts';

export interface Progress {
  readonly say: (text: string) => void;
  /** Takes the line away again. */
  readonly end: () => void;
}

const clearLine = '\r\u001b[K';
const usualColumns = 80;

/** As much of `text` as stands on one line: what wraps could not be taken away. */
function onOneLine(text: string, columns: number): string {
  let shown = '';
  for (const grapheme of graphemes(text)) {
    if (widthOf(shown + grapheme) >= columns) break;
    shown += grapheme;
  }
  return shown;
}

/** One line that tells how far work has come, on a person's terminal only; `text` must be harmless. */
function progressOn({ stderr, env }: Io): Progress {
  if (stderr.isTTY !== true || env['TERM'] === 'dumb') return { say: () => undefined, end: () => undefined };
  const columns = stderr.columns ?? usualColumns;
  return {
    say: (text) => void stderr.write(clearLine + onOneLine(text, columns)),
    end: () => void stderr.write(clearLine),
  };
}

/** Says `text` while `act` runs, which may say how far it has come. */
export async function whileSaying<T>(io: Io, text: string, act: (say: Progress['say']) => T | Promise<T>): Promise<T> {
  const { say, end } = progressOn(io);
  say(text);
  try {
    return await act(say);
  } finally {
    end();
  }
}
