import { describe, expect, test } from 'vitest';
import { usesOf } from '../../src/bookkeeping/uses.ts';
import { shoppingList } from '../../src/bookkeeping/shopping.ts';
import { wayNamed } from '../../src/bookkeeping/work-left.ts';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import type { Book } from '../../src/model/book.ts';
import type { Deed } from '../../src/model/journal.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt, localDay } from '../../src/time/zone.ts';
import { inShop, shopFile } from '../commands/small-shop.ts';

const zone = 'Europe/Dublin';
const now = minuteAt('2027-01-11', 450, zone);

/** The book of the small shop with these files changed. */
function bookWith(changes: Readonly<Record<string, string>>): Promise<Book> {
  return inShop(changes, (folder) => {
    const { book, findings } = readBook(folder, { shippedDir: shippedDir(), supplies: true });
    if (book === undefined) throw new Error(JSON.stringify(findings));
    return Promise.resolve(book);
  });
}

function listOf(book: Book, deeds: readonly Deed[] = [], at = now) {
  const journal = deeds.map((deed, i) => ({ number: i + 1, at, deed }));
  const situation = situationOf({ ...book, journal }, at);
  const made = makePlan(situation, { seed: 1 });
  if (made.kind !== 'plan') throw new Error('no plan');
  return { plan: made.plan, ...shoppingList(book, situation, made.plan) };
}

const round = (value: number) => Math.round(value * 1e6) / 1e6;

describe('a stool of 0.4 m², scuffed, wiped and brushed twice with an enamel of 10 m²/L', () => {
  const enamel = 'water-borne-acrylic-enamel';

  test('by hand: 0.4 / 10 / 0.9 L a coat, 0.85 of a sheet, 0.2 of a cloth, 1.4 rags, two pairs of gloves', async () => {
    const { purchases, unknown } = listOf(await bookWith({}));
    expect(unknown).toEqual([]);
    const needed = Object.fromEntries(purchases.map((p) => [p.item, round(p.needed)]));
    expect(needed).toEqual({
      [enamel]: round((2 * 0.4) / 10 / 0.9),
      'abrasive-180': 0.85,
      'tack-cloth': 0.2,
      rags: 1.4,
      gloves: 2,
    });
    const bought = Object.fromEntries(
      purchases.map((p) => [p.item, p.containers.map((c) => [c.count, c.holds.value])]),
    );
    expect(bought).toEqual({
      [enamel]: [[1, 0.5]],
      'abrasive-180': [[1, 10]],
      'tack-cloth': [[1, 1]],
      rags: [[1, 25]],
      gloves: [[1, 50]],
    });
  });

  test('what the shelf has is not bought; what it runs short of is bought by the day of the coat that it fails', async () => {
    const book = await bookWith({
      'shop.yaml': `${shopFile}stock: { ${enamel}: 50 mL, gloves: 6 }\nprices: { ${enamel}: [9 EUR for 0.5 L, 15.50 EUR for 1 L] }\n`,
    });
    const { purchases, plan } = listOf(book);
    expect(purchases.find((p) => p.item === 'gloves')).toMatchObject({ toBuy: 0, containers: [] });
    const paint = purchases.find((p) => p.item === enamel);
    expect(paint).toMatchObject({ onShelf: 0.05, toBuy: 0.039, costMinor: 900 });
    const second = plan.steps.find((s) => s.id === 'stool/seat/paint-2');
    expect(paint?.by).toBe(second?.spans[0]?.start);
    expect(localDay(paint?.by ?? 0, zone).date).not.toBe('2027-01-11');
  });

  test('what is done counts no more; a coat that failed is bought for again, with the paper to sand it back', async () => {
    const book = await bookWith({});
    const from = minuteAt('2027-01-11', 480, zone);
    const doneUntil = (task: string, i: number): Deed => ({
      kind: 'done',
      task: `stool/seat/${task}`,
      from: from + 60 * i,
      to: from + 60 * i + 40,
    });
    const all = ['scuff', 'wipe', 'paint-1'].map(doneUntil);
    const later = minuteAt('2027-01-12', 450, zone);
    const one = listOf(book, all, later);
    expect(round(one.purchases.find((p) => p.item === enamel)?.needed ?? 0)).toBe(round(0.4 / 10 / 0.9));
    expect(one.purchases.some((p) => p.item === 'abrasive-180')).toBe(false);
    const redone = listOf(book, [...all, { kind: 'failed', task: 'stool/seat/paint-1', fault: 'runs' }], later);
    expect(round(redone.purchases.find((p) => p.item === enamel)?.needed ?? 0)).toBe(round(0.8 / 10 / 0.9));
    expect(redone.purchases.some((p) => p.item.startsWith('abrasive-'))).toBe(true);
  });

  test('what was used since the shelf was counted is off it: as entered, else as reckoned; before the count nothing', async () => {
    const shelf = (counted: string) =>
      bookWith({ 'shop.yaml': `${shopFile}stock: { ${enamel}: 1 L, gloves: 6 }\n${counted}` });
    const from = minuteAt('2027-01-11', 480, zone);
    const did = (task: string, i: number, used?: number): Deed => ({
      kind: 'done',
      task: `stool/seat/${task}`,
      from: from + 60 * i,
      to: from + 60 * i + 40,
      ...(used !== undefined && { used }),
    });
    const later = minuteAt('2027-01-12', 450, zone);
    const paintOf = async (counted: string, used?: number) => {
      const done = [did('scuff', 0), did('wipe', 1), did('paint-1', 2, used)];
      const paint = listOf(await shelf(counted), done, later).purchases.find((p) => p.item === enamel);
      return [round(paint?.onShelf ?? -1), round(paint?.usedSinceCount ?? -1)];
    };
    const reckoned = round(0.4 / 10 / 0.9);
    expect(await paintOf('')).toEqual([1, 0]);
    expect(await paintOf('stock-counted: 2027-01-11\n')).toEqual([round(1 - reckoned), reckoned]);
    expect(await paintOf('stock-counted: 2027-01-11\n', 0.3)).toEqual([0.7, 0.3]);
    expect(await paintOf('stock-counted: 2027-01-11\n', 4)).toEqual([0, 1]);
    expect(await paintOf('stock-counted: 2027-01-11T12:00\n', 0.3)).toEqual([1, 0]);
  });

  test('a material that names no coverage is said, not guessed', async () => {
    const book = await bookWith({
      'materials/old-paint.yaml': `name: Old paint\nfamily: water-borne\nmechanism: water\nmarks: { recoat: 4 h, handle: 8 h }\n`,
      'pieces/stool.yaml': `name: Stool\nsections:\n  seat: { recipe: brushed, area: 0.4 m2, materials: { ${enamel}: old-paint } }\n`,
    });
    const { purchases, unknown } = listOf(book);
    expect(unknown.map((u) => [u.item, u.uses.length])).toEqual([['old-paint', 2]]);
    expect(purchases.some((p) => p.item === 'old-paint')).toBe(false);
  });
});

