import { expect, test } from 'vitest';
import { meant, type Choice } from '../../src/commands/choose.ts';

const step = (section: string, name: string): Choice => ({
  id: `washstand/${section}/${name}`,
  keys: [name, `${section}/${name}`],
  label: name,
});
const steps = [step('body', 'coat-1'), step('body', 'coat-10'), step('legs', 'coat-1'), step('legs', 'scuff')];

test.each([
  ['scuff', ['legs/scuff']],
  ['s', ['legs/scuff']],
  ['SC', ['legs/scuff']],
  ['body/coat-1', ['body/coat-1']],
  ['coat-1', ['body/coat-1', 'legs/coat-1']],
  ['b/coat-10', ['body/coat-10']],
  ['body', []],
  ['cuff', []],
  ['l/s/', []],
  ['', ['body/coat-1', 'body/coat-10', 'legs/coat-1', 'legs/scuff']],
])('"%s" may mean %j', (word, ids) => {
  expect(meant(word, steps).map((c) => c.id)).toEqual(ids.map((id) => `washstand/${id}`));
});
