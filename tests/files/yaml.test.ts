import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { parseYaml } from '../../src/files/yaml/parse.ts';
import { nodeAt, plainOf, type Plain } from '../../src/files/yaml/tree.ts';
import { flowYaml, yamlLines } from '../../src/files/yaml/write.ts';

const read = (text: string) => parseYaml({ file: 'x.yaml', text });

function told(text: string): string[] {
  return read(text).findings.map((f) => `${f.place?.line ?? 0}:${f.place?.column ?? 0} ${f.code}`);
}

describe('hostile and broken text', () => {
  test.each<[string, string, string[]]>([
    ['an alias', 'a: &x 1\nb: *x', ['1:4 yaml-feature', '2:4 yaml-feature']],
    ['an alias bomb', 'a: &a [x]\nb: &b [*a, *a]\nc: [*b, *b]', Array(6).fill(expect.stringContaining('yaml-feature'))],
    ['a tag', 'a: !foo 1', ['1:4 yaml-feature']],
    ['a directive', '%YAML 1.2\n---\na: 1', ['1:1 yaml-feature']],
    ['two documents', 'a: 1\n---\nb: 2', ['2:1 several-documents']],
    ['a key twice', 'a: 1\nb: 2\na: 3', ['3:1 duplicate-key']],
    ['a prototype', 'ok: 1\n__proto__: { x: 1 }\nconstructor: 2', ['2:1 forbidden-name', '3:1 forbidden-name']],
    ['a key that is a map', '? { a: 1 }\n: 2', ['1:3 bad-key']],
    ['a tab', 'a:\n\tb: 1', ['2:1 yaml-syntax']],
    ['a quote left open', 'a: "x', ['1:4 yaml-syntax']],
    ['a bracket left open', 'a: [1,\nb: 2', ['1:4 yaml-syntax']],
    ['two colons', 'a: b: c', ['1:4 yaml-syntax']],
    ['a NUL', 'a: \u0000', ['1:4 yaml-syntax']],
    ['deep brackets', `a: ${'['.repeat(5000)}`, ['1:67 yaml-syntax']],
    ['deep keys', Array.from({ length: 100 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), ['65:65 yaml-syntax']],
    ['nothing', '', ['1:1 empty-file']],
    ['only a comment', '# x\n', ['1:1 empty-file']],
    ['a long text', `a: ${'x'.repeat(10_001)}`, ['1:4 too-long']],
    ['wide characters before the fault', 'a: { é😀: 1, é😀: 2 }', ['1:13 duplicate-key']],
    ['CRLF before the fault', 'a: 1\r\nb: 2\r\na: 3\r\n', ['3:1 duplicate-key']],
  ])('%s', (_, text, codes) => {
    expect(told(text)).toEqual(codes);
  });

  test('a merge key is a key like any other, and merges nothing', () => {
    const tree = read('<<: { a: 1 }').tree;
    expect(tree && plainOf(tree)).toEqual({ '<<': { a: '1' } });
  });

  test('twenty thousand keys, a million blanks and a third of a million doubled keys end', () => {
    const keys = Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join('\n');
    expect(read(keys).findings).toEqual([]);
    expect(read(' '.repeat(1_000_000)).findings).toHaveLength(1);
    expect(read('a:\n'.repeat(333_000)).findings).toHaveLength(100);
    expect(read(`x:\n${' '.repeat(900_000)}a: b: c\n`).findings).toHaveLength(1);
  });

  test('nothing reaches the prototype of all objects', () => {
    read('__proto__: { polluted: yes }');
    expect('polluted' in {}).toBe(false);
  });
});

test('every scalar stays the text that was written', () => {
  const tree = read('a: 010\nb: 1e999\nc: .nan\nd: 2027-03-14\ne: yes\nf: 12:30\ng: ~\nh:').tree;
  expect(tree && plainOf(tree)).toEqual({
    a: '010',
    b: '1e999',
    c: '.nan',
    d: '2027-03-14',
    e: 'yes',
    f: '12:30',
    g: '~',
    h: '',
  });
});

test('nodes know where they stand', () => {
  const text = 'a:\n  - b: "x y" # c\n    d: [1, 2 ]  \n';
  const tree = read(text).tree!;
  const cut = (path: (string | number)[]) => {
    const node = nodeAt(tree, path)!;
    return text.slice(node.start, node.end);
  };
  expect(cut(['a', 0, 'b'])).toBe('"x y"');
  expect(cut(['a', 0, 'd'])).toBe('[1, 2 ]');
  expect(cut(['a', 0, 'd', 1])).toBe('2');
});

const text = fc.oneof(
  fc.string({ maxLength: 20 }),
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.constantFrom(
    'yes',
    'no',
    'true',
    '~',
    'null',
    '18 °C',
    '65 %',
    'a: b',
    '- x',
    '# c',
    '"',
    "'",
    '2027-01-16T17:00',
  ),
);
// Names that the reader refuses, because they mean something to the language it is written in.
const refused = ['__proto__', 'prototype', 'constructor'];
const key = fc.string({ minLength: 1, maxLength: 10 }).filter((k) => !refused.includes(k));
const data = fc.letrec<{ node: Plain }>((tie) => ({
  node: fc.oneof(
    { maxDepth: 4 },
    text,
    fc.array(tie('node'), { maxLength: 4 }),
    fc.dictionary(key, tie('node'), { maxKeys: 4, noNullPrototype: true }),
  ),
})).node;

test('what is written is read again as the same, here and by another reader of YAML', () => {
  fc.assert(
    fc.property(
      fc.dictionary(key, data, { minKeys: 1, maxKeys: 5, noNullPrototype: true }),
      fc.boolean(),
      (value, flow) => {
        const written = flow ? flowYaml(value) : `${yamlLines(value).join('\n')}\n`;
        const tree = read(written);
        expect(tree.findings).toEqual([]);
        expect(plainOf(tree.tree!)).toEqual(value);
        expect(parse(written, { schema: 'failsafe' })).toEqual(value);
      },
    ),
    { numRuns: 500 },
  );
});
