import { WHOLE } from '../model/expand.ts';
import { supplyOf } from '../model/supply.ts';
import { translated } from '../words/worded.ts';

/** What things are called, by id; what is unknown is called by its id. */
export interface Names {
  readonly piece: (id: string) => string;
  /** Empty for steps that concern the whole piece. */
  readonly section: (piece: string, section: string) => string;
  readonly room: (id: string) => string;
  readonly station: (id: string) => string;
  readonly hand: (id: string) => string;
  readonly tool: (id: string) => string;
  readonly recipe: (id: string) => string;
  /** Or of a supply; without what stands after a comma. */
  readonly material: (id: string) => string;
}

/** What of a book has names. */
export interface Named {
  readonly pieces: readonly (Called & { readonly sections: readonly Called[] })[];
  readonly shop: Readonly<Record<'rooms' | 'stations' | 'hands' | 'tools', readonly Called[]>>;
  readonly recipes: ReadonlyMap<string, Called>;
  readonly materials: ReadonlyMap<string, Called>;
  readonly supplies?: ReadonlyMap<string, Called>;
}

interface Called {
  readonly id: string;
  readonly name: string;
}

const called = ({ id, name }: Called): Called => ({ id, name });
const calledIn = (things: ReadonlyMap<string, Called>) =>
  new Map([...things].map(([id, thing]) => [id, called(thing)]));

/** Just the names: who makes them harmless need not look through all else. */
export function namedIn({ pieces, shop, recipes, materials, supplies }: Named): Named {
  return {
    pieces: pieces.map((piece) => ({ ...called(piece), sections: piece.sections.map(called) })),
    shop: {
      rooms: shop.rooms.map(called),
      stations: shop.stations.map(called),
      hands: shop.hands.map(called),
      tools: shop.tools.map(called),
    },
    recipes: calledIn(recipes),
    materials: calledIn(materials),
    ...(supplies && { supplies: calledIn(supplies) }),
  };
}

function namer(things: readonly Called[]): (id: string) => string {
  const names = new Map(things.map((thing) => [thing.id, thing.name]));
  return (id) => names.get(id) ?? id.replaceAll('-', ' ');
}

/** The id of a material or supply as words, a grade behind it: `abrasive 180`. */
function sayId(id: string): string {
  const [, words = id, grade = ''] = /^(.*?)( \d+)?$/.exec(id.replaceAll('-', ' ')) ?? [];
  return translated(words) + grade;
}

/** `Clean water, rinsed or sponged on` is `Clean water` where there is little room. */
function short(name: string): string {
  return name.split(', ')[0] ?? name;
}

export function namesOf(book: Named): Names {
  const sections = new Map(book.pieces.map((piece) => [piece.id, namer(piece.sections)]));
  const materials = new Map([...book.materials.values()].map(({ id, name }) => [id, short(name)]));
  return {
    piece: namer(book.pieces),
    section: (piece, section) => (section === WHOLE ? '' : (sections.get(piece)?.(section) ?? section)),
    room: namer(book.shop.rooms),
    station: namer(book.shop.stations),
    hand: namer(book.shop.hands),
    tool: namer(book.shop.tools),
    recipe: namer([...book.recipes.values()]),
    // Where the book was read without supplies, what has no name in it is one.
    material: (id) => materials.get(id) ?? supplyOf(book.supplies, id)?.name ?? sayId(id),
  };
}
