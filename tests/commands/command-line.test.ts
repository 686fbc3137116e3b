import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { drybench } from './run-cli.ts';

test('without a word it says what there is', async () => {
  const { code, out, err } = await drybench([]);
  expect(code).toBe(0);
  expect(out).toContain('week');
  expect(out).toContain('the label and safety data sheet');
  expect(err).toBe('');
});

test('help is an answer', async () => {
  const { code, out, err } = await drybench(['week', '--help']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('--days <number>');
  expect(out).toContain('--shop <folder>');
});

test('help on a terminal that does not know its width is that of 80 columns', async () => {
  for (const words of [['--help'], ['week', '--help']])
    expect(await drybench(words, { isTTY: true, columns: 0 })).toEqual(
      await drybench(words, { isTTY: true, columns: 80 }),
    );
});

test.each([[['--version']], [['week', '--version']]])('the version is an answer: %j', async (words) => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
  expect(await drybench(words)).toEqual({ code: 0, out: `drybench ${version}\n`, err: '' });
});

test.each([
  ['an unknown command', ['wek'], 'did you mean week?'],
  ['an unknown option', ['week', '--day', '3'], 'did you mean --days?'],
  ['an option without its value', ['week', '--days'], 'option "--days <number>" needs a value'],
  ['a word too many', ['check', 'everything'], 'check takes no word behind it'],
  ['words too many', ['why', 'a', 'b', 'c', 'd'], 'why takes 2 words behind it, and there are 4'],
  ['a word too few', ['why'], 'a word is missing: piece'],
])('%s is the user’s to mend', async (_, words, said) => {
  const { code, out, err } = await drybench(words);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(said);
  // As every other message: who speaks, why it cannot go on; then, indented, what to write.
  expect(err).toMatch(
    /^drybench: [^\n(]+\n {2}(did you mean|drybench (check|week|why) --help says what may be written)[^\n()]*\n$/,
  );
});

test('where no command is named, the advice is where to find one', async () => {
  expect((await drybench(['--frobnicate'])).err).toBe(
    'drybench: unknown option "--frobnicate"\n  drybench --help lists the commands; drybench COMMAND --help its options\n',
  );
});

test('what was typed is shown harmless', async () => {
  const { err } = await drybench(['\u001b[31mwek\u202e']);
  expect(err).toContain('\\u{1b}[31mwek\\u{202e}');
  expect(err).not.toContain('\u001b');
});

test('without a shop it says where it looked', async () => {
  const { code, out, err } = await drybench(['check']);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toBe(
    'drybench: there is no shop.yaml in this folder or above it\n' +
      '  go to the folder of your shop, or name it with --shop FOLDER\n',
  );
});
