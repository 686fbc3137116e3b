import type { Material, Provenance } from './material.ts';
import type { Quantity, QuantityUnit } from './quantity.ts';
import { worded } from '../words/worded.ts';

/** What work uses up beside its films: abrasives, tape, cloths, strainers, thinner. */
export interface Supply {
  readonly id: string;
  readonly name: string;
  readonly unit: QuantityUnit;
  /** How much of it one step takes: `perStep + perM2 × area + perItem × items`, in its unit. */
  readonly perStep: number;
  readonly perM2: number;
  readonly perItem: number;
  /** What washing up takes of it: a tool that has a wash-up, or a brush. */
  readonly perToolWashed?: number;
  readonly perBrushWashed?: number;
  /** Grams of vapour a litre gives off, and a published limit for it, for the warning about fresh air. */
  readonly solventGPerL?: number;
  readonly solventLimit?: Material['solventLimit'];
  /** What it is sold in; empty: it is not bought. */
  readonly packs: readonly Quantity[];
  readonly source: Provenance;
}

/** Stands for the abrasives of all grits, `abrasive-120` and the like. */
export const ABRASIVE = 'abrasive';
/** Stands for the tapes, whose rolls are the containers of their own material. */
export const TAPE = 'tape';
export const GLOVES = 'gloves';
export const RAGS = 'rags';

export function abrasiveId(grit: number): string {
  return `${ABRASIVE}-${grit}`;
}

/** The supply that an id of stock or prices means. */
export function supplyOf<S extends Pick<Supply, 'id' | 'name'>>(
  supplies: ReadonlyMap<string, S> | undefined,
  id: string,
): S | undefined {
  const known = supplies?.get(id);
  if (known !== undefined) return known;
  const grit = /^abrasive-(\d{1,5})$/.exec(id)?.[1];
  const abrasive = grit === undefined ? undefined : supplies?.get(ABRASIVE);
  return abrasive && { ...abrasive, id, name: worded`${abrasive.name} grit ${grit ?? ''}` };
}

/** Tape is bought by the metre, all else that is laid on by the litre. */
export function unitOfMaterial({ family }: Pick<Material, 'family'>): QuantityUnit {
  return family === 'tape' ? 'm' : 'L';
}

/** The unit that a material or supply is counted in; undefined where there is neither. */
export function boughtIn(
  book: {
    readonly materials: ReadonlyMap<string, Material>;
    readonly supplies?: ReadonlyMap<string, Supply>;
  },
  id: string,
): QuantityUnit | undefined {
  const material = book.materials.get(id);
  return material === undefined ? supplyOf(book.supplies, id)?.unit : unitOfMaterial(material);
}
