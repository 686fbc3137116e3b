import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

export const SHOP_FILE = 'shop.yaml';

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