describe('what one step takes', () => {
  const recipe = (coat: string) => `name: Bare
about: Invented for these tests.
source: common practice, no source
steps:
  - { step: strip, do: Strip it, stage: clean, time: 30 min, supplies: [stripper] }
  - { step: oil, do: Coat it, stage: coat, time: 30 min, ${coat} }
  - { step: cover, do: Cover the edge, stage: mask, time: 10 min, material: masking-tape }
`;
  const uses = async (coat: string, shop = '', also: Readonly<Record<string, string>> = {}) => {
    const book = await bookWith({
      'shop.yaml': shopFile + shop,
      'recipes/brushed.yaml': recipe(coat),
      'pieces/stool.yaml': 'name: Stool\nsections:\n  seat: { recipe: brushed, area: 1.2 m2, items: 2 }\n',
      ...also,
    });
    const { tasks } = situationOf(book, now);
    return tasks.map((task) =>
      Object.fromEntries(
        usesOf(book, tasks, task, wayNamed(task, undefined)).map((u) => [u.item, round(u.value ?? -1)]),
      ),
    );
  };

  test('bare wood drinks 15 % of the first coat; what misses the work and stays in the pot is bought, too; so is its thinner', async () => {
    const [strip, oil, rags, cover] = await uses(
      'material: oil-based-polyurethane, transfer: 65 %, thickness: 1.2',
      'waste: 20 %\n',
    );
    const litres = (1.2 * 1.2) / 12 / 0.65 / 0.85 / 0.8;
    expect(strip).toEqual({ stripper: 0.6, gloves: 1, rags: 2.2 });
    expect(oil).toEqual({
      'oil-based-polyurethane': round(litres),
      // To thin it, and to wash the brush.
      'mineral-spirits': round(litres * 0.1 + 0.1),
      gloves: 1,
      rags: 2.2,
    });
    expect(rags).toEqual({});
    expect(cover).toEqual({ 'masking-tape': 10 });
  });

  test('without coverage, volume solids and dry film say how far it goes: 10 × 40 / 50 = 8 m²/L', async () => {
    const own = `name: Own paint\nfamily: water-borne\nmechanism: water\nvolume-solids: 40 %\ndry-film: 50 um\ncontainers: [1 L]\nmarks: { recoat: 4 h, handle: 8 h, tape: 8 h }\n`;
    const [, oil] = await uses('material: own-paint', '', { 'materials/own-paint.yaml': own });
    expect(oil?.['own-paint']).toBe(round(1.2 / 8 / 0.85 / 0.9));
  });
});

