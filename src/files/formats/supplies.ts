import type { Provenance } from '../../model/material.ts';
import type { Quantity, QuantityUnit } from '../../model/quantity.ts';
import type { Supply } from '../../model/supply.ts';
import { present } from '../present.ts';
import { readId } from '../quantities/plain.ts';
import { listOf, namedBy } from '../shapes/collections.ts';
import { may, must, record } from '../shapes/record.ts';
import { refined, type ValueOf } from '../shapes/shape.ts';
import { OWN_FIGURES } from './recipe.ts';
import { nameFromId } from './shop.ts';
import { amount, name, sentence, solvent } from './values.ts';
import { vapourLimit, vapourLimitOf } from './vapour-limit.ts';
import { worded } from '../../words/worded.ts';

const fields = record('a supply', {
  name: may(name, 'name'),
  'per-step': may(amount, 'what each step takes that uses it'),
  'per-m2': may(amount, 'what it takes for each square metre'),
  'per-item': may(amount, 'what it takes for each item'),
  'per-tool-washed': may(amount, 'what washing up a tool takes of it'),
  'per-brush-washed': may(amount, 'what washing up a brush takes of it'),
  solvent: may(solvent, 'solvent vapour that it gives off'),
  'solvent-limit': may(vapourLimit, 'a published limit for its vapour, for the warning about fresh air'),
  packs: may(listOf(amount, 'sizes'), 'sizes that it is sold in'),
  source: may(sentence, 'where the figures come from'),
});

type WrittenSupply = ValueOf<typeof fields>;

function amountsIn(doc: WrittenSupply): Quantity[] {
  return [
    doc['per-step'],
    doc['per-m2'],
    doc['per-item'],
    doc['per-tool-washed'],
    doc['per-brush-washed'],
    ...(doc.packs ?? []),
  ].filter((q) => q !== undefined);
}

const supply = refined(fields, (doc, node, notes) => {
  const [first, ...others] = amountsIn(doc);
  if (first !== undefined && others.every((q) => q.unit === first.unit)) return { ...doc, unit: first.unit };
  notes.error(node, {
    code: 'mixed-units',
    message: first === undefined ? worded`a supply needs an amount` : worded`the amounts of a supply are of one unit`,
    advice: worded`write all as litres, all as metres, or all as numbers of pieces`,
  });
  return undefined;
});

export const suppliesShape = record('supplies.yaml', {
  source: may(sentence, 'where figures come from that name no other source'),
  supplies: must(namedBy(readId, supply, 'supplies'), 'supplies by id'),
});

export function suppliesOf(doc: ValueOf<typeof suppliesShape>): Supply[] {
  const source: Provenance = doc.source ?? OWN_FIGURES;
  return doc.supplies.map(({ key, value }) => supplyOf(key, value, source));
}

function supplyOf(id: string, doc: WrittenSupply & { readonly unit: QuantityUnit }, source: Provenance): Supply {
  return present({
    id,
    name: doc.name ?? nameFromId(id),
    unit: doc.unit,
    perStep: doc['per-step']?.value ?? 0,
    perM2: doc['per-m2']?.value ?? 0,
    perItem: doc['per-item']?.value ?? 0,
    perToolWashed: doc['per-tool-washed']?.value,
    perBrushWashed: doc['per-brush-washed']?.value,
    solventGPerL: doc.solvent,
    solventLimit: vapourLimitOf(doc['solvent-limit'], doc.source ?? source),
    packs: doc.packs ?? [],
    source: doc.source ?? source,
  });
}
