import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** What findings name Drybench's own folder by. */
export const SHIPPED_LABEL = 'shipped/';
/** Where the recipes that come with Drybench stand under its own folder. */
export const SHIPPED_RECIPES = 'recipes';
/** Where the parts of recipes stand, in a shop as in Drybench's own folder. */
export const PARTS = 'recipes/parts';
/** Where the build leaves the recipes and materials that it has read: beside the built modules, not the sources. */
export const pressedFile = new URL('../pressed.json', import.meta.url);

/**
 * Drybench's own folder: the nearest one above this module that holds them beside a package.json. It is the same one whether the module runs
 * from `src`, from `dist` or from a build of the tests; the working folder has no say.
 */
export function shippedDir(moduleUrl: string = import.meta.url): string {
  let folder = dirname(fileURLToPath(moduleUrl));
  for (;;) {
    if (existsSync(join(folder, SHIPPED_RECIPES)) && existsSync(join(folder, 'package.json'))) return folder;
    const above = dirname(folder);
    if (above === folder) throw new Error('the recipes that come with Drybench are missing: install it again');
    folder = above;
  }
}

/** As its package.json says. */
export function shippedVersion(): string {
  const { version } = JSON.parse(readFileSync(join(shippedDir(), 'package.json'), 'utf8')) as { version: string };
  return version;
}
