import { spawnSync } from 'node:child_process';
import { lstatSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';
import { hostileFiles, smallDemo } from './hostile-files.ts';
import { expectHarmless } from './spoiling.ts';

/** The program, which at its end tells the most memory that it held. */
const measured = `
import { run } from ${JSON.stringify(resolve('dist/program/cli.js'))};
process.exitCode = await run(process.argv.slice(2));
process.on('exit', () => process.stderr.write('\\nMOST MB ' + Math.round(process.resourceUsage().maxRSS / 1000) + '\\n'));
`;

/** Against what hangs; a sound machine takes a second or two. */
const HANGS_MS = 200_000;

const small = (path: string) => lstatSync(path).isFile() && lstatSync(path).size < 100_000;
function contents(shop: string): Record<string, string> {
  const names = readdirSync(shop, { recursive: true, encoding: 'utf8' }).filter((n) => !n.startsWith('plans'));
  return Object.fromEntries(names.map((n) => [n, small(join(shop, n)) ? readFileSync(join(shop, n), 'latin1') : '']));
}

const isLong = process.env['DRYBENCH_LONG'] === '1';
const tried = hostileFiles.filter((_, i) => isLong || i % 4 === 1);

test.skipIf(process.platform === 'win32').each(tried)(
  '%s: a clear word or a plan, little memory, no file changed',
  (_, prepare, code) => {
    const folder = emptyFolder();
    const shop = smallDemo(folder);
    prepare(shop);
    const script = join(folder, 'measured.mjs');
    writeFileSync(script, measured);
    const before = contents(shop);
    for (const words of [['check'], ['today']]) {
      const { status, stdout, stderr, signal } = spawnSync(
        process.execPath,
        [script, ...words, '--shop', shop, '--at', '2027-01-11T07:30', '--plain'],
        { encoding: 'utf8', timeout: HANGS_MS, maxBuffer: 1e8, env: { ...process.env, NO_COLOR: '1' } },
      );
      expect({ words, signal, status }).toEqual({ words, signal: null, status: code });
      expect(`${stdout}${stderr}`).not.toMatch(/^ {4}at |a defect in Drybench/m);
      expectHarmless(`${stdout}${stderr}`);
      expect(Number(/MOST MB (\d+)/.exec(stderr)?.[1])).toBeLessThan(500);
      expect(contents(shop)).toEqual(before);
    }
  },
  2 * HANGS_MS + 60_000,
);
