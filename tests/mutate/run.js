// Changes verifier and drying in one place after the other, and sees whether a test notices. Half an hour of one core.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { tell } from './tell.js';

process.chdir(fileURLToPath(new URL('../..', import.meta.url)));

function run(command, words, env = process.env) {
  const done = spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32', env });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

const tool = 'tests/mutate/node_modules/@stryker-mutator/core/bin/stryker.js';
const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
if (!existsSync(tool)) run('npm', ['ci', '--prefix', 'tests/mutate', ...quiet]);

for (const left of ['original', 'look.json']) rmSync(`build/mutate/${left}`, { recursive: true, force: true });
cpSync('src', 'build/mutate/original/src', { recursive: true });

const only = process.argv.slice(2);
const mutate = only.length > 0 ? ['--mutate', only.join(',')] : [];
run(process.execPath, [tool, 'run', 'tests/mutate/stryker.json', ...mutate], {
  ...process.env,
  TZ: 'Pacific/Auckland',
});
if (!tell(only.length === 0)) process.exitCode = 1;
