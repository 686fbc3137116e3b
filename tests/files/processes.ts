import { spawn, type ChildProcess } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { expect } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';
import { appendDeeds } from '../../src/files/journal/append.ts';
import { readJournal } from '../../src/files/journal/read.ts';

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.ESNext,
  verbatimModuleSyntax: true,
  rewriteRelativeImportExtensions: true,
};

/** Strips the types of the writer and of all that it uses, so that plain node can run it; into `build`, which is not kept. */
export function builtWriter(): string {
  const out = resolve('build', `writer-${process.pid}`);
  const made = new Set<string>();
  const make = (file: string): void => {
    if (made.has(file)) return;
    made.add(file);
    const { outputText } = ts.transpileModule(readFileSync(file, 'utf8'), { compilerOptions: options });
    const target = join(out, relative('.', file).replace(/\.ts$/, '.js'));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, outputText);
    for (const used of outputText.matchAll(/from ['"](\.[^'"]+)\.js['"]/g))
      make(resolve(dirname(file), `${used[1] ?? ''}.ts`));
  };
  make(resolve('tests/files/writer.ts'));
  return join(out, 'tests/files/writer.js');
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

/** Kills a writer some milliseconds after it told of its first record; then what it told of must be there, and the next command must work. */
export async function killOnce(script: string, folder: string, name: string, afterMs: number): Promise<number> {
  const run = startWriter(script, folder, 1000, name);
  run.child.stdout?.once('data', () => setTimeout(() => run.child.kill('SIGKILL'), afterMs));
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