describe('stock and prices in the files', () => {
  const findingsOf = (lines: string) =>
    inShop({ 'shop.yaml': shopFile + lines }, (folder) => {
      const { findings } = readBook(folder, { shippedDir: shippedDir() });
      return Promise.resolve(findings.map((f) => [f.code, f.place?.line, f.place?.column]));
    });
  const line = shopFile.split('\n').length;

  test('take materials in litres, tape in metres, all else in its own unit', async () => {
    const right =
      'stock: { pva-glue: 250 mL, low-tack-tape: 30 m, abrasive-220: 12, strainer: 3 }\n' +
      'prices: { pva-glue: 6.50 EUR for 0.5 L, abrasive-80: [9 EUR for 10, 32 EUR for 50] }\n';
    expect(await findingsOf(right)).toEqual([]);
  });

  test.each([
    ['stock: { pva-glue: 3 }', 'wrong-unit', 20],
    ['stock: { strainer: 1 L }', 'wrong-unit', 20],
    ['stock: { pva-gleu: 1 L }', 'unknown-material', 20],
    ['prices: { pva-glue: 6 EUR }', 'bad-price', 21],
    ['prices: { pva-glue: 6 USD for 1 L }', 'bad-price', 21],
    ['prices: { pva-glue: 6 EUR for 0 L }', 'bad-price', 21],
    ['prices: { pva-glue: [6 EUR for 1 L, 9 EUR for 10] }', 'wrong-unit', 37],
  ])('%s: %s', async (text, code, column) => {
    expect(await findingsOf(`${text}\n`)).toEqual([[code, line, column]]);
  });

  test('supplies.yaml of the shop stands over the shipped one', async () => {
    const book = await bookWith({ 'supplies.yaml': 'supplies:\n  tack-cloth: { per-step: 1, packs: [5] }\n' });
    expect(book.supplies?.get('tack-cloth')).toMatchObject({ perStep: 1, perM2: 0, source: "the shop's own figures" });
    expect(book.supplies?.get('strainer')?.source).toBe('common practice, no source');
  });
});

describe('washing up', () => {
  // The figures are those of supplies.yaml: 0.3 L for a gun, 0.1 L for a brush (common practice, no source).
  const shop = `${shopFile}tools: { gun: { count: 1, wash-up: 15 min } }\n`;
  const coat = (how: string) => `name: Coated
about: Invented for these tests.
source: common practice, no source
steps:
  - { step: coat, do: Coat it, stage: topcoat, time: 30 min, ${how} }
`;
  const takes = async (how: string, part?: 'first' | 'middle' | 'last') => {
    const book = await bookWith({
      'shop.yaml': shop,
      'recipes/brushed.yaml': coat(how),
      'pieces/stool.yaml': 'name: Stool\nsections:\n  seat: { recipe: brushed, area: 1 m2 }\n',
    });
    const { tasks } = situationOf(book, now);
    const task = tasks.find((t) => t.step === 'coat');
    if (task === undefined) throw new Error('no coat');
    const uses = usesOf(book, tasks, task, wayNamed(task, undefined), part);
    return (id: string) => round(uses.find((u) => u.item === id)?.value ?? 0);
  };

  test('a gun takes its thinner, three times a brush; a material thinned by 20 % asks for both, as one', async () => {
    const lacquer = await takes('material: nitrocellulose-lacquer, tools: [gun]');
    expect(lacquer('lacquer-thinner')).toBe(round(0.3 + 0.2 * lacquer('nitrocellulose-lacquer')));
    const enamel = await takes('material: alkyd-enamel');
    expect(round(enamel('mineral-spirits') - 0.1)).toBe(round(0.05 * enamel('alkyd-enamel')));
  });

  test('what is wiped on with a cloth is not washed up; of a session only the last coat is', async () => {
    const oil = await takes('material: drying-oil');
    expect(oil('mineral-spirits')).toBe(round(0.3 * oil('drying-oil')));
    const first = await takes('material: nitrocellulose-lacquer, tools: [gun]', 'first');
    expect(first('lacquer-thinner')).toBe(round(0.2 * first('nitrocellulose-lacquer')));
    const last = await takes('material: nitrocellulose-lacquer, tools: [gun]', 'last');
    expect(last('lacquer-thinner')).toBeGreaterThan(0.3);
  });
});
