import { expect, it } from 'vitest';
import { adviseWord } from '../../src/files/suggest.ts';

it.each([
  ['sned', ['prime', 'sand', 'send'], 'did you mean send?'],
  // As many edits lead to the one as to the other: the one that is like it for longer.
  ['whole-piece-plane', ['whole-piece', 'whole-piece-alone', 'whole-piece-plain'], 'did you mean whole-piece-plain?'],
  ['Sand 120', ['sand-120', 'sand-180'], 'did you mean sand-120?'],
  ['varnish', ['prime', 'sand'], 'write one of prime, sand'],
  ['x', ['only'], 'write only'],
  ['x', [], 'there is none yet'],
])('"%s" among %j: %s', (word, known, advice) => {
  expect(adviseWord(word, known)).toBe(advice);
});
