import { Readable } from 'node:stream';
import { run } from '../../src/cli.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface Surroundings {
  readonly env?: Record<string, string>;
  readonly isTTY?: boolean;
  readonly columns?: number;
  readonly folder?: string;
  /** What a person types, line by line; only with a terminal. */
  readonly typed?: string;
  /** Told of each answer as it is written, for a command that goes on. */
  readonly onOut?: (text: string) => void;
}

/** Runs one command in this process, and catches what it writes. The clock stands at 2027-01-11T07:30Z. */
export async function drybench(words: readonly string[], surroundings: Surroundings = {}): Promise<Ran> {
  let out = '';
  let err = '';
  const { isTTY = false, columns } = surroundings;
  const screen = { isTTY, columns };
  const code = await run(words, {
    stdin: Object.assign(Readable.from([surroundings.typed ?? '']), { isTTY }),
    stdout: {
      ...screen,
      write: (text) => {
        out += text;
        surroundings.onOut?.(text);
      },
    },
    stderr: { ...screen, write: (text) => (err += text) },
    env: surroundings.env ?? {},
    folder: surroundings.folder ?? '/',
    clock: () => Date.UTC(2027, 0, 11, 7, 30),
  });
  return { code, out, err };
}
