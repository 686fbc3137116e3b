import { faces, type Face } from '../faces.ts';
import { commonOptions } from '../program.ts';
import { choices } from './choices.ts';
import { phrase } from '../../words/worded.ts';

/** A word that fits, and what it is. */
export type Offered = readonly [word: string, about: string];

/** What may stand at a place of the command line. */
export type Kind =
  'command' | 'option' | 'piece' | 'step' | 'recipe' | 'hand' | 'change' | 'file' | 'folder' | 'choice' | 'free';

/** What is asked for at the end of a line, and what the line says before. */
export interface Asked {
  readonly kind: Kind;
  /** The beginning that is there. */
  readonly typed: string;
  readonly face?: Face;
  readonly choices?: readonly string[];
  /** Of the option whose value is being typed. */
  readonly flag?: string;
  /** Arguments before, as typed. */
  readonly words: readonly string[];
  /** Value of --shop. */
  readonly shop?: string;
}

type Flag = readonly [flags: string, about: string];

/** Help comes with every command, and alone. */
export const helpOption: Flag = ['--help', phrase('how it is used')];

/** The options that fit behind a command, or before any. */
export function optionsOf(face: Face | undefined): readonly Flag[] {
  return [...(face?.options ?? []), ...commonOptions, helpOption];
}

/** `<piece...>` → `piece` */
const bare = (word: string) => word.replaceAll(/[<>[\].]/g, '');

const named: Readonly<Record<string, Kind>> = {
  piece: 'piece',
  step: 'step',
  recipe: 'recipe',
  recipes: 'recipe',
  hand: 'hand',
  file: 'file',
  folder: 'folder',
  'room=difference': 'change',
  'room=humidity': 'change',
  'station=number': 'change',
};

function place(name: string, flag?: string): Pick<Asked, 'kind' | 'choices'> {
  const words = choices[flag ?? name];
  return words === undefined ? { kind: named[name] ?? 'free' } : { kind: 'choice', choices: words };
}

/** The option of that flag, if it takes a value: its name, and whether it takes several. */
function valueOf(
  face: Face | undefined,
  flag: string,
): { readonly name: string; readonly several: boolean } | undefined {
  const found = optionsOf(face).find(([flags]) => flags.split(' ')[0] === flag)?.[0];
  const value = found?.split(' ')[1];
  return value === undefined ? undefined : { name: bare(value), several: value.includes('...') };
}

/** What is asked for at the end of `line`, the words behind `drybench`, of which the last is being typed. */
export function askedOf(line: readonly string[]): Asked {
  const typed = line.at(-1) ?? '';
  let face: Face | undefined;
  let shop: string | undefined;
  let pending: string | undefined;
  let several: string | undefined;
  const words: string[] = [];
  for (const word of line.slice(0, -1)) {
    if (word.startsWith('-')) {
      const [flag = '', ...value] = word.split('=');
      const takes = valueOf(face, flag);
      if (flag === '--shop' && value.length > 0) shop = value.join('=');
      pending = takes !== undefined && value.length === 0 ? flag : undefined;
      several = takes?.several === true ? flag : undefined;
    } else if (pending !== undefined) {
      if (pending === '--shop') shop = word;
      pending = undefined;
    } else if (several !== undefined) continue;
    else if (face === undefined) face = faces.find((f) => f.name === word);
    else words.push(word);
  }
  const before = { typed, words, ...(face && { face }), ...(shop !== undefined && { shop }) };
  if (typed.startsWith('-')) return { kind: typed.includes('=') ? 'free' : 'option', ...before };
  const flag = pending ?? several;
  if (flag !== undefined) return { ...place(valueOf(face, flag)?.name ?? '', flag), flag, ...before };
  if (face === undefined) return { kind: 'command', ...before };
  const places = face.words?.split(' ') ?? [];
  const last = places.at(-1);
  const word = places[words.length] ?? (last?.includes('...') === true ? last : undefined);
  return { ...(word === undefined ? { kind: 'free' as const } : place(bare(word))), ...before };
}
