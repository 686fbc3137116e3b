import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';
import { smallDemo } from './hostile-files.ts';

// To who may do everything nothing is forbidden: there, the commands run as nobody, with real processes.
const isRoot = process.getuid?.() === 0;
const asNobody = ['setpriv', '--reuid=65534', '--regid=65534', '--clear-groups'];
const program = [process.execPath, resolve('bin/drybench.cjs')];
const line = isRoot ? [...asNobody, ...program] : program;

function drybench(...words: string[]) {
  const [command = '', ...rest] = [...line, ...words];
  return spawnSync(command, rest, { encoding: 'utf8', cwd: '/', env: { PATH: process.env['PATH'] } });
}

const canTry = process.platform !== 'win32' && drybench('--help').status === 0;

function openToAll(folder: string): void {
  chmodSync(folder, 0o755);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) openToAll(path);
    else chmodSync(path, 0o644);
  }
}

test.skipIf(!canTry)('where it may not write it answers all the same, and says so where it must write', () => {
  const parent = emptyFolder();
  const shop = smallDemo(parent);
  openToAll(parent);
  const before = readdirSync(shop, { recursive: true });
  chmodSync(shop, 0o555);
  const say = (...words: string[]) => drybench(...words, '--shop', shop, '--at', '2027-01-11T12:30');
  for (const words of [['check'], ['today'], ['week', '--look'], ['ready'], ['buy'], ['price']])
    expect([words, say(...words)]).toMatchObject([words, { status: 0, stderr: '' }]);
  for (const words of [
    ['week'],
    ['done', 'piano-stool', 'whole/look-over'],
    ['slip', 'piano-stool', 'stool/strip', '2027-01-14T10:00'],
    ['phone', '--file', join(shop, 'p.ics')],
    ['wall', '--file', join(shop, 'w.html')],
    ['check', '--repair'],
  ]) {
    const { status, stderr } = say(...words);
    expect([words, status, stderr]).toEqual([
      words,
      2,
      expect.stringMatching(/^drybench: \S+ cannot be written: you may not/),
    ]);
  }
  expect(readdirSync(shop, { recursive: true })).toEqual(before);
  chmodSync(shop, 0o755);
  rmSync(parent, { recursive: true });
});

test.skipIf(!canTry).each(['pieces', 'pieces/piano-stool.yaml', 'shop.yaml', 'air'])(
  'where it may not read %s it says so, with its name',
  (name) => {
    const parent = emptyFolder();
    const shop = smallDemo(parent);
    openToAll(parent);
    chmodSync(join(shop, name), 0);
    const { status, stdout, stderr } = drybench('check', '--shop', shop);
    expect({ status, told: `${stdout}${stderr}` }).toEqual({
      status: 2,
      told: expect.stringMatching(/cannot be read \(EACCES\)/) as string,
    });
    expect(`${stdout}${stderr}`).toContain(name);
    chmodSync(join(shop, name), 0o755);
    rmSync(parent, { recursive: true });
  },
);
