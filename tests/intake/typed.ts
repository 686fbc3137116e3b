/** What a person types to take in a table; one line for each question. */
export const typedTable: readonly string[] = [
  'Oak hall table', // name
  '', // short name
  '2', // table
  '110 x 40 x 78', // size
  '1', // drawers
  '2', // fittings
  '', // area of the top
  '0.8 m2', // of the base
  '', // of the drawer's box
  '', // of the fittings
  'oak',
  '2', // clear
  '3', // tested, none found
  '2027-01-05',
  '1, 4', // joints, gouges
  '', // joints where: the base
  '2', // gouges where: the base
  'hardwax-oil',
  'painted-brushed', // on the base
  'yes', // dark to light
  '2027-01-12', // arrives
  '2027-03-01',
  '60', // cost
  '320.50 EUR', // price
  'yes', // write it
];
