import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Packages that are loaded as soon as `file` is: static imports of values, all the way down. */
function loadedWith(file: string, seen = new Set<string>()): Set<string> {
  const packages = new Set<string>();
  if (seen.has(file)) return packages;
  seen.add(file);
  const statements = readFileSync(file, 'utf8').matchAll(/^(?:import|export)\s+(?!type\b)[^;]*?from\s+'([^']+)';/gms);
  for (const [, name = ''] of statements) {
    if (!name.startsWith('.')) packages.add(name);
    else for (const found of loadedWith(resolve(dirname(file), name), seen)) packages.add(found);
  }
  return packages;
}

test('help loads no library but the one that reads the command line', () => {
  const fromOutside = [...loadedWith(join(root, 'src/cli.ts'))].filter((name) => !name.startsWith('node:'));
  expect(fromOutside).toEqual(['commander']);
});

test('the walk does find what a command loads', () => {
  expect(loadedWith(join(root, 'src/commands/week.ts'))).toContain('luxon');
});

const bin = join(root, 'bin/drybench.cjs');
const env = { ...process.env, NO_COLOR: '1' };

test('the program itself: answer, exit code and streams', () => {
  const help = spawnSync(process.execPath, [bin, '--help'], { env, encoding: 'utf8' });
  expect({ status: help.status, stderr: help.stderr }).toEqual({ status: 0, stderr: '' });
  expect(help.stdout).toContain('Usage: drybench');
  const wrong = spawnSync(process.execPath, [bin, 'wek'], { env, encoding: 'utf8' });
  expect({ status: wrong.status, stdout: wrong.stdout }).toEqual({ status: 2, stdout: '' });
  expect(wrong.stderr).toContain('did you mean week?');
});

test.skipIf(process.platform === 'win32')('a reader that goes away early is no trouble', () => {
  const words = `"${process.execPath}" "${bin}" air --shop "${join(root, 'shared/demo')}" --at 2027-01-11T07:30 --days 14`;
  const piped = spawnSync('sh', ['-c', `${words} | head -1`], { env, encoding: 'utf8' });
  expect(piped.stdout.split('\n')).toHaveLength(2);
  expect(piped.stderr).toBe('');
});
