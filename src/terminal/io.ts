import type { Environment } from './colour.ts';
import type { Screen } from './look.ts';
import { runPager } from './run-pager.ts';

export interface Output extends Screen {
  readonly rows?: number | undefined;
  write(text: string): unknown;
}

/** Where answers come from and go to: everything of a running process that a command may touch. */
export interface Io {
  readonly stdin: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly stdout: Output;
  readonly stderr: Output;
  readonly env: Environment;
  /** The folder that the user stands in. */
  readonly folder: string;
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly clock: () => number;
  /** Shows a text in a pager; false if there is no such program. */
  readonly page: (pager: string, text: string) => boolean;
}

/** The process's own; a reader that went away (`| head -1`) ends the writing quietly. */
export function processIo(): Io {
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  return {
    // Opened where it is read.
    get stdin() {
      return process.stdin;
    },
    stdout: process.stdout,
    stderr: process.stderr,
    env: process.env,
    folder: process.cwd(),
    clock: Date.now,
    page: runPager,
  };
}
