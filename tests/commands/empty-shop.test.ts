import { expect, test } from 'vitest';
import { inShop, pieceFile } from './small-shop.ts';
import { drybench } from './run-cli.ts';
import { rmSync } from 'node:fs';
import { join } from 'node:path';

const at = ['--at', '2027-01-11T07:30'];
const none = 'No piece is in the shop: drybench intake takes one in.';

test.each([
  [['week', '--days', '1']],
  [['today']],
  [['ready']],
  [['ready', '--all']],
  [['price']],
  [['compare', '--warmer', 'shed=+2K']],
])('in a shop without pieces %j says so in the same words, and what to do', async (words) => {
  await inShop({}, async (folder) => {
    rmSync(join(folder, 'pieces'), { recursive: true });
    const { code, out } = await drybench([...words, ...at], { folder });
    expect(code).toBe(0);
    expect(out).toContain(none);
    expect(out).not.toMatch(/Nothing is left to do|Cautions|Proven|safe hand-over/);
  });
});

test('air without anything that dries does not explain the speed of drying', async () => {
  await inShop({}, async (folder) => {
    rmSync(join(folder, 'pieces'), { recursive: true });
    const { out } = await drybench(['air', '--days', '1', ...at], { folder });
    expect(out).toContain('An hour a sign.');
    expect(out).not.toContain('drying speed');
  });
});

test('a piece cannot be promised by a day that is over', async () => {
  await inShop({ 'pieces/stool.yaml': pieceFile('Milking stool') }, async (folder) => {
    const { code, out, err } = await drybench(['promise', 'brushed', '--by', '2027-01-10', ...at], { folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe('drybench: --by "2027-01-10" is over already\n  write a day from 2027-01-11 on\n');
  });
});
