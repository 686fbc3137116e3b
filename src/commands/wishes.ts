import { readHoursOfDay } from '../files/quantities/clock.ts';
import { readPercent } from '../files/quantities/measure.ts';
import { readMoneyMinor } from '../files/quantities/money.ts';
import { readDifferenceK } from '../files/quantities/temperature.ts';
import { adviseWord } from '../files/suggest.ts';
import type { Book } from '../model/book.ts';
import type { Section } from '../model/piece.ts';
import { stationKinds } from '../model/shop.ts';
import { type Change } from '../planning/change.ts';
import type { Wish } from '../planning/compare.ts';
import { readTime } from '../time/zone.ts';
import { CannotGoOn, isFlagged, type Call } from './call.ts';
import { knownId, listFlag, pairOf, valueOf } from './flag-values.ts';
import { worded } from '../words/worded.ts';

/** Changes that may be asked for. */
type Asked = Exclude<Change['kind'], 'in' | 'tool' | 'arrives' | 'back' | 'room' | 'not-put-off' | 'skip'>;

/** What may be changed, in the order in which it is shown, with an example of each. */
const kinds: readonly (readonly [kind: Asked, example: string])[] = [
  ['warmer', 'garage=+3K'],
  ['drier', 'workshop=45%'],
  ['slot', 'bench-1=+1'],
  ['station', 'garage/rack=4'],
  ['open', '2027-01-16=08:00-16:00'],
  ['helper', '2027-01-16=08:00-12:00'],
  ['instead', 'washstand/body=painted-brushed'],
  ['material', 'washstand/body/oil-primer=bonding-primer'],
  ['without', 'washstand'],
];

/** Recipes and materials that the wishes name, which no piece may use yet: for reading them. */
export function namedInWishes(call: Call): { readonly recipes: string[]; readonly materials: string[] } {
  const last = (written: string) => written.slice(written.indexOf('=') + 1).trim();
  return { recipes: listFlag(call, 'instead').map(last), materials: listFlag(call, 'material').map(last) };
}

function dayOf(option: string, written: string): string {
  const time = readTime(written, 'UTC');
  if (time.ok && time.dateOnly) return written;
  throw new CannotGoOn(worded`${option} "${written}" is no date`, worded`write a date like 2027-01-16`);
}

function sectionOf(option: string, written: string, book: Book): { readonly piece: string; readonly section: Section } {
  const [pieceId = '', sectionId = ''] = written.split('/');
  const piece = knownId(option, pieceId, book.pieces);
  return { piece: piece.id, section: knownId(option, sectionId, piece.sections) };
}

function signed(text: string): string {
  return text.replace(/^\+ ?/, '');
}

function moreOf(option: string, value: string): number {
  if (/^[+-]?\d{1,2}$/.test(value) && Number(value) !== 0) return Number(value);
  throw new CannotGoOn(worded`${option} "${value}" is no number of places`, worded`write a whole number like +1`);
}

function placesOf(option: string, value: string): number {
  if (/^\d{1,2}$/.test(value) && Number(value) > 0) return Number(value);
  throw new CannotGoOn(worded`${option} "${value}" is no number of places`, worded`write a whole number like 4`);
}

function usedIn(section: Section, piece: string, book: Book): string[] {
  const joins = book.pieces.find((p) => p.id === piece)?.joins.filter((j) => j.section === section.id) ?? [];
  const steps = [...(book.recipes.get(section.recipe)?.steps ?? []), ...joins];
  return steps.flatMap((s) => [s, ...s.between]).flatMap((s) => s.material ?? []);
}

function changeOf(kind: Asked, written: string, example: string, book: Book): Change {
  const option = `--${kind}`;
  if (kind === 'without') return { kind, piece: knownId(option, written, book.pieces).id };
  const { name, value } = pairOf(option, written, example);
  const { shop } = book;
  switch (kind) {
    case 'warmer':
      return {
        kind,
        room: knownId(option, name, shop.rooms).id,
        byK: valueOf(option, value, readDifferenceK(signed(value))),
      };
    case 'drier':
      return {
        kind,
        room: knownId(option, name, shop.rooms).id,
        toRhPercent: valueOf(option, value, readPercent(value)),
      };
    case 'slot':
      return { kind, station: knownId(option, name, shop.stations).id, more: moreOf(option, value) };
    case 'station': {
      const [room = '', place = ''] = name.split('/');
      const kinds = stationKinds.map((id) => ({ id }));
      return {
        kind,
        room: knownId(option, room, shop.rooms).id,
        place: knownId(option, place, kinds).id,
        slots: placesOf(option, value),
      };
    }
    case 'open':
    case 'helper':
      return { kind, date: dayOf(option, name), spans: valueOf(option, value, readHoursOfDay(value)) };
    case 'instead': {
      const { piece, section } = sectionOf(option, name, book);
      if (!book.recipes.has(value))
        throw new CannotGoOn(
          worded`${option}: there is no recipe "${value}"`,
          adviseWord(value, [...book.recipes.keys()]),
        );
      return { kind, piece, section: section.id, recipe: value };
    }
    case 'material': {
      const slash = name.lastIndexOf('/');
      const { piece, section } = sectionOf(option, name.slice(0, Math.max(0, slash)), book);
      const old = name.slice(slash + 1);
      const used = usedIn(section, piece, book);
      if (!used.includes(old))
        throw new CannotGoOn(worded`${option}: ${piece}/${section.id} does not use "${old}"`, adviseWord(old, used));
      if (!book.materials.has(value))
        throw new CannotGoOn(
          worded`${option}: there is no material "${value}"`,
          adviseWord(value, [...book.materials.keys()]),
        );
      return { kind, piece, section: section.id, old, now: value };
    }
  }
}

function costsOf(call: Call, book: Book, names: readonly string[]): ReadonlyMap<string, number> {
  return new Map(
    listFlag(call, 'cost').map((written) => {
      const { name, value } = pairOf('--cost', written, 'helper=40EUR');
      if (!names.includes(name))
        throw new CannotGoOn(worded`--cost: there is no change "${name}"`, adviseWord(name, names));
      const spaced = value.replace(/(\d)(?=[A-Z])/, '$1 ');
      return [name, valueOf('--cost', value, readMoneyMinor(spaced, book.shop.currency))] as const;
    }),
  );
}

/**
 * The changes that were asked for, each a wish by itself; with `--together` all at once as well. A wish is called by its
 * option, the second of a kind `helper-2`.
 * @throws CannotGoOn where one makes no sense.
 */
export function wishesOf(call: Call, book: Book): Wish[] {
  const single = kinds.flatMap(([kind, example]) =>
    listFlag(call, kind).map((written, i): Wish => {
      const name = i === 0 ? kind : `${kind}-${i + 1}`;
      return { name, said: `${kind} ${written}`, changes: [changeOf(kind, written, example, book)] };
    }),
  );
  if (single.length === 0)
    throw new CannotGoOn(
      worded`say what is to be changed`,
      worded`for example --warmer garage=+3K or --helper 2027-01-16=08:00-12:00`,
    );
  const costs = costsOf(
    call,
    book,
    single.map((w) => w.name),
  );
  const priced = single.map((w): Wish => {
    const costMinor = costs.get(w.name);
    return costMinor === undefined ? w : { ...w, costMinor };
  });
  if (!isFlagged(call, 'together') || priced.length < 2) return priced;
  const all = priced.reduce((sum, w) => sum + (w.costMinor ?? 0), 0);
  const together = { name: 'together', said: worded`all together`, changes: priced.flatMap((w) => w.changes) };
  return [...priced, all > 0 ? { ...together, costMinor: all } : together];
}
