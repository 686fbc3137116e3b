import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { SHOP_FILE } from './shop-files.ts';

/** The folder at or above `from` that holds shop.yaml; undefined where none does. */
export function findShop(from: string): string | undefined {
  let folder = resolve(from);
  for (;;) {
    if (existsSync(join(folder, SHOP_FILE))) return folder;
    const above = dirname(folder);
    if (above === folder) return undefined;
    folder = above;
  }
}
