import { expect, test } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
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
