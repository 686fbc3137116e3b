import type { Io } from './io.ts';

/** The pager that the user has named and asks for on a terminal; none is chosen for those who named none. */
function pagerFor({ stdin, stdout, env }: Io, wanted: boolean): string | undefined {
  const named = env['PAGER'] ?? '';
  const isAsked = wanted && stdin.isTTY === true && stdout.isTTY === true && env['TERM'] !== 'dumb';
  return isAsked && named !== '' && named !== 'cat' ? named : undefined;
}

/** Shows `text` in the user's pager if it is longer than the terminal; false if it is yet to be written. */
export function paged(io: Io, text: string, wanted: boolean): boolean {
  const pager = pagerFor(io, wanted);
  const { rows } = io.stdout;
  if (pager === undefined || rows === undefined || text.split('\n').length <= rows) return false;
  return io.page(pager, text);
}
