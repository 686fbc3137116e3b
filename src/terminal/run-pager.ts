import { createRequire } from 'node:module';

/** What a shell answers where there is no such program: that of POSIX, and that of Windows. */
const notThere = (status: number | null) =>
  status === 127 || (process.platform === 'win32' && (status === 1 || status === 9009));

/** Runs `pager` on `text`; false if there is no such program. One that is left early is no error. */
export function runPager(pager: string, text: string): boolean {
  // Loaded only where there is something to page.
  const { spawnSync } = createRequire(import.meta.url)('node:child_process') as typeof import('node:child_process');
  const env = { LESS: 'FRX', ...process.env };
  const { status, error } = spawnSync(pager, { shell: true, input: text, stdio: ['pipe', 'inherit', 'inherit'], env });
  return (error === undefined || (error as NodeJS.ErrnoException).code === 'EPIPE') && !notThere(status);
}
