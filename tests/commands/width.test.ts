import { expect, it } from 'vitest';
import { widthOf } from '../../src/terminal/width.ts';
import { drybench, type Surroundings } from './run-cli.ts';

const shop = ['--shop', 'shared/demo', '--at', '2027-01-11T07:30'];
const here: Surroundings = { folder: process.cwd(), env: { NO_COLOR: '1' } };

async function widest(words: readonly string[], surroundings: Surroundings = here): Promise<number> {
  const { code, out } = await drybench([...words, ...shop], surroundings);
  expect(code).toBe(0);
  return Math.max(...out.split('\n').map(widthOf));
}

it.each([50, 100, 140])(
  '--width %i lays tables and pictures out for that, in a pipe and on a terminal',
  async (columns) => {
    for (const words of [['buy'], ['week', '--look', '--picture'], ['price']])
      for (const surroundings of [here, { ...here, isTTY: true, columns: 80 }]) {
        const wide = await widest([...words, '--width', `${columns}`], surroundings);
        expect(wide).toBeLessThanOrEqual(columns);
        expect(wide).toBeGreaterThan(columns * 0.6);
      }
  },
);

it('help is laid out for it, too, and so is what goes wrong on a terminal', async () => {
  const help = await drybench(['week', '--help', '--width=120'], here);
  expect(Math.max(...help.out.split('\n').map(widthOf))).toBeGreaterThan(80);
  const wrong = ['ready', 'no-such-piece-as-this-one', '--width', '48', ...shop];
  const { code, err } = await drybench(wrong, { ...here, isTTY: true, columns: 200 });
  expect(code).toBe(2);
  expect(Math.max(...err.split('\n').map(widthOf))).toBeLessThanOrEqual(48);
});

it.each(['39', '401', 'wide', '', '1e2'])('--width "%s" is no width', async (asked) => {
  const { code, out, err } = await drybench(['week', `--width=${asked}`, ...shop], here);
  expect({ code, out, err }).toEqual({
    code: 2,
    out: '',
    err: `drybench: --width "${asked}" is not a number that fits\n  write a whole number from 40 to 400\n`,
  });
});

it('what a program reads does not change with it', async () => {
  const words = ['ready', '--json', ...shop];
  expect(await drybench([...words, '--width', '40'], here)).toEqual(await drybench(words, here));
});
