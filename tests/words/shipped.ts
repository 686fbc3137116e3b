import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { readKeys } from '../../src/files/shipped-words.ts';
import { root } from './sources.ts';

const folders = ['recipes', 'recipes/parts', 'shared/materials', 'shared/safety'];

/** Also what stands below a key that is shown. */
function textsIn(value: unknown, key: string): string[] {
  if (typeof value === 'string') return readKeys.has(key) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((item) => textsIn(item, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => textsIn(inner, name));
}

/** Ids that are shown as words where a shop gives them no name: supplies, ways of doing a step, tools. */
function idsIn(value: unknown, key: string): string[] {
  if (Array.isArray(value))
    return value.flatMap((item) => (typeof item === 'string' ? idsIn(item, key) : idsIn(item, '')));
  if (typeof value === 'string') {
    const words = value.replaceAll('-', ' ');
    if (key === 'tools') return [words.charAt(0).toUpperCase() + words.slice(1)];
    return key === 'supplies' ? [words] : [];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => [
    ...(key === 'ways' ? [name.replaceAll('-', ' ')] : []),
    ...idsIn(inner, name),
  ]);
}

/** Materials and supplies are called by their ids where they are not read. */
function ownIds(file: string, document: unknown): string[] {
  const material = /^shared\/materials\/(.*)\.yaml$/.exec(file)?.[1];
  const ids = file.endsWith('supplies.yaml')
    ? Object.keys((document as { readonly supplies: object }).supplies)
    : material === undefined
      ? []
      : [material];
  return ids.map((id) => id.replaceAll('-', ' '));
}

/** Every text of the shipped recipes, parts, materials, supplies and safety pages that is shown, with its file. */
export function shippedTexts(): { readonly file: string; readonly text: string }[] {
  const files = [
    'shared/supplies.yaml',
    ...folders.flatMap((folder) =>
      readdirSync(join(root, folder))
        .filter((name) => name.endsWith('.yaml'))
        .map((name) => `${folder}/${name}`),
    ),
  ];
  return files.flatMap((file) => {
    const document: unknown = parse(readFileSync(join(root, file), 'utf8'));
    return [...textsIn(document, ''), ...idsIn(document, ''), ...ownIds(file, document)].map((text) => ({
      file,
      text: text.trim(),
    }));
  });
}

/** As `translated` takes a text apart that it does not know as a whole. */
export const sentencesOf = (text: string): string[] => text.split(/(?<=[.!?]) +/);
