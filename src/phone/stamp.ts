import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** What a shop is planned from. Its own outputs (`calendar.json`) are left out. */
const planned = ['shop.yaml', 'journal.jsonl', 'plan.json', 'pieces', 'recipes', 'materials', 'air'];

async function stampOf(path: string): Promise<string[]> {
  const found = await stat(path, { bigint: true }).catch(() => undefined);
  if (found === undefined) return [`${path} none`];
  const own = `${path} ${found.mtimeNs} ${found.size} ${found.ino}`;
  if (!found.isDirectory()) return [own];
  const names = await readdir(path).catch(() => []);
  return [own, ...(await Promise.all(names.sort().map((name) => stampOf(join(path, name))))).flat()];
}

/** A text that changes whenever a file of the shop does: in time, size or identity. */
export async function stampOfShop(folder: string): Promise<string> {
  return (await Promise.all(planned.map((name) => stampOf(join(folder, name))))).flat().join('\n');
}
