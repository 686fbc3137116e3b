import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop, shopFile } from './small-shop.ts';

const recipe = (scuffAt: string) => `name: Painted with a brush
about: Invented for these tests.
source: common practice, no source
steps:
  - { step: scuff, do: Scuff the old varnish, stage: sand, time: { fixed: 30 min }, at: ${scuffAt} }
  - step: paint
    do: Brush a thin even coat
    stage: topcoat
    time: { fixed: 40 min }
    at: bench
    material: water-borne-acrylic-enamel
`;
const shedFloor = shopFile.replace('stations:\n', 'stations:\n  shed-floor: { room: shed, kind: floor, slots: 2 }\n');
const monday = ['--at', '2027-01-11T16:05', '--plain'];

interface Ahead {
  readonly buy: readonly { readonly id: string; readonly toBuy: number; readonly by: string }[];
  readonly bringIn: readonly { readonly step: string; readonly room: string; readonly by: string }[];
  readonly keepWarm: readonly { readonly material: string; readonly coldestC: number; readonly leastC: number }[];
}

async function ahead(folder: string): Promise<Ahead> {
  const { out, err } = await drybench(['today', '--json', ...monday], { folder });
  if (out === '') throw new Error(err);
  return JSON.parse(out) as Ahead;
}

test('work that comes from the cold for a coat first thing tomorrow is to be in by the time the shop closes', async () => {
  const files = { 'shop.yaml': shedFloor, 'recipes/brushed.yaml': recipe('floor') };
  await inShop(files, async (folder) => {
    const { bringIn } = await ahead(folder);
    expect(bringIn).toEqual([
      { step: 'stool/seat/paint', room: 'workshop', by: expect.stringMatching(/^2027-01-11T17:00/) as string },
    ]);
    const { out } = await drybench(['today', ...monday], { folder });
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/bring it into Workshop, from today 16:35, by today (Seat )?17:00/);
  });
});

test('work that stays in one room is not to be brought anywhere, and in a warm one no can either', async () => {
  await inShop({ 'recipes/brushed.yaml': recipe('bench') }, async (folder) => {
    expect(await ahead(folder)).toMatchObject({ buy: [], bringIn: [], keepWarm: [] });
  });
});

test('a can is to be kept warm where the night is colder than what its sheet allows', async () => {
  const coldNight = { first: 24, last: 28 };
  const rows = Array.from({ length: 30 * 24 }, (_, hour) => {
    const time = new Date(Date.UTC(2027, 0, 11, hour)).toISOString().slice(0, 16);
    return `${time},${hour >= coldNight.first && hour <= coldNight.last ? 6 : 20},40\n`;
  });
  const files = {
    'shop.yaml': shopFile.replace('{ constant: { temp: 20 °C, rh: 50 % } }', 'air/workshop.csv'),
    'air/workshop.csv': `time,temp-c,rh-percent\n${rows.join('')}`,
    'recipes/brushed.yaml': recipe('bench'),
  };
  await inShop(files, async (folder) => {
    const { keepWarm } = await ahead(folder);
    expect(keepWarm).toMatchObject([{ material: 'water-borne-acrylic-enamel', leastC: 10 }]);
    expect(keepWarm[0]?.coldestC).toBeCloseTo(6, 6);
  });
});

test('only what the shelf fails is to be bought: of 0.4 / 10 / 0.9 L of enamel what is more than there is, up to the next millilitre', async () => {
  const stocked = (litres: number) =>
    `${shopFile}stock: { water-borne-acrylic-enamel: ${litres} L, rags: 20, gloves: 20 }\n`;
  const shortOf = (litres: number) =>
    inShop(
      { 'shop.yaml': stocked(litres), 'recipes/brushed.yaml': recipe('bench') },
      async (folder) => (await ahead(folder)).buy,
    );
  const [enamel, ...others] = await shortOf(0.01);
  expect(others).toEqual([]);
  expect(enamel).toMatchObject({
    id: 'water-borne-acrylic-enamel',
    by: expect.stringMatching(/^2027-01-12T/) as string,
  });
  expect(enamel?.toBuy).toBe(Math.ceil(1000 * (0.4 / 10 / 0.9 - 0.01)) / 1000);
  expect(await shortOf(0.05)).toEqual([]);
});
