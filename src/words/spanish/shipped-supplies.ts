import type { Wording } from '../worded.ts';

/** Supplies. */
export const shippedSupplies: Readonly<Record<string, Wording>> = {
  Abrasive: 'Abrasivo',
  Tape: 'Cinta',
  'Gloves in pairs': 'Guantes por pares',
  Rags: 'Trapos',
  'Lint-free cloths': 'Paños sin pelusa',
  'Tack cloths': 'Bayetas atrapapolvo',
  'Paint strainers': 'Coladores de pintura',
  'Masking paper': 'Papel de enmascarar',
  'Abrasive pads': 'Estropajos abrasivos',
  'Felt pads': 'Tacos de fieltro',
  'Oil pads': 'Almohadillas de aceite',
  'Coarse cloth for grain filler': 'Arpillera para tapaporos',
  'Paint stripper': 'Decapante',
  methanol: 'metanol',
  'Degreaser concentrate': 'Desengrasante concentrado',
  'Hardwood strip for runners': 'Listón de madera dura para guías',
  'Veneer leaves': 'Hojas de chapa',
  'Zip bags': 'Bolsas con cierre',
  'Mineral spirits': 'Aguarrás mineral',
  'Denatured alcohol': 'Alcohol desnaturalizado',
  'Lacquer thinner': 'Disolvente de laca',
  'Thinner of the two-part finish': 'Diluyente del acabado de dos componentes',
  Water: 'Agua',
};
