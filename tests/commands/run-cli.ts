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
  readonly rows?: number;
  /** Told of what goes to the pager; absent: there is no such program. */
  readonly onPage?: (pager: string, text: string) => void;
  readonly folder?: string;
  /** What a person types, line by line; only with a terminal. */
  readonly typed?: string;
  /** Told of each answer as it is written, for a command that goes on. */
  readonly onOut?: (text: string) => void;
  /** By how much the clock has gone on each time that it is looked at; else it stands. */
  readonly tickMs?: number;
}

/** Runs one command in this process, and catches what it writes. The clock begins at 2027-01-11T07:30Z. */
export async function drybench(words: readonly string[], surroundings: Surroundings = {}): Promise<Ran> {
  let out = '';
  let err = '';
  let looks = 0;
  const { isTTY = false, columns } = surroundings;
  const screen = { isTTY, columns, rows: surroundings.rows };
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
    clock: () => Date.UTC(2027, 0, 11, 7, 30) + (surroundings.tickMs ?? 0) * looks++,
    page: (pager, text) => {
      surroundings.onPage?.(pager, text);
      return surroundings.onPage !== undefined;
    },
  });
  return { code, out, err };
}
