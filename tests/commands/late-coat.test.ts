import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop } from './small-shop.ts';

// A coat of shellac takes the next coat for 24 h (shared/materials/dewaxed-shellac.yaml); after that it is to be scuffed.
const recipe = `name: Sealed and painted
about: Invented for these tests.
source: common practice, no source
steps:
  - step: seal
    do: Seal with shellac
    stage: prime
    time: { fixed: 20 min }
    at: bench
    material: dewaxed-shellac
  - { step: paint, do: Brush a coat, stage: topcoat, time: { fixed: 40 min }, at: bench, material: chalk-type-paint }
`;

interface Why {
  readonly late: readonly { readonly coat: string; readonly remedy: string; readonly shuts: string }[];
}

test('a coat that misses its window: the remedy comes in by itself, and why tells of it; before that, how it can be spared', async () => {
  await inShop({ 'recipes/brushed.yaml': recipe }, async (folder) => {
    const tell = async (words: readonly string[], at: string) => {
      const { out, err } = await drybench([...words, '--at', at, '--plain'], { folder });
      if (out === '') throw new Error(err);
      return out;
    };
    const plainly = async (words: readonly string[], at: string) => (await tell(words, at)).replaceAll(/\s+/g, ' ');
    await tell(['done', 'stool', 'seal', '--from', '2027-01-11T07:00', '--to', '2027-01-11T07:20'], '2027-01-11T16:30');

    const why = JSON.parse(await tell(['why', 'stool', 'paint', '--json'], '2027-01-11T16:30')) as Why;
    expect(why.late).toMatchObject([{ coat: 'stool/seat/paint', shuts: '2027-01-12T07:20:00+00:00' }]);
    expect(await plainly(['why', 'stool', 'paint'], '2027-01-11T16:30')).toContain(
      'so who begins by then is spared it',
    );
    expect(await plainly(['today'], '2027-01-11T16:30')).toMatch(
      /^A window shuts within a day .*begun by tomorrow 07:20 is spared "Scuff/,
    );

    const missed = '2027-01-12T09:00';
    expect(await plainly(['week'], missed)).toMatch(/Scuff for the late coat.* misses the window of seat\/seal/);
    for (const step of ['paint', 'paint-scuff'])
      expect(await plainly(['why', 'stool', step], missed)).toContain(
        'has come in by itself: without it "Seal with shellac" takes the next coat until today 07:20 only',
      );
    expect(await plainly(['today'], missed)).not.toContain('A window shuts');
  });
});
