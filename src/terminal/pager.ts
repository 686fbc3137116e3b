import type { Io } from './io.ts';

/** The pager that the user has named and asks for on a terminal; none is chosen for those who named none. */
function pagerFor(io: Io, wanted: boolean): string | undefined {
  const { stdout, env } = io;
  const named = env['PAGER'] ?? '';
  if (!wanted || named === '' || named === 'cat' || stdout.isTTY !== true || env['TERM'] === 'dumb') return undefined;
  // Asked last: what it is takes its time to find out.
  return io.stdin.isTTY === true ? named : undefined;
}

/** May a long text go to the user's pager? Then it must be whole before it is shown. */
export function mayBePaged(io: Io, wanted: boolean): boolean {
  return pagerFor(io, wanted) !== undefined;
}

/** Shows `text` in the user's pager if it is longer than the terminal; false if it is yet to be written. */
export function paged(io: Io, text: string, wanted: boolean): boolean {
  const pager = pagerFor(io, wanted);
  const { rows } = io.stdout;
  if (pager === undefined || rows === undefined || text.split('\n').length <= rows) return false;
  return io.page(pager, text);
}
