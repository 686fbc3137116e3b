import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { shippedDir } from '../../src/files/shipped.ts';
import { drybench } from '../commands/run-cli.ts';
import { type Mistake, mistakes } from './fifty-mistakes.ts';

// What `check` says of each mistake stands in fifty-mistakes.txt, to be read aloud. DRYBENCH_WRITE_MISTAKES=1 writes it anew.

const told = join(import.meta.dirname, 'fifty-mistakes.txt');
const writing = process.env['DRYBENCH_WRITE_MISTAKES'] === '1';
const answers = new Map(
  (writing ? '' : readFileSync(told, 'utf8'))
    .split(/^=== /m)
    .slice(1)
    .map((part): [string, string] => {
      const end = part.indexOf('\n');
      return [part.slice(0, end), part.slice(end + 1)];
    }),
);

const shop = mkdtempSync(join(tmpdir(), 'drybench-mistakes-'));
cpSync(join(shippedDir(), 'shared/demo'), shop, { recursive: true });
const written: string[] = [];
afterAll(() => {
  rmSync(shop, { recursive: true });
  if (writing) writeFileSync(told, written.join(''));
});

/** Makes the mistake; what it answers takes it back. */
function make({ file, edit }: Mistake): () => void {
  const path = join(shop, file);
  if ('whole' in edit) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, edit.whole);
    return () => {
      rmSync(path);
    };
  }
  const before = readFileSync(path, 'utf8');
  expect(before.split(edit.from).length, `"${edit.from}" stands in ${file} once`).toBe(2);
  writeFileSync(
    path,
    before.replace(edit.from, () => edit.to),
  );
  return () => {
    writeFileSync(path, before);
  };
}

test('there are fifty and more', () => {
  expect(new Set(mistakes.map((m) => m.what)).size).toBeGreaterThanOrEqual(50);
});

test.each(mistakes)('one message says what is wrong: $what', async (mistake) => {
  const undo = make(mistake);
  const { code, out, err } = await drybench(['check', '--shop', shop], { columns: 100 });
  undo();
  written.push(`=== ${mistake.what}\n${out}`);
  expect(code).toBe(2);
  expect(err).toBe('');
  expect(out.match(/: error: /g)).toHaveLength(1);
  expect(out).toMatch(/^\S+:\d+:\d+: error: /);
  if (!writing) expect(out).toBe(answers.get(mistake.what));
});
