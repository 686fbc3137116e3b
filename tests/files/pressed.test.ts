import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';
import { readDocument } from '../../src/files/document.ts';
import { materialShape } from '../../src/files/formats/material.ts';
import { recipeShape } from '../../src/files/formats/recipe.ts';
import { listIds } from '../../src/files/list-ids.ts';
import { press } from '../../src/files/press.ts';
import { pressedIn } from '../../src/files/pressed.ts';
import { readSource, YAML_CAP, type Folder } from '../../src/files/read-source.ts';
import { PARTS, SHIPPED_RECIPES, shippedDir } from '../../src/files/shipped.ts';
import { nearestNode } from '../../src/files/yaml/tree.ts';

const folder = mkdtempSync(join(tmpdir(), 'drybench-pressed-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const home: Folder = { path: shippedDir(), label: 'shipped/' };
const shared: Folder = { path: join(shippedDir(), 'shared'), label: 'shipped/' };
const shelves = [
  { folder: home, sub: SHIPPED_RECIPES, shape: recipeShape },
  { folder: home, sub: PARTS, shape: recipeShape },
  { folder: shared, sub: 'materials', shape: materialShape },
] as const;

describe('what the build has read', () => {
  const path = join(folder, 'pressed.json');
  writeFileSync(path, JSON.stringify(press(shippedDir())));
  const take = pressedIn(pathToFileURL(path));

  for (const { folder: from, sub, shape } of shelves)
    for (const id of listIds(realDisk, from, sub).ids)
      it(`is what the file says: ${sub}/${id}`, () => {
        const read = readSource(realDisk, from, `${sub}/${id}.yaml`, YAML_CAP);
        if (!read.ok) throw new Error(read.finding.message);
        const fresh = readDocument<unknown>(read.source, shape, () => ({ zone: 'Europe/Brussels', currency: 'EUR' }));
        const pressed = take(read.source);
        expect(pressed?.value).toStrictEqual(fresh.value);
        expect(pressed?.file?.tree).toStrictEqual(fresh.file?.tree);
        expect(nearestNode(pressed!.file!.tree, ['name']).start).toBeGreaterThan(0);
      });

  it('is not taken for a file that has changed since', () => {
    const read = readSource(realDisk, home, `${SHIPPED_RECIPES}/painted-sprayed.yaml`, YAML_CAP);
    if (!read.ok) throw new Error(read.finding.message);
    expect(take(read.source)).toBeDefined();
    expect(take({ ...read.source, text: `${read.source.text}\n` })).toBeUndefined();
    expect(take({ ...read.source, file: 'recipes/painted-sprayed.yaml' })).toBeUndefined();
  });

  it('is nothing where nothing was built', () => {
    const read = readSource(realDisk, home, `${SHIPPED_RECIPES}/painted-sprayed.yaml`, YAML_CAP);
    if (!read.ok) throw new Error(read.finding.message);
    expect(pressedIn(pathToFileURL(join(folder, 'none.json')))(read.source)).toBeUndefined();
  });
});
