import type { Io } from './io.ts';

export interface Progress {
  readonly say: (text: string) => void;
  /** Takes the line away again. */
  readonly end: () => void;
}

const clearLine = '\r\u001b[K';

/** One line that tells how far work has come, on a person's terminal only; `text` must be harmless. */
export function progressOn({ stderr, env }: Io): Progress {
  if (stderr.isTTY !== true || env['TERM'] === 'dumb') return { say: () => undefined, end: () => undefined };
  return { say: (text) => void stderr.write(clearLine + text), end: () => void stderr.write(clearLine) };
}
