import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drybench } from '../../commands/run-cli.ts';
import { inShop } from '../../commands/small-shop.ts';

describe('the command wall', () => {
  test('writes the week, a card and labels, says how many pages, and writes its own files anew', async () => {
    await inShop({}, async (folder) => {
      const wall = (...words: string[]) => drybench(['wall', '--shop', folder, ...words], { folder });
      expect(await wall()).toMatchObject({
        code: 0,
        out: expect.stringContaining('Written to wall.html: 2 pages.') as string,
      });
      expect(await wall('--from', '2027-01-12', '--days', '3')).toMatchObject({ code: 0, err: '' });
      expect(readFileSync(join(folder, 'wall.html'), 'utf8')).toContain('Tue 12 Jan to Thu 14 Jan 2027');
      const card = await wall('--card', 'mil', '--json');
      expect(JSON.parse(card.out)).toEqual({
        format: 'drybench.wall/1',
        file: join(folder, 'card-stool.html'),
        pages: 1,
      });
      expect((await wall('--labels')).code).toBe(0);
      expect(existsSync(join(folder, 'labels.html'))).toBe(true);
    });
  });

  test('to - a page goes to standard output, and nothing else does', async () => {
    await inShop({}, async (folder) => {
      const { code, out, err } = await drybench(['wall', '--file', '-'], { folder });
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(/^<!doctype html>[^]*<\/html>\s*$/i);
      expect(existsSync(join(folder, '-'))).toBe(false);
    });
  });

  test.each([
    [['--file', '-', '--json'], 'do not go together'],
    [['--card', 'stool', '--labels'], 'do not go together'],
    [['--card', 'throne'], 'there is no piece "throne"'],
    [['--days', '15'], 'write a whole number from 1 to 14'],
  ])('%j is refused', async (words, why) => {
    await inShop({}, async (folder) => {
      const ran = await drybench(['wall', '--shop', folder, ...words], { folder });
      expect([ran.code, ran.out, ran.err]).toEqual([2, '', expect.stringContaining(why)]);
    });
  });
});
