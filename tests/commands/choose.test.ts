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
  ['10', []],
  ['l/s/', []],
  ['', ['body/coat-1', 'body/coat-10', 'legs/coat-1', 'legs/scuff']],
])('"%s" may mean %j', (word, ids) => {
  expect(meant(word, steps).map((c) => c.id)).toEqual(ids.map((id) => `washstand/${id}`));
});

const piece = (id: string): Choice => ({ id, keys: [id], alsoCalled: id.split('-'), label: id });

test.each([
  ['desk', ['writing-desk']],
  ['tab', ['oak-table', 'side-table']],
  ['oak', ['oak-table']],
  ['able', []],
])('the piece "%s" may be %j', (word, ids) => {
  const pieces = ['writing-desk', 'oak-table', 'side-table'].map(piece);
  expect(meant(word, pieces).map((c) => c.id)).toEqual(ids);
});
