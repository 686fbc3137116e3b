import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop, pieceFile, shopFile } from './small-shop.ts';

const at = ['--at', '2027-01-11T07:30'];

interface Compared {
  readonly format: string;
  readonly now: readonly { readonly id: string; readonly handedOver: { readonly safe: string } }[];
  readonly variants: readonly {
    readonly name: string;
    readonly cost?: number;
    readonly daysSooner: number;
    readonly daysPerUnitOfMoney?: number;
    readonly pieces: Compared['now'];
  }[];
  readonly best?: { readonly name: string; readonly by: string };
}

test('a warmer room is sooner and buys most for its money; nothing is kept', async () => {
  await inShop({}, async (folder) => {
    const words = ['--warmer', 'workshop=+8K', '--slot', 'bench=+1', '--cost', 'warmer=20EUR', 'slot=5EUR'];
    const { code, out } = await drybench(['compare', ...words, '--json', ...at], { folder });
    const compared = JSON.parse(out) as Compared;
    expect({ code, format: compared.format }).toEqual({ code: 0, format: 'drybench.compare/1' });
    const [warmer, slot] = compared.variants;
    expect([warmer?.name, warmer?.cost, slot?.name, slot?.cost]).toEqual(['warmer', 20, 'slot', 5]);
    expect(warmer?.daysSooner).toBeGreaterThan(0);
    expect(warmer?.daysPerUnitOfMoney).toBeCloseTo((warmer?.daysSooner ?? 0) / 20, 9);
    expect(slot?.daysSooner).toBe(0);
    expect(compared.best).toEqual({ name: 'warmer', by: 'money' });
    expect(existsSync(join(folder, 'plan.json'))).toBe(false);
  });
});

test('the days of a change are the differences between the dates that stand side by side', async () => {
  await inShop({ 'pieces/chair.yaml': pieceFile('Chair') }, async (folder) => {
    const words = ['--warmer', 'workshop=+2K', '--drier', 'workshop=40%'];
    const { out } = await drybench(['compare', ...words, '--json', ...at], { folder });
    const { now, variants } = JSON.parse(out) as Compared;
    for (const { daysSooner, pieces } of variants) {
      const minutes = now.reduce((sum, { id, handedOver: { safe } }) => {
        const then = pieces.find((p) => p.id === id)?.handedOver.safe ?? safe;
        return sum + (Date.parse(safe) - Date.parse(then)) / 60_000;
      }, 0);
      expect(daysSooner).toBeCloseTo(minutes / 1440, 9);
    }
    expect(variants[0]?.daysSooner).not.toBe(0);
  });
});

test('a piece left out is in no column; the screen says what each change buys', async () => {
  await inShop({}, async (folder) => {
    const { out, code } = await drybench(['compare', '--without', 'stool', '--drier', 'shed=50%', ...at], { folder });
    expect(code).toBe(0);
    expect(out).toMatch(/Milking stool .*–/);
    expect(out).toContain('Shed dried to 50 %: no difference');
  });
});

test('a wholly new bench is worth what one more place at the old one is; a rack that no step asks for, nothing', async () => {
  const crowded = shopFile.replace('slots: 2', 'slots: 1');
  await inShop({ 'shop.yaml': crowded, 'pieces/chair.yaml': pieceFile('Chair') }, async (folder) => {
    const words = ['--station', 'workshop/bench=1', 'workshop/rack=4', '--slot', 'bench=+1'];
    const { out } = await drybench(['compare', ...words, '--json', ...at], { folder });
    const sooner = new Map((JSON.parse(out) as Compared).variants.map((v) => [v.name, v.daysSooner]));
    expect(sooner.get('slot')).toBeGreaterThan(0);
    expect(sooner.get('station')).toBe(sooner.get('slot'));
    expect(sooner.get('station-2')).toBe(0);
  });
});

test.each([
  ['nothing to change', [], 'say what is to be changed'],
  ['an unknown room', ['--warmer', 'workshp=+3K'], 'did you mean workshop?'],
  ['a difference without a unit', ['--warmer', 'workshop=+3'], 'has no unit'],
  ['an unknown kind of place', ['--station', 'workshop/rak=4'], 'did you mean rack?'],
  ['no number of places', ['--station', 'workshop/rack=0'], 'is no number of places'],
  ['no day', ['--open', 'saturday=08:00-12:00'], 'write a date like'],
  ['no pair', ['--slot', 'bench'], 'is not NAME=VALUE'],
  ['a material that is not used', ['--material', 'stool/seat/tar=hide-glue'], 'does not use "tar"'],
  ['a cost of nothing', ['--slot', 'bench=+1', '--cost', 'helper=4EUR'], 'there is no change "helper"'],
])('%s is the user’s to mend', async (_, words, said) => {
  await inShop({}, async (folder) => {
    const { code, out, err } = await drybench(['compare', ...words, ...at], { folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
  });
});
