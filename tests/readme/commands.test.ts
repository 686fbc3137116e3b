import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shippedDir } from '../../src/files/shipped.ts';
import { drybench } from '../commands/run-cli.ts';
import { words } from './session.ts';

// Whoever types what README names, in the demo shop, is not sent away.

const readme = readFileSync(join(shippedDir(), 'README.md'), 'utf8');
const [, work = ''] = /\n## The week's work\n(.*?)\n## /s.exec(readme) ?? [];
const [, block = ''] = /```sh\n(.*?)```/s.exec(work) ?? [];

const asked = [...work.matchAll(/^\| .* \|$/gm)]
  .flatMap(([row]) => [...row.matchAll(/`drybench ([^`]+)`/g)].map(([, line]) => line ?? ''))
  // Goes on until it is stopped.
  .filter((line) => !line.includes('--serve'));
const told = [...block.matchAll(/^drybench ([^#\n]+)/gm)].map(([, line]) => line?.trim() ?? '');

// One shop for each: what was planned for one question is there for the next.
const home = mkdtempSync(join(tmpdir(), 'drybench-readme-'));
const [asking, telling] = [join(home, 'asking'), join(home, 'telling')];
beforeAll(() => {
  for (const folder of [asking, telling]) cpSync(join(shippedDir(), 'shared/demo'), folder, { recursive: true });
});
afterAll(() => rmSync(home, { recursive: true }));

test('there are questions and things to tell', () => {
  expect(asked.length).toBeGreaterThan(12);
  expect(told.length).toBeGreaterThan(5);
});

test.each(asked.filter((line) => line !== 'intake'))('drybench %s answers', async (line) => {
  const { code, err } = await drybench([...words(line), '--at', '2027-01-11T07:30'], { folder: asking });
  expect([code, err]).toEqual([0, '']);
});

test('what is told, in this order, is taken', async () => {
  for (const line of told) {
    const { code, err } = await drybench([...words(line), '--at', '2027-01-14T12:00'], { folder: telling });
    expect([line, code, err]).toEqual([line, 0, '']);
  }
});
