import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { drybench } from '../commands/run-cli.ts';
import { inShop, pieceFile } from '../commands/small-shop.ts';
import { parsed } from '../reports/calendar/parsed.ts';

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

describe('phone --file', () => {
  test('writes a calendar, keeps what it told, and calls off what a later plan leaves out', async () => {
    await inShop({ 'pieces/box.yaml': pieceFile('Box') }, async (folder) => {
      const file = join(folder, 'shop.ics');
      const words = ['phone', '--shop', folder, '--file', file];
      expect(await drybench(words)).toMatchObject({ code: 0, err: '' });
      const first = parsed(readFileSync(file, 'utf8')).events;
      expect(first.filter((e) => e.summary.includes('Box')).length).toBeGreaterThan(3);
      expect((await drybench(words)).code).toBe(0);
      expect(parsed(readFileSync(file, 'utf8')).events).toEqual(first);
      writeFileSync(join(folder, 'pieces/box.yaml'), pieceFile('Chest'));
      await drybench([...words, '--piece', 'stool', '--only', 'work']);
      const stool = parsed(readFileSync(file, 'utf8')).events;
      expect(stool.every((e) => e.summary.includes('Milking stool'))).toBe(true);
      expect(existsSync(join(folder, 'calendar.json'))).toBe(true);
    });
  });

  test('to - it goes to standard output, and nothing else does', async () => {
    await inShop({}, async (folder) => {
      const { code, out, err } = await drybench(['phone', '--file', '-'], { folder });
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(/^BEGIN:VCALENDAR\r\n[^]*END:VCALENDAR\r\n$/);
      expect(parsed(out).events.length).toBeGreaterThan(3);
      const file = join(folder, 'x.ics');
      await drybench(['phone', '--file', file], { folder });
      expect(readFileSync(file, 'utf8')).toBe(out);
      const both = await drybench(['phone', '--file', '-', '--json'], { folder });
      expect([both.code, both.out, both.err]).toEqual([2, '', expect.stringContaining('do not go together')]);
      expect(existsSync(join(folder, '-'))).toBe(false);
    });
  });

  test('leaves a file alone that it did not make, and says what is wrong with a broken ledger', async () => {
    await inShop({ 'notes.txt': 'mine', 'calendar.json': '{' }, async (folder) => {
      const other = await drybench(['phone', '--shop', folder, '--file', join(folder, 'x.ics')]);
      expect([other.code, other.err]).toEqual([
        2,
        expect.stringContaining('calendar.json is not right: it is not JSON'),
      ]);
      writeFileSync(join(folder, 'calendar.json'), '');
      const wall = await drybench(['wall', '--shop', folder, '--labels', '--file', join(folder, 'notes.txt')]);
      expect([wall.code, wall.err]).toEqual([2, expect.stringContaining('was not made by Drybench')]);
      expect(readFileSync(join(folder, 'notes.txt'), 'utf8')).toBe('mine');
    });
  });

  test.each([
    [[], 'say where the calendar is to go'],
    [['--file', 'a.ics', '--serve'], 'do not go together'],
    [['--file', 'a.ics', '--only', 'naps'], 'is no kind of entry'],
    [['--file', 'a.ics', '--hand', 'nobody'], 'there is no hand "nobody"'],
    [['--serve', '--for', '30 d'], 'is no time to serve'],
    [['--serve', '--for', '5'], 'is no time to serve'],
  ])('%j is refused', async (words, why) => {
    await inShop({}, async (folder) => {
      const ran = await drybench(['phone', '--shop', folder, ...words], { folder });
      expect([ran.code, ran.out, ran.err]).toEqual([2, '', expect.stringContaining(why)]);
    });
  });
});

describe('phone --serve', () => {
  test('serves the plan, follows the files, keeps the last good plan while they are wrong, and stops with 130', async () => {
    await inShop({}, async (folder) => {
      const port = await freePort();
      const env = { XDG_STATE_HOME: join(folder, 'state') };
      const words = ['phone', '--serve', '--json', '--shop', folder, '--port', String(port)];
      let url = '';
      const running = drybench(words, { env, onOut: (text) => (url = (JSON.parse(text) as { url: string }).url) });
      await vi.waitFor(() => expect(url).not.toBe(''), { timeout: 30_000 });
      const fetched = async () => (await fetch(url)).text();
      const before = await fetched();
      expect(parsed(before).events.length).toBeGreaterThan(4);
      writeFileSync(join(folder, 'pieces/stool.yaml'), pieceFile('Tall stool'));
      expect(await fetched()).toContain('Tall stool');
      writeFileSync(join(folder, 'pieces/stool.yaml'), 'name: [');
      expect(await fetched()).toContain('Tall stool');
      const secret = url.split('/')[4]!;
      expect(statSync(join(folder, 'state/drybench/phone')).isDirectory()).toBe(true);
      process.emit('SIGINT');
      const ran = await running;
      expect(ran.code).toBe(130);
      expect(ran.err).toContain('stays as it was until this is mended');
      expect(ran.err).not.toContain(secret);
      await expect(fetch(url)).rejects.toThrow();
    });
  });
});
