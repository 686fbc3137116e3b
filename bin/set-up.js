// Brings a fresh clone to a state where the other scripts run: packages as locked, sources built.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

const stamp = 'node_modules/.drybench-lock';
const lockHash = createHash('sha256').update(readFileSync('package-lock.json')).digest('hex');

function npm(...words) {
  const done = spawnSync('npm', words, { stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== lockHash) {
  process.stderr.write('Installing packages …\n');
  npm('ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error');
  writeFileSync(stamp, lockHash);
}
npm('run', '-s', 'build');
