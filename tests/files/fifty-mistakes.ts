/** A mistake that someone makes in the files of the demo shop: in `file`, `from` (which stands there once) becomes `to`. */
export interface Mistake {
  readonly what: string;
  readonly file: string;
  readonly edit: { readonly from: string; readonly to: string } | { readonly whole: string };
}

const shop = 'shop.yaml';
const washstand = 'pieces/pine-washstand.yaml';
const table = 'pieces/oak-table.yaml';
const recipe = 'recipes/my-finish.yaml';
const paint = 'materials/my-paint.yaml';

const change = (what: string, file: string, from: string, to: string): Mistake => ({ what, file, edit: { from, to } });
const write = (what: string, file: string, whole: string): Mistake => ({ what, file, edit: { whole } });

const sand = `  - step: sand
    do: Sand with 180
    stage: sand
    time: 20 min
    at: bench
`;
const recipeWith = (steps: string) => `name: My finish\nsource: common practice, no source\nsteps:\n${steps}`;
const paintWith = (rest: string) => `name: My paint\nlike: oil-primer\nsource: common practice, no source\n${rest}`;

export const mistakes: readonly Mistake[] = [
  // Keys
  change('a misspelt key of the shop', shop, 'currency: EUR', 'curency: EUR'),
  change('a misspelt key of a piece', washstand, 'wanted-by:', 'wanted-bye:'),
  change('a misspelt key of a section', table, 'recipe: hardwax-oil, area:', 'recipe: hardwax-oil, aera:'),
  change('a key with a capital', table, 'kind: table', 'Kind: table'),
  change('a key with an underscore', washstand, 'may-carry-lead:', 'may_carry_lead:'),
  change('a key twice', table, 'cost: 140 EUR', 'cost: 140 EUR\nprice: 700 EUR'),
  change('a key that is needed left out', table, 'area: 1.8 m2, ', ''),
  change('a key of another file', table, 'kind: table', 'kind: table\nopening: { monday: 08:00-12:00 }'),
  // How it is written
  change('a tab before a key', shop, '  floor: {', '\tfloor: {'),
  change('a key indented too far', table, 'kind: table', '  kind: table'),
  change('a section indented less than the others', table, '  base: {', ' base: {'),
  change('no space after a colon', table, 'kind: table', 'kind:table'),
  change('no colon', table, 'kind: table', 'kind table'),
  change(
    'a bracket left open',
    washstand,
    'lead-test: { on: 2027-01-10, found: no }',
    'lead-test: { on: 2027-01-10, found: no',
  ),
  change('a quote left open', table, 'name: Oak table', 'name: "Oak table'),
  change('a colon inside a name', table, 'name: Oak table', 'name: Oak table: the big one'),
  change('typographic quotes around a number', table, 'area: 3.0 m2', 'area: “3.0 m2”'),
  change('a list where one thing stands', table, 'kind: table', 'kind: [table, chair]'),
  change('nothing after a key', table, 'price: 690 EUR', 'price:'),
  write('an empty file', 'pieces/stool.yaml', ''),
  // Amounts
  change('a missing unit', table, 'area: 3.0 m2', 'area: 3.0'),
  change('a comma for a decimal point', table, 'area: 3.0 m2', 'area: "3,0 m2"'),
  change('a unit of another kind', table, 'thickness: 28 mm', 'thickness: 28 kg'),
  change('a temperature without a number', shop, '"07:00": 20 °C', '"07:00": °C'),
  change('a temperature without a unit', shop, '"07:00": 20 °C', '"07:00": 20'),
  change('a negative area', table, 'area: 3.0 m2', 'area: -3.0 m2'),
  change('half a piece', table, 'items: 4', 'items: 4.5'),
  change('money without its currency', table, 'price: 690 EUR', 'price: 690'),
  change('money of another currency', table, 'price: 690 EUR', 'price: 690 USD'),
  change('a share above the whole', shop, 'safe-chance: 90 %', 'safe-chance: 190 %'),
  change('a word for a number', shop, 'kind: bench, slots: 1 }\n  bench-2', 'kind: bench, slots: one }\n  bench-2'),
  // Dates, times, hours
  change('a date of another form', table, 'arrives: 2027-01-09', 'arrives: 09/01/2027'),
  change('a day that no month has', table, 'arrives: 2027-01-09', 'arrives: 2027-02-30'),
  change('an hour that no day has', table, 'wanted-by: 2027-02-10T17:00', 'wanted-by: 2027-02-10T25:00'),
  change('wanted before it arrives', table, 'wanted-by: 2027-02-10T17:00', 'wanted-by: 2026-02-10T17:00'),
  change('opening hours reversed', shop, 'saturday: 09:00-13:00', 'saturday: 13:00-09:00'),
  change('opening hours that overlap', shop, 'monday: 08:00-12:30, 13:15-17:45', 'monday: 08:00-12:30, 12:15-17:45'),
  change('a misspelt day of the week', shop, 'sunday: closed', 'sonday: closed'),
  change('a time zone that there is not', shop, 'time-zone: Europe/Brussels', 'time-zone: Europe/Brusels'),
  // Names of other things
  change('a recipe that there is not', table, 'recipe: hardwax-oil', 'recipe: hard-wax-oil'),
  change('a material that there is not', washstand, 'material: low-tack-tape', 'material: low-tak-tape'),
  change(
    'a station in a room that there is not',
    shop,
    'garage-bench: { name: Garage bench, room: garage',
    'garage-bench: { name: Garage bench, room: barn',
  ),
  change('a kind of station that there is not', shop, 'kind: rack', 'kind: shelf'),
  change('a join at a section that there is not', washstand, 'after: legs/stain @ tape', 'after: feet/stain @ tape'),
  change('a join at a step that there is not', washstand, 'after: legs/stain @ tape', 'after: legs/stane @ tape'),
  change('a mark that there is not', washstand, 'after: legs/stain @ tape', 'after: legs/stain @ taped'),
  change('attached to itself', washstand, 'attached-to: body', 'attached-to: legs'),
  change('without a step that there is not', table, 'recipe: hardwax-oil,', 'recipe: hardwax-oil, without: [polish],'),
  change('a record of air that there is not', shop, 'air: air/garage.csv', 'air: air/garden.csv'),
  change('a price for what there is not', shop, 'rags: 6 EUR for 25', 'ragz: 6 EUR for 25'),
  // Recipes and materials of one's own
  write('a stage that there is not', recipe, recipeWith(sand.replace('stage: sand', 'stage: sanding'))),
  write(
    'a step that waits for a later one',
    recipe,
    recipeWith(`${sand}    after: coat\n  - step: coat
    do: Coat
    stage: coat
    time: 10 min
    at: bench
    material: hardwax-oil
    after: sand
`),
  ),
  write(
    'a recipe that never dries enough',
    recipe,
    recipeWith(`  - step: coat
    do: Coat
    stage: coat
    time: 10 min
    at: bench
    material: hardwax-oil
  - step: wrap
    do: Wrap it up
    stage: refit
    time: 10 min
    at: bench
    after: coat @ stack within 4 h
`),
  ),
  write('two steps of one name', recipe, recipeWith(sand + sand)),
  write('a tool that the shop has not', recipe, recipeWith(sand + '    tools: [belt-sander]\n')),
  write('a time left out', recipe, recipeWith(sand.replace('    time: 20 min\n', ''))),
  write('a material that is like itself', paint, paintWith('').replace('like: oil-primer', 'like: my-paint')),
  write('a spread the wrong way round', paint, paintWith('marks:\n  touch: 3 h [6 h - 1 h]\n')),
  write('a window that shuts before it opens', paint, paintWith('windows:\n  - { opens: 3 d, shuts: 1 d }\n')),
  // The record of the air
  write(
    'a record of air without a humidity',
    'air/garage.csv',
    'time,temp-c\n2027-01-11T00:00+01:00,5.5\n2027-01-11T01:00+01:00,5.4\n',
  ),
  write(
    'a reading that is no number',
    'air/garage.csv',
    'time,temp-c,rh-percent\n2027-01-11T00:00+01:00,cold,83\n2027-01-11T01:00+01:00,5.4,82\n',
  ),
];
