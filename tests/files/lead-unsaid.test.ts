import { expect, test } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { drybench } from '../commands/run-cli.ts';
import { inShop, pieceFile } from '../commands/small-shop.ts';

const sanded = (disturbs: string) =>
  `name: Sanded\nabout: Invented.\nsource: common practice, no source\nsteps:\n  - { step: scuff, do: Sand it, stage: sand, time: 30 min, disturbs-old-paint: ${disturbs} }\n`;

const codesOf = (says: string, disturbs: string) =>
  inShop({ 'pieces/stool.yaml': pieceFile('Stool') + says, 'recipes/brushed.yaml': sanded(disturbs) }, (folder) =>
    Promise.resolve(
      readBook(folder, { shippedDir: shippedDir() }).findings.map(
        (f) => `${f.place?.file ?? ''} ${f.severity} ${f.code}`,
      ),
    ),
  );

test('where old paint is disturbed, a piece says whether that may hold lead: silence opens no gate unseen', async () => {
  expect(await codesOf('', 'yes')).toEqual(['pieces/stool.yaml warning lead-unsaid']);
  expect(await codesOf('may-carry-lead: no\n', 'yes')).toEqual([]);
  expect(await codesOf('may-carry-lead: yes\n', 'yes')).toEqual([]);
  expect(await codesOf('', 'no')).toEqual([]);
});

test('it is said once where it matters: in check, and beside the work; not with every command', async () => {
  const files = { 'pieces/stool.yaml': pieceFile('Stool'), 'recipes/brushed.yaml': sanded('yes') };
  await inShop(files, async (folder) => {
    const about = async (...words: string[]) => {
      const { out, err } = await drybench([...words, '--shop', folder, '--at', '2027-01-11T07:30']);
      return [out, err].map((text) => text.split('may-carry-lead').length - 1);
    };
    expect(await about('check')).toEqual([1, 0]);
    expect(await about('week', '--look')).toEqual([1, 0]);
    expect(await about('today')).toEqual([1, 0]);
    for (const quiet of [['ready'], ['buy'], ['price'], ['why', 'stool', 'scuff']])
      expect([quiet, await about(...quiet)]).toEqual([quiet, [0, 0]]);
  });
});
