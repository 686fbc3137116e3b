import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop } from './small-shop.ts';

const at = ['--at', '2027-01-11T07:30'];

interface Promised {
  readonly format: string;
  readonly kept: boolean;
  readonly by: string;
  readonly offer: { readonly ready: { readonly safe: string }; readonly delayed: readonly { readonly id: string }[] };
  readonly sooner?: { readonly ready: { readonly safe: string }; readonly delayed: readonly { readonly id: string }[] };
}

test('a date far off can be promised, one too near cannot: exit code 1 and the soonest that can', async () => {
  await inShop({}, async (folder) => {
    const far = await drybench(['promise', 'brushed', '--by', '2027-03-01', '--json', ...at], { folder });
    const promised = JSON.parse(far.out) as Promised;
    expect({ code: far.code, kept: promised.kept, format: promised.format }).toEqual({
      code: 0,
      kept: true,
      format: 'drybench.promise/1',
    });
    expect(promised.by).toBe('2027-03-01T23:59:00+00:00');
    expect(promised.offer.delayed).toEqual([]);
    const near = await drybench(['promise', 'brushed', '--by', '2027-01-11', '--json', ...at], { folder });
    const refused = JSON.parse(near.out) as Promised;
    expect({ code: near.code, kept: refused.kept }).toEqual({ code: 1, kept: false });
    expect(refused.offer.ready.safe > refused.by).toBe(true);
    // What is offered can be had: promised by just that hour, it is kept.
    const by = refused.offer.ready.safe.slice(0, 16);
    const asked = await drybench(['promise', 'brushed', '--by', by, ...at], { folder });
    expect(asked.code).toBe(0);
    expect(asked.out).toContain('Yes: ready by');
  });
});

test.each([
  ['no date', ['promise', 'brushed'], 'write --by'],
  ['an unknown recipe', ['promise', 'brushd', '--by', '2027-03-01'], 'did you mean brushed?'],
  ['an area without a unit', ['promise', 'brushed', '--by', '2027-03-01', '--area', '2'], '--area "2"'],
  [
    'areas that do not fit',
    ['promise', 'brushed', '--by', '2027-03-01', '--area', '2 m2, 1 m2'],
    '2 values for 1 recipes',
  ],
])('%s is the user’s to mend', async (_, words, said) => {
  await inShop({}, async (folder) => {
    const { code, out, err } = await drybench([...words, ...at], { folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
  });
});
