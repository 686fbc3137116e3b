import { readId } from '../files/quantities/plain.ts';

const longestId = 40;

/** `Old Pine Washstand` as `old-pine-washstand`; `otherwise` where no letter of the name can stand in an id. */
export function idFromName(name: string, otherwise: string): string {
  const plain = name.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();
  const id = plain
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, longestId)
    .replaceAll(/^-+|-+$/g, '');
  return readId(id).ok ? id : otherwise;
}

/** The id itself, or with the first number behind it that is not taken. */
export function freeId(wanted: string, taken: readonly string[]): string {
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? wanted : `${wanted.slice(0, longestId - 4).replace(/-+$/, '')}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
