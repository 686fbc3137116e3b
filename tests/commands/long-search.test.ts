import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { inShop, pieceFile, shopFile } from './small-shop.ts';

const bin = fileURLToPath(new URL('../../bin/drybench.cjs', import.meta.url));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program in `folder`; Ctrl-C as soon as `afterMs` have passed. */
function run(folder: string, words: readonly string[], afterMs?: number, at = '2027-01-11T07:30'): Promise<Ended> {
  const child = spawn(process.execPath, [bin, ...words, '--at', at], { cwd: folder });
  let [out, err] = ['', ''];
  child.stdout.on('data', (data: Buffer) => (out += data.toString()));
  child.stderr.on('data', (data: Buffer) => (err += data.toString()));
  const timer = afterMs === undefined ? undefined : setTimeout(() => child.kill('SIGINT'), afterMs);
  return new Promise((done) =>
    child.on('close', (code) => {
      clearTimeout(timer);
      done({ code, out, err });
    }),
  );
}

/** So many chairs to do. */
const chairs = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`pieces/chair-${i}.yaml`, pieceFile(`Chair ${i}`)]));

test.skipIf(process.platform === 'win32')(
  'Ctrl-C ends a long search: the best that was found until then is shown and kept',
  async () => {
    // Big enough that no search proves its plan best within the test.
    await inShop(chairs(12), async (folder) => {
      const ended = await run(folder, ['week', '--for', '3600', '--json'], 6000);
      expect({ code: ended.code, err: ended.err }).toEqual({
        code: 130,
        err: 'drybench: stopped early; this is the best that was found until then\n',
      });
      const shown = JSON.parse(ended.out) as { readonly pieces: readonly unknown[]; readonly proof: unknown };
      expect(shown.pieces).toHaveLength(13);
      expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toEqual(shown);
    });
  },
);

test.skipIf(process.platform === 'win32')('and so it does where all is planned for the first time', async () => {
  // Planned to the end, this takes several times as long.
  await inShop(chairs(250), async (folder) => {
    const ended = await runUntilFound(folder, ['week', '--json']);
    expect({ code: ended.code, err: ended.err }).toEqual({
      code: 130,
      err: 'drybench: stopped early; this is the best that was found until then\n',
    });
    expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toEqual(JSON.parse(ended.out));
  });
});

/** The same with a later Ctrl-C each time, until there was something to end with: how soon that is depends on the machine. */
async function runUntilFound(folder: string, words: readonly string[], at?: string): Promise<Ended> {
  for (let afterMs = 3000; ; afterMs *= 1.5) {
    const ended = await run(folder, words, afterMs, at);
    // Before the program has set out, Ctrl-C ends it as any other.
    if (ended.code !== null && !ended.err.includes('stopped before a plan was found')) return ended;
  }
}

const weekLater = '2027-01-18T07:30';
const cutShort = { code: 130, err: 'drybench: stopped early; this is the best that was found until then\n' };

test.skipIf(process.platform === 'win32')(
  'and where the plan that was kept no longer fits, for who looks and for who plans',
  async () => {
    await inShop(chairs(400), async (folder) => {
      await run(folder, ['week', '--json'], 3500);
      const kept = readFileSync(join(folder, 'plan.json'), 'utf8');

      const looked = await runUntilFound(folder, ['ready', '--json'], weekLater);
      expect({ code: looked.code, err: looked.err }).toEqual(cutShort);
      expect((JSON.parse(looked.out) as { readonly pieces: readonly unknown[] }).pieces).toHaveLength(401);
      // What was cut short is no answer to the next who looks.
      expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe(kept);
      expect(readdirSync(join(folder, 'plans'))).toHaveLength(1);

      const planned = await runUntilFound(folder, ['week', '--json'], weekLater);
      expect({ code: planned.code, err: planned.err }).toEqual(cutShort);
      expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toEqual(JSON.parse(planned.out));
    });
  },
);

test.skipIf(process.platform === 'win32')(
  'where Ctrl-C comes before there is any plan, nothing is written',
  async () => {
    // Too cold for any coat: what would leave a plan is tried, one thing after the other.
    const cold = { 'shop.yaml': shopFile.replace('temp: 20 °C', 'temp: 4 °C') };
    await inShop({ ...cold, ...chairs(400) }, async (folder) => {
      const ended = await run(folder, ['week', '--json'], 4000);
      expect(ended.code).toBe(130);
      expect(JSON.parse(ended.err)).toEqual({
        format: 'drybench.trouble/1',
        exitCode: 130,
        message: 'stopped before a plan was found; nothing was written',
      });
      expect(existsSync(join(folder, 'plan.json'))).toBe(false);
    });
  },
);

test('a long search ends by itself when its time is up, and speaks as the shop does', async () => {
  await inShop({}, async (folder) => {
    const ended = await run(folder, ['week', '--for', '1', '--language', 'es']);
    expect({ code: ended.code, err: ended.err }).toEqual({ code: 0, err: '' });
    expect(ended.out).toContain('Milking stool');
  });
});
