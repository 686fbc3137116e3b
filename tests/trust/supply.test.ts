import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly licenses?: readonly { readonly type: string }[];
  readonly hasInstallScript?: boolean;
  readonly resolved?: string;
  readonly integrity?: string;
}

interface Manifest {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
  packages: Readonly<Record<string, Locked>>;
};
const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest;
const installed = Object.entries(packages).filter(([path]) => path.startsWith('node_modules/'));

/** SPDX identifiers; all but the last two ask for no more than that their text is kept. */
const permissive = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'Python-2.0',
  'CC-BY-4.0',
  'CC0-1.0',
  'Unlicense',
  'MIT-0',
];
/** Of a file, not of what uses it: only a tool of the tests has it, and nothing of it is passed on. */
const ofTests: Readonly<Record<string, string>> = { 'ical.js': 'MPL-2.0', lightningcss: 'MPL-2.0' };

const nameOf = (path: string) => path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);

describe('packages', () => {
  test('each has an exact version, and those that the program uses stand in DEVELOPERS.md with their reason', () => {
    const { dependencies, devDependencies } = manifest;
    for (const version of Object.values({ ...dependencies, ...devDependencies }))
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    const rows = [...readFileSync('DEVELOPERS.md', 'utf8').matchAll(/^\| ([a-z0-9@/., -]+) \| \S.{10,} \|$/gm)];
    const told = rows.flatMap((m) => m[1]!.split(', '));
    for (const name of Object.keys({ ...dependencies, ...devDependencies })) expect(told).toContain(name);
  });

  test('none runs a script when it is installed, and each is what it was when it was locked', () => {
    expect(installed.length).toBeGreaterThan(50);
    for (const [path, { hasInstallScript, integrity }] of installed) {
      expect({ path, script: hasInstallScript ?? false }).toEqual({ path, script: false });
      expect({ path, integrity: integrity?.slice(0, 7) }).toEqual({ path, integrity: 'sha512-' });
    }
  });

  test('each has a licence that is permissive', () => {
    for (const [path, { license }] of installed) {
      const name = nameOf(path);
      const known = license ?? '';
      const own = Object.entries(ofTests).find(([n]) => name === n || name.startsWith(`${n}-`))?.[1];
      const choices = known.replace(/[()]/g, '').split(/ OR | AND /);
      expect({ name, licence: known, ok: choices.every((one) => permissive.includes(one)) || known === own }).toEqual({
        name,
        licence: known,
        ok: true,
      });
      if (name in manifest.dependencies) expect(choices.every((one) => permissive.includes(one))).toBe(true);
    }
  });
});

/** Runs before the program: whatever would leave this machine throws, and leaves a word on standard error. */
const noNetwork = `
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';
import dns from 'node:dns';
import dgram from 'node:dgram';
import child from 'node:child_process';
const refuse = (what) => () => { process.stderr.write('REACHED OUT: ' + what + '\\n'); throw new Error(what); };
net.Socket.prototype.connect = refuse('connect');
net.Server.prototype.listen = refuse('listen');
for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6']) dns[name] = refuse(name);
dgram.createSocket = refuse('dgram');
for (const name of ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork']) child[name] = refuse(name);
globalThis.fetch = refuse('fetch');
syncBuiltinESMExports();
`;

test('no command reaches the network or starts another program', () => {
  const folder = emptyFolder();
  const shop = join(folder, 'shop');
  cpSync('shared/demo', shop, { recursive: true });
  const guard = join(folder, 'guard.mjs');
  writeFileSync(guard, noNetwork);
  const run = (...words: string[]) =>
    spawnSync(process.execPath, ['--import', guard, resolve('bin/drybench.cjs'), ...words], {
      cwd: shop,
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1' },
    });
  // The guard does guard.
  expect(run('phone', '--serve', '--for', '1 min', '--at', '2027-01-11T07:30').stderr).toContain('REACHED OUT');
  for (const words of [
    ['check'],
    ['week'],
    ['today'],
    ['ready'],
    ['why', 'pine-washstand', 'prime'],
    ['air'],
    ['buy'],
    ['price'],
    ['phone', '--file', 'x.ics'],
    ['wall', '--file', 'x.html'],
    ['skip', 'piano-stool', 'inspect'],
    ['undo'],
    ['setup', '../new', '--ask-nothing'],
  ]) {
    const { stderr, status } = run(...words, '--at', '2027-01-11T07:30');
    expect({ words, reached: stderr.includes('REACHED OUT') }).toEqual({ words, reached: false });
    expect({ words, defect: status === 70 }).toEqual({ words, defect: false });
  }
}, 600_000);
