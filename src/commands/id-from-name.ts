import { readId } from '../files/quantities/plain.ts';

const longestId = 40;

/** Windows keeps these names for devices, whatever ending a file has (its documentation, "Naming Files, Paths, and Namespaces"). */
const devices = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** Is there a system on which no file can be called so? */
export function isNoFileName(id: string): boolean {
  return devices.test(id);
}

/** `Old Pine Washstand` as `old-pine-washstand`; `otherwise` where no letter of the name can stand in an id. */
export function idFromName(name: string, otherwise: string): string {
  const plain = name.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();
  const id = plain
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, longestId)
    .replaceAll(/^-+|-+$/g, '');
  if (isNoFileName(id)) return `${otherwise}-${id}`;
  return readId(id).ok ? id : otherwise;
}

/** The id itself, or with the first number behind it that is not taken. */
export function freeId(wanted: string, taken: readonly string[]): string {
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? wanted : `${wanted.slice(0, longestId - 4).replace(/-+$/, '')}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
