import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { drybench } from './run-cli.ts';

const home = mkdtempSync(join(tmpdir(), 'drybench-us-'));
beforeAll(() => {
  cpSync('shared/demo', home, { recursive: true });
  const shop = join(home, 'shop.yaml');
  writeFileSync(shop, readFileSync(shop, 'utf8').replace('units: metric', 'units: us'));
});
afterAll(() => rmSync(home, { recursive: true }));

/** All texts in a document, keys left out. */
function textsIn(data: unknown): string[] {
  if (typeof data === 'string') return [data];
  return typeof data === 'object' && data !== null ? Object.values(data).flatMap(textsIn) : [];
}

const metric = /\d ?(?:°C(?! \()|K\b|m²|m³|L\b|mm\b|cm\b|kPa|g\/kg)/;

it.each([
  [['air'], /°F is colder than \d/],
  [['air', '--reading', '50 °F 82 %', '--surface', '49 °F'], /above the dew point; it needs 5\.4 °F/],
  [['ready'], /18 °F/],
  [['check'], /^/],
  [['buy'], /^/],
])('in a shop of US units the words of %j --json are in US units', async (words, expected) => {
  const { out } = await drybench([...words, '--json', '--at', '2027-01-11T07:30'], { folder: home });
  const texts = textsIn(JSON.parse(out));
  expect(texts.filter((text) => metric.test(text) && !text.startsWith('How much the cold'))).toEqual([]);
  expect(texts.some((text) => expected.test(text))).toBe(true);
});
