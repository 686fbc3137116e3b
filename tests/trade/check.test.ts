import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { home } from './shipped.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drybench-trade-'));
  cpSync(join(home, 'shared/demo'), folder, { recursive: true });
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

describe('a shop whose piece breaks the order of the trade', () => {
  it('is warned at the place, and still planned', () => {
    const file = join(folder, 'pieces/writing-desk.yaml');
    const written = readFileSync(file, 'utf8');
    const line = written.split('\n').findIndex((l) => l.includes('recipe: clear-water-borne')) + 1;
    writeFileSync(
      file,
      written.replace('recipe: clear-water-borne,', 'recipe: clear-water-borne, without: [grain-raise],'),
    );
    const { book, findings } = readBook(folder, { shippedDir: home });
    expect(findings).toMatchObject([
      {
        code: 'grain-not-raised',
        severity: 'warning',
        message: expect.stringContaining('desk/clear-1') as string,
        place: { file: 'pieces/writing-desk.yaml', line },
      },
    ]);
    expect(book?.pieces).toHaveLength(8);
  });
});
