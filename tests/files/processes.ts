import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { expect } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';
import { appendDeeds } from '../../src/files/journal/append.ts';
import { readJournal } from '../../src/files/journal/read.ts';

/** Compiles what the writer needs, so that plain node can run it; the folder lies in `build`, which is not kept. */
export function builtWriter(): string {
  const out = resolve('build', `writer-${process.pid}`);
  const program = ts.createProgram([resolve('tests/files/writer.ts')], {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.Node20,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    rewriteRelativeImportExtensions: true,
    skipLibCheck: true,
    types: ['node'],
    rootDir: resolve('.'),
    outDir: out,
  });
  program.emit();
  const script = join(out, 'tests/files/writer.js');
  if (!existsSync(script)) throw new Error('the writer was not built');
  return script;
}

export function removeWriter(script: string): void {
  rmSync(resolve(script, '../../..'), { recursive: true, force: true });
}

export interface Run {
  readonly child: ChildProcess;
  /** Records that the process told of, once it has ended. */
  readonly ended: Promise<{ readonly told: string[]; readonly errors: string; readonly code: number | null }>;
}

export function startWriter(script: string, folder: string, count: number, name: string): Run {
  const child = spawn(process.execPath, [script, folder, String(count), name], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let errors = '';
  child.stdout.on('data', (data: Buffer) => (out += data.toString()));
  child.stderr.on('data', (data: Buffer) => (errors += data.toString()));
  const ended = new Promise<Awaited<Run['ended']>>((done) =>
    child.on('close', (code) => done({ told: out.split('\n').filter((l) => l !== ''), errors, code })),
  );
  return { child, ended };
}

/** Kills a writer after some milliseconds; then what it told of must be there, and the next command must work. */
export async function killOnce(script: string, folder: string, name: string, afterMs: number): Promise<number> {
  const run = startWriter(script, folder, 1000, name);
  setTimeout(() => run.child.kill('SIGKILL'), afterMs);
  const { told, errors } = await run.ended;
  expect(errors).toBe('');
  const next = appendDeeds(folder, () => [{ kind: 'skipped', task: `after-${name}` }], {
    at: 29_993_001,
    zone: 'UTC',
    command: 'next',
  });
  expect(next.ok).toBe(true);
  const state = readJournal(realDisk, { path: folder, label: '' });
  expect(state.findings).toEqual([]);
  const tasks = new Set(state.entries.map((e) => ('task' in e.deed ? e.deed.task : '')));
  expect(told.filter((t) => !tasks.has(t))).toEqual([]);
  return told.length;
}
