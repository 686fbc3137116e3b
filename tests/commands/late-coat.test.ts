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

const tellIn = (folder: string) => async (words: readonly string[], at: string) => {
  const { out, err } = await drybench([...words, '--at', at, '--plain'], { folder });
  if (out === '') throw new Error(err);
  return out;
};

interface Why {
  readonly late: readonly { readonly coat: string; readonly remedy: string; readonly shuts: string }[];
}

test('a coat that misses its window: the remedy comes in by itself, and why tells of it; before that, how it can be spared', async () => {
  await inShop({ 'recipes/brushed.yaml': recipe }, async (folder) => {
    const tell = tellIn(folder);
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

// One more coat of an aerosol enamel within the hour, or after one to two days (shared/materials/alkyd-aerosol-enamel.yaml).
const aerosol = `name: Sprayed from the can
about: Invented for these tests.
source: common practice, no source
steps:
  - { step: enamel, do: Spray thin, stage: topcoat, time: { fixed: 10 min }, at: bench, material: alkyd-aerosol-enamel, coats: 2 }
`;

test('a coat that the plan lets wait, though a window is still open: until when it can go on, and from when again', async () => {
  await inShop({ 'recipes/brushed.yaml': aerosol }, async (folder) => {
    const tell = tellIn(folder);
    await tell(['slip', 'stool', 'enamel-1', '2027-01-14T08:00'], '2027-01-11T08:00');
    await tell(['week'], '2027-01-11T08:00');
    await tell(
      ['done', 'stool', 'enamel-1', '--from', '2027-01-11T09:00', '--to', '2027-01-11T09:10'],
      '2027-01-11T09:10',
    );
    const screen = async (at: string) => (await tell(['today'], at)).replaceAll(/\s+/g, ' ');
    expect(await screen('2027-01-11T09:15')).toMatch(
      /^A window shuts within a day .*coat 2" can go on until today (09|10):\d\d, and again from Wed 13 Jan .*; planned Thu 14 Jan/,
    );
    expect(await screen('2027-01-11T10:30')).not.toContain('A window shuts');
    const { earlyWindows } = JSON.parse(await tell(['today', '--json'], '2027-01-11T09:15')) as {
      readonly earlyWindows: readonly { readonly coat: string; readonly film: string }[];
    };
    expect(earlyWindows).toMatchObject([{ coat: 'stool/seat/enamel-2', film: 'stool/seat/enamel-1' }]);
  });
});
