import { USUAL_THICKNESS_MM, type Piece, type Section } from '../../model/piece.ts';
import { readId } from '../quantities/plain.ts';
import { type Read } from '../quantities/read.ts';
import { listOf, namedBy, oneOrMany } from '../shapes/collections.ts';
import { may, must, record } from '../shapes/record.ts';
import type { ValueOf } from '../shapes/shape.ts';
import { present } from '../present.ts';
import { staysAway } from './dated.ts';
import { joinShape, OWN_FIGURES, stepOf } from './recipe.ts';
import { nameFromId } from './shop.ts';
import { areaM2, id, ids, instant, lengthMm, money, name, whole, yesNo } from './values.ts';
import { worded } from '../../words/worded.ts';

function readSectionId(text: string): Read<string> {
  return text === 'whole'
    ? { ok: false, why: worded`is kept for the steps of the whole piece`, write: worded`choose another word` }
    : readId(text);
}

const slot = record('a part', {
  part: must(id, 'id of the part'),
  before: may(id, 'step of the recipe that it comes before'),
  after: may(id, 'step of the recipe that it comes after'),
});

const section = record('a section', {
  name: may(name, 'name'),
  recipe: must(id, 'id of its recipe'),
  area: must(areaM2, 'area to be coated, like 0.9 m2 or 12 sq ft'),
  items: may(whole(1, 1000), 'how many alike; 1 if left out'),
  'attached-to': may(id, 'section that it cannot be taken off'),
  thickness: may(lengthMm, 'of the wood; 19 mm if left out'),
  materials: may(namedBy(readId, id, 'materials'), "the recipe's material, and the one to use instead"),
  without: may(ids, 'steps of the recipe to leave out'),
  with: may(oneOrMany(slot, 'parts'), 'parts to slot into the recipe; at its beginning where neither is named'),
  away: may(staysAway, 'stays with somebody else, like an upholsterer'),
});

const leadTest = record('a lead test', {
  on: must(instant('first'), 'day of the test'),
  found: must(yesNo, 'was lead found'),
});

export const pieceShape = record('a piece', {
  name: must(name, 'name'),
  kind: may(name, 'what it is: table, chair'),
  arrives: may(instant('first'), 'in the shop from then on'),
  'wanted-by': may(instant('last'), 'day or time that it is wanted by'),
  price: may(money, 'price hoped for'),
  cost: may(money, 'what it cost'),
  'may-carry-lead': may(yesNo, 'old paint that may hold lead: no sanding before its test'),
  'lead-test': may(leadTest, 'the test, once it is done'),
  whole: may(id, 'recipe of the steps before and after all sections'),
  sections: must(namedBy(readSectionId, section, 'sections'), 'its parts by id'),
  away: may(staysAway, 'stays of all of it with somebody else, like an upholsterer'),
  joins: may(listOf(joinShape, 'joining steps'), 'steps that join two sections'),
});

type WrittenPiece = ValueOf<typeof pieceShape>;
type WrittenSection = ValueOf<typeof section>;

function sectionOf(id: string, doc: WrittenSection): Section {
  return present({
    id,
    name: doc.name ?? nameFromId(id),
    recipe: doc.recipe,
    areaM2: doc.area,
    items: doc.items ?? 1,
    attachedTo: doc['attached-to'],
    thicknessMm: doc.thickness ?? USUAL_THICKNESS_MM,
    materials: Object.fromEntries((doc.materials ?? []).map(({ key, value }) => [key, value])),
    without: doc.without ?? [],
    with: doc.with,
    away: doc.away,
  });
}

export function pieceOf(id: string, doc: WrittenPiece): Piece {
  const test = doc['lead-test'];
  return present({
    id,
    name: doc.name,
    kind: doc.kind ?? '',
    arrives: doc.arrives,
    wantedBy: doc['wanted-by'],
    priceMinor: doc.price ?? 0,
    costMinor: doc.cost ?? 0,
    mayCarryLead: doc['may-carry-lead'] ?? false,
    leadUnsaid: doc['may-carry-lead'] === undefined ? (true as const) : undefined,
    leadTest: test && { minute: test.on, found: test.found },
    sections: doc.sections.map(({ key, value }) => sectionOf(key, value)),
    away: doc.away,
    whole: doc.whole,
    joins: (doc.joins ?? []).map((join) => ({ section: join.section, ...stepOf(join, OWN_FIGURES) })),
  });
}
