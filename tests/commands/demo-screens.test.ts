import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { drybench } from './run-cli.ts';

const home = mkdtempSync(join(tmpdir(), 'drybench-screens-'));
const us = join(home, 'us');
const metric = join(home, 'metric');
beforeAll(() => {
  for (const shop of [us, metric]) cpSync('shared/demo', shop, { recursive: true });
  const file = join(us, 'shop.yaml');
  writeFileSync(
    file,
    readFileSync(file, 'utf8').replace('units: metric', 'units: us').replace('clock: 24', 'clock: 12'),
  );
});
afterAll(() => rmSync(home, { recursive: true }));

const screen = async (folder: string, ...words: string[]) =>
  (await drybench([...words, '--width', '80', '--at', '2027-01-11T07:30'], { folder })).out;

it('what to buy is a table on 80 columns in US units, too: sizes name their unit once', async () => {
  const out = await screen(us, 'buy');
  expect(out).toContain('25.4 + 2 × 84.5 fl oz');
  expect(out).not.toMatch(/^ +needed +41$/m);
});

it('sizes are said as they stand on the container, with decimal commas as well', async () => {
  const out = await screen(metric, 'buy', '--language', 'es');
  expect(out).toContain('0,75 + 2 × 2,5 L');
  expect(out).toContain('1 × 0,4 L');
  expect(out).not.toMatch(/× \d+,\d*0 L/);
});

it('of air, a whole day is said as everywhere, and whole degrees without decimals', async () => {
  const out = (await screen(us, 'air', '--days', '1')).replaceAll(/\s+/g, ' ');
  expect(out).toContain('all day too cold (41 °F, wants 50 °F)');
  expect(out).toContain('heat to 50 °F by 8:00 am');
  expect(out).not.toMatch(/12:00 am–12:00 am|50\.0 °F/);
  const inMetric = (await screen(metric, 'air', '--days', '1')).replaceAll(/\s+/g, ' ');
  expect(inMetric).not.toContain('00:00–24:00');
});

it('days stand under days in the table to read to a customer', async () => {
  const out = await screen(metric, 'ready', '--all');
  expect(out).toMatch(/^Oak table +Wed 20 Jan +Thu 21 Jan +Sat 30 Jan +Fri 29 Jan 08:15 {2,}Fri 5 Mar$/m);
  const ends = out.split('\n').filter((line) => line.endsWith(' Mar'));
  expect(ends).toHaveLength(8);
  expect(new Set(ends.map((line) => line.length)).size).toBe(1);
});
