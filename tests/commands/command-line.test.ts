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

test.each([
  ['an unknown command', ['wek'], 'Did you mean week?'],
  ['an unknown option', ['week', '--day', '3'], 'Did you mean --days?'],
  ['an option without its value', ['week', '--days'], 'argument missing'],
  ['a word too many', ['check', 'everything'], 'too many arguments'],
  ['a word too few', ['why'], "missing required argument 'piece'"],
])('%s is the user’s to mend', async (_, words, said) => {
  const { code, out, err } = await drybench(words);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(said);
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
