import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const air = ['air', '--shop', join(root, 'shared/demo'), '--at', '2027-01-11T07:30'];

function ran(cache: string, words: readonly string[], home = root) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(home, 'bin/drybench.cjs'), ...words], {
    env: { ...process.env, NO_COLOR: '1', XDG_CACHE_HOME: cache },
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

const codeIn = (cache: string) => join(cache, 'drybench/code');

/** The one file of code that is kept there. */
function keptFile(cache: string): string {
  const [name, ...others] = readdirSync(codeIn(cache));
  if (name === undefined || others.length > 0) throw new Error('not just one file');
  return join(codeIn(cache), name);
}

test.skipIf(process.platform === 'win32')('code is kept for its owner alone, and taken the next time', () => {
  const cache = emptyFolder();
  const first = ran(cache, air);
  expect(first).toMatchObject({ status: 0, stderr: '' });
  expect(statSync(keptFile(cache)).mode & 0o777).toBe(0o600);
  for (let run = 1; run < 6; run += 1) expect(ran(cache, air)).toEqual(first);
  const made = statSync(keptFile(cache));
  expect(made.size).toBeGreaterThan(10_000);
  expect(ran(cache, air)).toEqual(first);
  // Code that V8 refused would have been made anew, as another file.
  expect(statSync(keptFile(cache)).ino).toBe(made.ino);
});

test('where nothing can be kept, the command is the same', () => {
  const cache = emptyFolder();
  const inTheWay = join(emptyFolder(), 'file');
  writeFileSync(inTheWay, '');
  expect(ran(inTheWay, air)).toEqual(ran(cache, air));
  expect(ran('not/absolute', air)).toEqual(ran(cache, air));
  expect(readFileSync(inTheWay, 'utf8')).toBe('');
});

test('an answer that comes to nothing keeps nothing', () => {
  const cache = emptyFolder();
  expect(ran(cache, ['wek']).status).toBe(2);
  expect(readdirSync(cache)).toEqual([]);
});

test('code that is cut short, changed or of another command is made anew, and the answer is the same', () => {
  const cache = emptyFolder();
  const answer = ran(cache, air);
  const file = keptFile(cache);
  const good = readFileSync(file);
  const other = emptyFolder();
  ran(other, ['--help']);
  const swapped = [10, 40, 200, good.length >> 1, good.length - 2].map((at) => {
    const bytes = Buffer.from(good);
    bytes.writeUInt8(bytes.readUInt8(at) ^ 0x41, at);
    return bytes;
  });
  const cut = [0, 20, 5000, good.length - 1].map((length) => good.subarray(0, length));
  for (const bytes of [...swapped, ...cut, readFileSync(keptFile(other))]) {
    writeFileSync(file, bytes);
    expect(ran(cache, air)).toEqual(answer);
    expect(readFileSync(file).equals(bytes)).toBe(false);
  }
});

test('code of one build is nothing to another', () => {
  const cache = emptyFolder();
  const ours = ran(cache, ['--help']);
  expect(ours.stdout).toContain('around drying, curing');

  // The same to the length, so that V8 itself would take the one for the other.
  const home = emptyFolder();
  cpSync(join(root, 'dist/program'), join(home, 'dist/program'), { recursive: true });
  cpSync(join(root, 'package.json'), join(home, 'package.json'));
  mkdirSync(join(home, 'bin'));
  cpSync(join(root, 'bin/drybench.cjs'), join(home, 'bin/drybench.cjs'));
  symlinkSync(join(root, 'node_modules'), join(home, 'node_modules'), 'junction');
  const program = join(home, 'dist/program');
  for (const name of readdirSync(program).filter((entry) => entry.endsWith('.js'))) {
    const text = readFileSync(join(program, name), 'utf8');
    writeFileSync(join(program, name), text.replaceAll('around drying, curing', 'around curing, drying'));
  }
  writeFileSync(join(program, 'stamp.txt'), 'another build');

  const theirs = ran(cache, ['--help'], home);
  expect(theirs.stdout).toContain('around curing, drying');
  expect(ran(cache, ['--help'], home)).toEqual(theirs);
  expect(ran(cache, ['--help'])).toEqual(ours);
});
