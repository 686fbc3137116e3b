import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { realDisk } from './disk.ts';
import { readDocument } from './document.ts';
import { materialShape } from './formats/material.ts';
import { recipeShape } from './formats/recipe.ts';
import { listIds } from './list-ids.ts';
import { hashOf, type Pressed, type PressedFiles } from './pressed.ts';
import { readSource, YAML_CAP, type Folder } from './read-source.ts';
import type { Notes, Shape } from './shapes/shape.ts';
import { PARTS, SHIPPED_LABEL, SHIPPED_RECIPES } from './shipped.ts';

/** Shops differ in these: what reads otherwise for another shop is not pressed. */
const shops = [
  { zone: 'UTC', currency: 'EUR' },
  { zone: 'America/Chicago', currency: 'JPY' },
] as const satisfies readonly Pick<Notes, 'zone' | 'currency'>[];

function pressedFile<T>(folder: Folder, name: string, shape: Shape<T>): [string, Pressed][] {
  const read = readSource(realDisk, folder, name, YAML_CAP);
  if (!read.ok) return [];
  const [one, other] = shops.map((settings) => readDocument(read.source, shape, () => settings).value);
  const value: unknown = one === undefined ? undefined : JSON.parse(JSON.stringify(one));
  const same = one !== undefined && isDeepStrictEqual(one, other) && isDeepStrictEqual(one, value);
  return same ? [[read.source.file, { hash: hashOf(read.source), value }]] : [];
}

/** Reads the recipes, their parts and the materials in Drybench's own folder, for `pressedIn`. */
export function press(shippedDir: string): PressedFiles {
  const recipes: Folder = { path: shippedDir, label: SHIPPED_LABEL };
  const materials: Folder = { path: join(shippedDir, 'shared'), label: SHIPPED_LABEL };
  const all = <T>(folder: Folder, sub: string, shape: Shape<T>) =>
    listIds(realDisk, folder, sub).ids.flatMap((id) => pressedFile(folder, `${sub}/${id}.yaml`, shape));
  return Object.fromEntries([
    ...all(recipes, SHIPPED_RECIPES, recipeShape),
    ...all(recipes, PARTS, recipeShape),
    ...all(materials, 'materials', materialShape),
  ]);
}
