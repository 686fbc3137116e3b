import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { editFile, writeNewFile } from '../../src/files/edit-file.ts';
import { editYaml, type Edit } from '../../src/files/edit-yaml.ts';
import { parseYaml } from '../../src/files/yaml/parse.ts';
import { nodeAt, plainOf, type Node, type Path } from '../../src/files/yaml/tree.ts';
import { emptyFolder, fill } from './shop-folder.ts';

const set = (path: Path, value: Edit['value']): Edit => ({ kind: 'set', path, value });
const append = (path: Path, value: Edit['value']): Edit => ({ kind: 'append', path, value });

function edited(text: string, edit: Edit): string {
  const result = editYaml({ file: 'x.yaml', text }, edit);
  return result.ok ? result.text : `refused: ${result.why}`;
}

const odd = `# a chair
name:   "Chair, old"      # the owner's word
cost: 0x1F
list:
    - one   # first
    - two

long: a long text that a writer of YAML would fold because it is longer than eighty characters
flow: { a: 1,   b: [x,  y ] }  # spaced by hand
quoted: 'it''s'
empty:
last: end`;

describe('one change touches one place', () => {
  test.each<[string, Edit, string, string]>([
    ['a plain value', set(['cost'], '45 EUR'), 'cost: 0x1F', 'cost: 45 EUR'],
    ['a value in double quotes', set(['name'], 'Stool'), '"Chair, old" ', '"Stool" '],
    ['a value in single quotes', set(['quoted'], "that's"), "'it''s'", "'that''s'"],
    ['a value that needs quotes', set(['cost'], 'a: b'), 'cost: 0x1F', 'cost: "a: b"'],
    ['a key between brackets', set(['flow', 'a'], '2, 3'), '{ a: 1,', '{ a: "2, 3",'],
    ['an item', set(['flow', 'b'], ['z']), '[x,  y ]', '[z]'],
    ['a new key between brackets', set(['flow', 'c'], { d: 'e' }), '[x,  y ] }', '[x,  y ], c: { d: e } }'],
    ['a value where none was', set(['empty'], 'full'), 'empty:', 'empty: full'],
    ['a map where none was', set(['empty', 'on'], 'full'), 'empty:', 'empty: { on: full }'],
    ['an item at the end', append(['list'], 'three'), '    - two\n', '    - two\n    - three\n'],
    ['an item with keys', append(['list'], { a: 'b', c: 'd' }), '    - two\n', '    - two\n    - a: b\n      c: d\n'],
    ['an item between brackets', append(['flow', 'b'], 'z'), 'y ]', 'y, z ]'],
    [
      'a new key',
      set(['lead-test'], { on: '2027-01-10', found: 'no' }),
      'last: end',
      'last: end\nlead-test:\n  on: 2027-01-10\n  found: no',
    ],
    ['a new list', append(['joins'], 'x'), 'last: end', 'last: end\njoins:\n  - x'],
  ])('%s', (_, edit, before, after) => {
    expect(odd.split(before)).toHaveLength(2);
    expect(edited(odd, edit)).toBe(odd.replace(before, () => after));
    const crlf = (text: string) => text.replaceAll('\n', '\r\n');
    expect(edited(crlf(odd), edit)).toBe(crlf(odd.replace(before, () => after)));
  });

  test('and the change taken back gives the file as it was', () => {
    const there = edited(odd, set(['cost'], '45 EUR'));
    expect(edited(there, set(['cost'], '0x1F'))).toBe(odd);
  });
});

test('what cannot be changed alone is refused', () => {
  expect(edited('a: |\n  text\nb: 1\n', set(['a'], 'x'))).toMatch(/^refused/);
  expect(edited('a:\n  - 1\nb: 1\n', set(['a'], 'x'))).toMatch(/^refused/);
  expect(edited('a: 1\na: 2\n', set(['b'], 'x'))).toMatch(/^refused/);
  expect(edited('- 1\n', set(['b'], 'x'))).toMatch(/^refused/);
  expect(edited('a: 1\n', append(['a'], 'x'))).toMatch(/^refused/);
});

function pathsOf(node: Node, above: Path = []): Path[] {
  if (node.kind === 'text') return [above];
  const children: Path[] =
    node.kind === 'list'
      ? node.items.flatMap((item, index) => pathsOf(item, [...above, index]))
      : node.entries.flatMap(({ key, value }) => pathsOf(value, [...above, key.text]));
  return [above, ...children];
}

const demo = ['shop.yaml', 'pieces/pine-washstand.yaml', 'pieces/blanket-box.yaml'].map((name) =>
  readFileSync(join('shared/demo', name), 'utf8'),
);

test('any value set anywhere in the files of the demo leaves all other lines as they are', () => {
  fc.assert(
    fc.property(fc.constantFrom(...demo), fc.nat(), fc.string({ maxLength: 30 }), (text, pick, value) => {
      const tree = parseYaml({ file: 'x', text }).tree!;
      const paths = pathsOf(tree).filter((p) => typeof p.at(-1) === 'string' && nodeAt(tree, p)?.kind === 'text');
      const path = paths[pick % paths.length]!;
      const result = editYaml({ file: 'x', text }, set(path, value));
      expect(result.ok).toBe(true);
      const after = result.ok ? result.text : '';
      const changed = text.split('\n').filter((line, index) => line !== after.split('\n')[index]);
      expect(changed.length).toBeLessThanOrEqual(1);
      const node = nodeAt(parseYaml({ file: 'x', text: after }).tree!, path);
      expect(node && plainOf(node)).toBe(value);
    }),
    { numRuns: 300 },
  );
});

test('a file keeps its byte-order mark, its line endings and its missing last newline', () => {
  const folder = emptyFolder();
  fill(folder, { 'pieces/chair.yaml': '\uFEFFname: Chair\r\ncost: 1 EUR' });
  expect(editFile(folder, 'pieces/chair.yaml', [set(['cost'], '2 EUR'), set(['kind'], 'chair')])).toEqual({ ok: true });
  expect(readFileSync(join(folder, 'pieces/chair.yaml'), 'utf8')).toBe(
    '\uFEFFname: Chair\r\ncost: 2 EUR\r\nkind: chair',
  );
});

test('of several changes all are made or none', () => {
  const folder = emptyFolder();
  fill(folder, { 'x.yaml': 'a: 1\nb: |\n  text\n' });
  const result = editFile(folder, 'x.yaml', [set(['a'], '2'), set(['b'], '3')]);
  expect(result).toMatchObject({ ok: false, finding: { code: 'cannot-edit' } });
  expect(readFileSync(join(folder, 'x.yaml'), 'utf8')).toBe('a: 1\nb: |\n  text\n');
});

test('a new file is written once, and never over another', () => {
  const folder = emptyFolder();
  writeNewFile(folder, 'pieces/stool.yaml', { name: 'Stool: small', sections: { seat: { area: '0.1 m2' } } });
  const text = 'name: "Stool: small"\nsections:\n  seat:\n    area: 0.1 m2\n';
  expect(readFileSync(join(folder, 'pieces/stool.yaml'), 'utf8')).toBe(text);
  expect(() => writeNewFile(folder, 'pieces/stool.yaml', { name: 'Other' })).toThrow('stool.yaml is there already');
  writeFileSync(join(folder, 'file'), '');
  expect(() => writeNewFile(folder, 'file/x.yaml', { name: 'Other' })).toThrow('cannot be written');
});
