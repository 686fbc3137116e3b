import { cpSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from '../support/property.ts';
import { expect } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { expandPiece } from '../../src/model/expand.ts';

const DEMO = 'shared/demo';

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesIn(path) : [path];
  });
}

const demoFiles = filesIn(DEMO).filter((f) => !f.endsWith('.md'));
const recipeFiles = filesIn('recipes').map((f) => join('own', f));
const materialFiles = filesIn('shared/materials');

/** A shop with the demo's pieces and, as its own, some of the recipes and materials: all of them can be spoilt. */
export function fillWithDemo(folder: string): string[] {
  cpSync(DEMO, folder, { recursive: true });
  cpSync('recipes', join(folder, 'recipes'), { recursive: true });
  cpSync('shared/materials', join(folder, 'materials'), { recursive: true });
  return [
    ...demoFiles.map((f) => f.slice(DEMO.length + 1)),
    ...recipeFiles.map((f) => f.slice('own/'.length)),
    ...materialFiles.map((f) => f.slice('shared/'.length)),
  ];
}

const spoilers: readonly string[] = [
  '',
  ' ',
  '\n',
  '\t',
  ':',
  ': ',
  '-',
  '- ',
  '[',
  ']',
  '{',
  '}',
  '"',
  "'",
  '#',
  '&a',
  '*a',
  '!x',
  '|',
  '>',
  '%',
  '@',
  ',',
  '\u0000',
  '\uFEFF',
  '\u2028',
  '😀',
  '\r\n',
  '0',
  '-1',
  '1e999',
  '.nan',
  '999999999999',
  '1/0',
  '~',
  'yes',
  'no',
  'closed',
  '__proto__',
  'constructor',
  'sand',
  'recoat',
  'whole',
  'body',
  'coat',
  'coat-1',
  'body/prime',
  'legs/stain @ tape',
  '2027-03-28T01:30',
  '0000-00-00',
  '9999-12-31',
  '24:00-00:00',
  '14 d',
  '0 min',
  '-4 h',
  '5 EUR',
  'water-borne',
  'none',
];

export type Mutation =
  | { readonly kind: 'insert' | 'replace'; readonly at: number; readonly length: number; readonly text: string }
  | {
      readonly kind: 'drop-line' | 'double-line' | 'swap-lines' | 'indent-line';
      readonly at: number;
      readonly other: number;
    }
  | { readonly kind: 'token'; readonly at: number; readonly text: string }
  | { readonly kind: 'byte'; readonly at: number; readonly value: number };

const at = fc.nat(1_000_000);
const text = fc.oneof(fc.constantFrom(...spoilers), fc.string({ maxLength: 12 }));

export const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({ kind: fc.constantFrom('insert' as const, 'replace' as const), at, length: fc.nat(20), text }),
  fc.record({
    kind: fc.constantFrom('drop-line' as const, 'double-line' as const, 'swap-lines' as const, 'indent-line' as const),
    at,
    other: at,
  }),
  fc.record({ kind: fc.constant('token' as const), at, text }),
  fc.record({ kind: fc.constant('byte' as const), at, value: fc.nat(255) }),
);

function mutatedLines(lines: string[], m: Extract<Mutation, { other: number }>): string[] {
  const i = m.at % lines.length;
  const j = m.other % lines.length;
  const line = lines[i] ?? '';
  switch (m.kind) {
    case 'drop-line':
      return lines.toSpliced(i, 1);
    case 'double-line':
      return lines.toSpliced(j, 0, line);
    case 'swap-lines':
      return lines.with(i, lines[j] ?? '').with(j, line);
    case 'indent-line':
      return lines.with(i, ' '.repeat(m.other % 9) + line.trimStart());
  }
}

export function mutated(bytes: Buffer, m: Mutation): Buffer {
  if (bytes.length === 0) return Buffer.from('x');
  if (m.kind === 'byte') {
    const copy = Buffer.from(bytes);
    copy[m.at % bytes.length] = m.value;
    return copy;
  }
  const source = bytes.toString('utf8');
  if ('other' in m) return Buffer.from(mutatedLines(source.split('\n'), m).join('\n'));
  if (m.kind === 'token') {
    const tokens = [...source.matchAll(/[^\s:,{}[\]]+/g)];
    const token = tokens[m.at % Math.max(1, tokens.length)];
    if (token === undefined) return bytes;
    return Buffer.from(source.slice(0, token.index) + m.text + source.slice(token.index + token[0].length));
  }
  const start = m.at % (source.length + 1);
  const end = m.kind === 'insert' ? start : start + m.length;
  return Buffer.from(source.slice(0, start) + m.text + source.slice(end));
}

/**
 * Spoils a file of the shop, reads the shop, and puts the file back. It must end in a book that can be laid out, or in
 * errors with places; never in a throw.
 */
export function spoilAndRead(folder: string, file: string, mutations: readonly Mutation[]): 'book' | 'errors' {
  const path = join(folder, file);
  const original = readFileSync(path);
  writeFileSync(path, mutations.reduce(mutated, original));
  try {
    const { book, findings } = readBook(folder, { shippedDir: shippedDir() });
    const errors = findings.filter((f) => f.severity === 'error');
    expect(book === undefined).toBe(errors.length > 0);
    for (const f of findings) {
      expect(f.place?.line).toBeGreaterThan(0);
      expect(f.place?.column).toBeGreaterThan(0);
      expect(f.message.length).toBeGreaterThan(0);
    }
    if (book === undefined) return 'errors';
    for (const piece of book.pieces) expandPiece(book, piece);
    return 'book';
  } finally {
    writeFileSync(path, original);
  }
}
