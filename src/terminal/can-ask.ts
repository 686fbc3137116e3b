import type { Io } from './io.ts';

/** Can a person be asked? */
export function canAsk(io: Io): boolean {
  return io.stdin.isTTY === true && io.stderr.isTTY === true;
}
