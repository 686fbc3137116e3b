import { spawnSync } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../files/shop-folder.ts';

/** Other versions of Node, by path; `npm run test:nodes` brings some. */
const others = (process.env['DRYBENCH_NODES'] ?? '').split(',').filter((path) => path !== '');

const surroundings: readonly (readonly [what: string, node: string, env: Readonly<Record<string, string>>])[] = [
  ['in Turkish, at Kathmandu', process.execPath, { LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8', TZ: 'Asia/Kathmandu' }],
  ['in German, on Lord Howe', process.execPath, { LC_ALL: 'de_DE.UTF-8', LANG: 'de_DE', TZ: 'Australia/Lord_Howe' }],
  ['in no language, at Chicago', process.execPath, { LC_ALL: 'C', LANG: 'C', TZ: 'America/Chicago' }],
  ...others.map((path) => [`with ${path}`, resolve(path), {}] as const),
];

function planBy(node: string, env: Readonly<Record<string, string>>): string {
  const shop = join(emptyFolder(), 'shop');
  cpSync('shared/demo', shop, { recursive: true, filter: (from) => !/plan\.json$|plans$|journal\.jsonl$/.test(from) });
  const words = ['week', '--look', '--json', '--shop', shop, '--at', '2027-01-11T07:30'];
  const { stdout, stderr, status } = spawnSync(node, [resolve('bin/drybench.cjs'), ...words], {
    encoding: 'utf8',
    maxBuffer: 1e8,
    env: { ...process.env, ...env },
  });
  expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
  return stdout;
}

test('the plan of the demo shop is the same to the byte in any language, at any place, with any Node', () => {
  const plan = planBy(process.execPath, { TZ: 'UTC', LC_ALL: 'en_US.UTF-8' });
  expect(plan.length).toBeGreaterThan(100_000);
  for (const [what, node, env] of surroundings)
    expect({ what, same: planBy(node, env) === plan }).toEqual({ what, same: true });
}, 600_000);
