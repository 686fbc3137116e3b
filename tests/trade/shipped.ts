import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { readBook } from '../../src/files/read-book.ts';
import type { Book } from '../../src/model/book.ts';
import { expandPiece } from '../../src/model/expand.ts';
import type { Material } from '../../src/model/material.ts';
import type { Recipe } from '../../src/model/recipe.ts';
import { type ChainStep, sectionSteps } from '../../src/model/section-steps.ts';
import type { Task } from '../../src/model/task.ts';

/** The folder that holds what is shipped. */
export const home = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** The demo shop, with all shipped recipes and materials, used or not. */
export const read = readBook(join(home, 'shared/demo'), { shippedDir: home, everything: true });

export function demo(): Book {
  if (read.book === undefined)
    throw new Error(read.findings.map((f) => `${f.place?.file}:${f.place?.line} ${f.message}`).join('\n'));
  return read.book;
}

export function recipe(id: string): Recipe {
  const found = demo().recipes.get(id);
  if (found === undefined) throw new Error(`there is no recipe ${id}`);
  return found;
}

/** The steps of a recipe with its coats counted out. */
export function steps(id: string): ChainStep[] {
  return sectionSteps(recipe(id).steps, { without: [] });
}

export function material(id: string | undefined): Material | undefined {
  return id === undefined ? undefined : demo().materials.get(id);
}

export function tasksOf(piece: string): readonly Task[] {
  const book = demo();
  const found = book.pieces.find((p) => p.id === piece);
  if (found === undefined) throw new Error(`there is no piece ${piece}`);
  return expandPiece(book, found);
}

export function task(id: string): Task {
  const found = tasksOf(id.split('/')[0] ?? '').find((t) => t.id === id);
  if (found === undefined) throw new Error(`there is no step ${id}`);
  return found;
}

/** Files of a shipped folder as plain data, by id. */
export function documents(folder: string): Map<string, Record<string, unknown>> {
  const files = readdirSync(join(home, folder)).filter((f) => f.endsWith('.yaml'));
  return new Map(
    files.map((f) => [
      f.slice(0, -'.yaml'.length),
      parse(readFileSync(join(home, folder, f), 'utf8')) as Record<string, unknown>,
    ]),
  );
}
