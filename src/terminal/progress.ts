import { toldColumns, usualColumns } from './columns.ts';
import type { Io } from './io.ts';
import { graphemes, widthOf } from './width.ts';

/** How far work has come; nothing of it is shown before the work has taken a while. */
export interface Progress {
  readonly say: (text: string) => void;
  /** For work that has nothing to say, to be called now and then. */
  readonly tick: () => void;
}

/** Work that is done sooner says nothing. */
const PATIENCE_MS = 500;
const clearLine = '\r\u001b[K';

/** As much of `text` as stands on one line: what wraps could not be taken away. */
function onOneLine(text: string, columns: number): string {
  let shown = '';
  for (const grapheme of graphemes(text)) {
    if (widthOf(shown + grapheme) >= columns) break;
    shown += grapheme;
  }
  return shown;
}

interface Line extends Progress {
  /** Takes the line away again. */
  readonly end: () => void;
}

/** One line that tells how far work has come, on a person's terminal only; what is said must be harmless. */
function lineOn({ stderr, env, clock }: Io): Line {
  const nothing = () => undefined;
  if (stderr.isTTY !== true || env['TERM'] === 'dumb') return { say: nothing, tick: nothing, end: nothing };
  const columns = toldColumns(stderr) ?? usualColumns;
  const begun = clock();
  let wanted = '';
  let shown = '';
  const tick = (): void => {
    if (wanted === shown || clock() - begun < PATIENCE_MS) return;
    stderr.write(clearLine + onOneLine(wanted, columns));
    shown = wanted;
  };
  const timer = setTimeout(tick, PATIENCE_MS);
  return {
    say: (text) => {
      wanted = text;
      tick();
    },
    tick,
    end: () => {
      clearTimeout(timer);
      if (shown !== '') stderr.write(clearLine);
    },
  };
}

/** Says `text` while `act` runs, which may say how far it has come. */
export async function whileSaying<T>(io: Io, text: string, act: (progress: Progress) => T | Promise<T>): Promise<T> {
  const { say, tick, end } = lineOn(io);
  say(text);
  try {
    return await act({ say, tick });
  } finally {
    end();
  }
}
