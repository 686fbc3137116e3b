import { cpSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from '../support/property.ts';
import { expect } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { expandPiece } from '../../src/model/expand.ts';
import { findingsScreen } from '../../src/reports/findings.ts';
import { harmless } from '../../src/terminal/harmless.ts';
import { lookOf } from '../../src/terminal/look.ts';
import { mutated, mutation, type Mutation } from './mutations.ts';
import { planOne } from './plan-of-book.ts';

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

const plain = await lookOf({ isTTY: false, columns: 80 }, {}, true);

/** Is there nothing in the text that could steer a terminal? */
export function expectHarmless(text: string): void {
  expect(text.match(/[^\n\P{Cc}]|[\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu)).toBeNull();
}

/** What a spoilt shop ended in. */
export type End = 'errors' | 'book' | 'plan' | 'none';

/** One way to spoil the shop; now and then a piece is planned, which takes longer than all the rest. */
export interface Spoiling {
  readonly file: string;
  readonly mutations: readonly Mutation[];
  readonly piece: string | undefined;
}

/**
 * Spoils a file of the shop, reads the shop, and puts the file back. It must end in a book that can be laid out and, where
 * `piece` is named, planned; or in errors with places; never in a throw.
 */
export function spoilAndRead(folder: string, { file, mutations, piece }: Spoiling): End {
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
    expectHarmless(findingsScreen(findings, plain, harmless));
    if (book === undefined) return 'errors';
    for (const each of book.pieces) expandPiece(book, each);
    return piece === undefined ? 'book' : planOne(book, piece);
  } finally {
    writeFileSync(path, original);
  }
}

export function spoiling(files: readonly string[]): fc.Arbitrary<Spoiling> {
  const pieces = files.flatMap((f) => /^pieces\/(.*)\.yaml$/.exec(f)?.[1] ?? []);
  return fc
    .record({
      file: fc.constantFrom(...files),
      mutations: fc.array(mutation, { minLength: 1, maxLength: 4 }),
      piece: fc.option(fc.constantFrom(...pieces), { nil: undefined, freq: 1 }),
      planned: fc.nat(5).map((n) => n === 0),
    })
    .map(({ file, mutations, piece, planned }) => {
      const own = /^pieces\/(.*)\.yaml$/.exec(file)?.[1];
      return { file, mutations, piece: planned ? (own ?? piece ?? pieces[0]) : undefined };
    });
}
