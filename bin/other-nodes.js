// Brings other versions of Node into build/, and asks with each for the plan of the demo shop: it must be the same to the byte.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

const majors = process.argv.length > 2 ? process.argv.slice(2) : ['22', '24'];
const system = `${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`;
const program = process.platform === 'win32' ? 'bin/node.exe' : 'bin/node';

function run(command, words, options) {
  const done = spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32', ...options });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

mkdirSync('build/nodes', { recursive: true });
writeFileSync('build/nodes/package.json', '{ "private": true }\n');
const packages = majors.map((major) => `node${major}@npm:node-${system}@${major}`);
run('npm', [
  'install',
  '--prefix',
  'build/nodes',
  '--ignore-scripts',
  '--no-save',
  '--no-audit',
  '--no-fund',
  ...packages,
]);
const nodes = majors.map((major) => `build/nodes/node_modules/node${major}/${program}`);
for (const node of nodes) run(node, ['--version']);
run('npx', ['vitest', 'run', 'tests/trust/same-plan.test.ts'], {
  env: { ...process.env, DRYBENCH_NODES: nodes.join(',') },
});
