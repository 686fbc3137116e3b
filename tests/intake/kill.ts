import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { expect } from 'vitest';
import { shippedDir } from '../../src/files/shipped.ts';
import { typedTable } from './typed.ts';

/** Stands behind each prompt. */
const MARK = '\u0001';

// Pipes that pass for a terminal; each prompt, which alone ends in a blank, is marked.
const program = `
  const { run } = await import(${JSON.stringify(pathToFileURL(join(shippedDir(), 'dist/cli.js')).href)});
  const write = (text) => process.stderr.write(text.endsWith(' ') ? text + '\\u0001' : text);
  process.exitCode = await run(process.argv.slice(1), {
    stdin: Object.assign(process.stdin, { isTTY: true }),
    stdout: { write: (text) => process.stdout.write(text) },
    stderr: { isTTY: true, columns: 80, write },
    env: {},
    folder: '/',
    clock: () => Date.UTC(2027, 0, 11, 7, 30),
  });
`;

interface Stopped {
  readonly code: number | null;
  readonly signal: string | null;
  readonly err: string;
  readonly asked: number;
}

/** Types the first lines, and sends the signal once the next question stands there. */
function stopAt(folder: string, typed: readonly string[], signal: 'SIGINT' | 'SIGKILL'): Promise<Stopped> {
  const child = spawn(process.execPath, ['--input-type=module', '-e', program, 'intake', '--shop', folder], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let err = '';
  child.stderr.on('data', (data: Buffer) => {
    const before = err.split(MARK).length - 1;
    err += data.toString();
    const asked = err.split(MARK).length - 1;
    for (let n = before; n < asked; n += 1) {
      const line = typed[n];
      if (line !== undefined) child.stdin.write(`${line}\n`);
      else child.kill(signal);
    }
  });
  return new Promise((done) =>
    child.on('close', (code, by) => {
      done({ code, signal: by, err, asked: err.split(MARK).length - 1 });
    }),
  );
}

const everything = (folder: string) => readdirSync(folder, { recursive: true }).map(String).sort();

/** The shop is as it was, whichever of the questions a process is killed at. */
export async function killedAt(folder: string, questions: readonly number[]): Promise<void> {
  const before = everything(folder);
  for (const n of questions) {
    const signal = n % 4 === 3 ? 'SIGKILL' : 'SIGINT';
    const stopped = await stopAt(folder, typedTable.slice(0, n), signal);
    expect(stopped.asked).toBe(n + 1);
    if (signal === 'SIGKILL') expect(stopped.signal).toBe('SIGKILL');
    else expect([stopped.code, stopped.err]).toEqual([130, expect.stringContaining('nothing was written')]);
    expect(everything(folder)).toEqual(before);
  }
}

/** Who answers all of them has a piece. */
export async function answeredAll(folder: string): Promise<void> {
  const before = everything(folder);
  const whole = await stopAt(folder, typedTable, 'SIGKILL');
  expect([whole.code, whole.asked]).toEqual([0, typedTable.length]);
  expect(everything(folder)).toEqual([...before, join('pieces', 'oak-hall-table.yaml')].sort());
}
