import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runPager } from '../../src/terminal/run-pager.ts';
import { drybench, type Surroundings } from '../commands/run-cli.ts';
import { inShop } from '../commands/small-shop.ts';

const words = ['ready', '--at', '2027-01-11T07:30'];

/** What goes to the pager, and what straight to standard output, on a terminal of two rows unless said otherwise. */
async function shown(folder: string, surroundings: Surroundings, ...more: string[]) {
  const pages: [string, string][] = [];
  const { out } = await drybench([...words, ...more], {
    folder,
    isTTY: true,
    columns: 80,
    rows: 2,
    onPage: (pager, text) => pages.push([pager, text]),
    ...surroundings,
  });
  return { pages, out };
}

it('shows an answer longer than the terminal in the pager that the user has named', () =>
  inShop({}, async (folder) => {
    const plain = await shown(folder, {});
    expect(plain.pages).toEqual([]);
    expect(plain.out.split('\n').length).toBeGreaterThan(2);
    expect(await shown(folder, { env: { PAGER: 'less' } })).toEqual({ pages: [['less', plain.out]], out: '' });
  }));

it.each<[string, Surroundings, ...string[]]>([
  ['with --no-pager', { env: { PAGER: 'less' } }, '--no-pager'],
  ['for cat', { env: { PAGER: 'cat' } }],
  ['in a pipe', { env: { PAGER: 'less' }, isTTY: false }],
  ['on a dumb terminal', { env: { PAGER: 'less', TERM: 'dumb' } }],
  ['where it fits', { env: { PAGER: 'less' }, rows: 100 }],
  ['as JSON', { env: { PAGER: 'less' } }, '--json'],
])('shows it all at once %s', (_, surroundings, ...more) =>
  inShop({}, async (folder) => {
    const { pages, out } = await shown(folder, surroundings, ...more);
    expect(pages).toEqual([]);
    expect(out).not.toBe('');
  }),
);

it('writes it plainly where there is no such pager', () =>
  inShop({}, async (folder) => {
    const page = { isTTY: true, columns: 80, rows: 2, env: { PAGER: 'no-such-program' }, folder };
    expect((await drybench(words, page)).out).toBe((await shown(folder, {})).out);
  }));

it('hands the whole text to the program, as the user wrote its line, and is not troubled where that is left early', () => {
  const folder = mkdtempSync(join(tmpdir(), 'drybench-pager-'));
  try {
    const text = 'so long\n'.repeat(50_000);
    const file = join(folder, 'seen');
    expect(runPager(`cat > '${file}'`, text)).toBe(true);
    expect(readFileSync(file, 'utf8')).toBe(text);
    expect(runPager('true', text)).toBe(true);
    expect(runPager('no-such-program-at-all 2>&1 > /dev/null', text)).toBe(false);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
