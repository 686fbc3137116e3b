import { createInterface } from 'node:readline/promises';
import type { Io } from './io.ts';

/**
 * Asks for one of `choices` (shown as they are: make them harmless first) by its number.
 * @returns its index; undefined if the answer is none of them, or the person ended the input.
 */
export async function askWhich(io: Io, question: string, choices: readonly string[]): Promise<number | undefined> {
  const list = choices.map((choice, i) => `${String(i + 1).padStart(4)}  ${choice}`).join('\n');
  io.stderr.write(`${question}\n${list}\n`);
  const reader = createInterface({ input: io.stdin });
  try {
    io.stderr.write(' > ');
    const line = await new Promise<string>((resolve) => {
      reader.once('line', resolve);
      reader.once('close', () => resolve(''));
    });
    const index = /^\d{1,4}$/.test(line.trim()) ? Number(line.trim()) - 1 : -1;
    return index >= 0 && index < choices.length ? index : undefined;
  } finally {
    reader.close();
  }
}
