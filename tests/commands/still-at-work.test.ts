import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop } from './small-shop.ts';

const recipe = `name: Scuffed and scuffed again
about: Invented for these tests.
source: common practice, no source
steps:
  - { step: scuff, do: Scuff it, stage: sand, time: { fixed: 20 min }, at: bench, may-pause: yes }
  - { step: again, do: Scuff it again, stage: sand, time: { fixed: 20 min }, at: bench, may-pause: yes }
`;

test('work that goes on after the shop has closed is planned around as it is', async () => {
  await inShop({ 'recipes/brushed.yaml': recipe }, async (folder) => {
    expect((await drybench(['begun', 'stool', 'scuff', '--at', '2027-01-11T16:00'], { folder })).code).toBe(0);
    const { code, out } = await drybench(['week', '--json', '--at', '2027-01-11T17:30'], { folder });
    const { steps } = JSON.parse(out) as { steps: { spans: { end: string }[] }[] };
    expect([code, steps[0]?.spans.at(-1)?.end]).toEqual([0, '2027-01-11T17:30:00+00:00']);
  });
});
