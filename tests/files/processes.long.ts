import { afterAll, beforeAll, expect, test } from 'vitest';
import { builtWriter, killOnce, removeWriter } from './processes.ts';
import { emptyFolder } from './shop-folder.ts';

let script = '';
beforeAll(() => void (script = builtWriter()));
afterAll(() => removeWriter(script));

test('five hundred kills lose nothing that was told', async () => {
  const folder = emptyFolder();
  let told = 0;
  for (let run = 0; run < 500; run += 1) told += await killOnce(script, folder, `k${run}`, (run * 7) % 50);
  expect(told).toBeGreaterThan(1000);
}, 3_000_000);
