import type { Io, Output } from '../terminal/io.ts';
import { worded } from '../words/worded.ts';
import { CannotGoOn } from './call.ts';
import { valueIn } from './language.ts';

/** Narrower than this no table is of use. */
const LEAST = 40;
const MOST = 400;

function asWide(screen: Output, columns: number, most = columns): Output {
  const { isTTY, rows } = screen;
  return { isTTY, rows, columns: Math.min(columns, most), write: (text) => screen.write(text) };
}

/**
 * All that asks how wide the screen is, is told what `--width` says, where that is given: a terminal or not. What is taken away again
 * from a terminal's line must stand on that line, so that there the terminal's own width holds as well.
 * @throws CannotGoOn where it is no width.
 */
export function asWideAsAsked(words: readonly string[], io: Io): Io {
  const asked = valueIn(words, '--width');
  if (asked === undefined) return io;
  const columns = /^\d{1,4}$/.test(asked) ? Number(asked) : NaN;
  if (!(columns >= LEAST && columns <= MOST))
    throw new CannotGoOn(
      worded`--${'width'} "${asked}" is not a number that fits`,
      worded`write a whole number from ${LEAST} to ${MOST}`,
    );
  const { stdout, stderr, env, folder, clock, page } = io;
  return {
    get stdin() {
      return io.stdin;
    },
    stdout: asWide(stdout, columns),
    stderr: stderr.isTTY === true ? asWide(stderr, columns, stderr.columns) : stderr,
    env,
    folder,
    clock,
    page,
  };
}
