import { createInterface } from 'node:readline';
import type { Io } from './io.ts';

/** The person ended the questions before the last of them: with Ctrl-C, or by ending the input. */
export class Ended extends Error {}

/** Questions and answers, one line each. Questions go to standard error: answers of commands go elsewhere. */
export interface Dialogue {
  /** Writes lines for the person to read; they must be harmless. */
  say(text: string): void;
  /** Asks, and waits for a line. @throws Ended */
  ask(prompt: string): Promise<string>;
  close(): void;
}

export function openDialogue({ stdin, stderr }: Io): Dialogue {
  const reader = createInterface({ input: stdin });
  const lines: string[] = [];
  let waiting: { readonly take: (line: string) => void; readonly end: () => void } | undefined;
  let ended = false;

  reader.on('line', (line) => {
    const asked = waiting;
    // Lines that were typed ahead come faster than they are asked for.
    waiting = undefined;
    if (asked === undefined) lines.push(line);
    else asked.take(line);
  });
  const end = () => {
    ended = true;
    waiting?.end();
  };
  reader.on('close', end);
  process.on('SIGINT', end);

  return {
    say: (text) => void stderr.write(`${text}\n`),
    ask: async (prompt) => {
      stderr.write(prompt);
      const ready = lines.shift();
      if (ready !== undefined) return ready;
      if (ended) throw new Ended();
      return new Promise<string>((resolve, reject) => {
        waiting = {
          take: resolve,
          end: () => {
            reject(new Ended());
          },
        };
      });
    },
    close: () => {
      process.off('SIGINT', end);
      reader.off('close', end).close();
    },
  };
}
