import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { inShop, pieceFile } from './small-shop.ts';

const bin = fileURLToPath(new URL('../../bin/drybench.cjs', import.meta.url));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program in `folder`; Ctrl-C as soon as `afterMs` have passed. */
function run(folder: string, words: readonly string[], afterMs?: number): Promise<Ended> {
  const child = spawn(process.execPath, [bin, ...words, '--at', '2027-01-11T07:30'], { cwd: folder });
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
  'Ctrl-C ends a long search: the best plan found until then is shown and kept',
  async () => {
    // Big enough that no search proves its plan best within the test.
    await inShop(chairs(12), async (folder) => {
      const ended = await run(folder, ['week', '--for', '3600', '--json'], 6000);
      expect({ code: ended.code, err: ended.err }).toEqual({
        code: 130,
        err: 'drybench: stopped early; this is the best plan found until then\n',
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
    const ended = await run(folder, ['week', '--json'], 3500);
    expect({ code: ended.code, err: ended.err }).toEqual({
      code: 130,
      err: 'drybench: stopped early; this is the best plan found until then\n',
    });
    expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toEqual(JSON.parse(ended.out));
  });
});

test('a long search ends by itself when its time is up, and speaks as the shop does', async () => {
  await inShop({}, async (folder) => {
    const ended = await run(folder, ['week', '--for', '1', '--language', 'es']);
    expect({ code: ended.code, err: ended.err }).toEqual({ code: 0, err: '' });
    expect(ended.out).toContain('Milking stool');
  });
});
