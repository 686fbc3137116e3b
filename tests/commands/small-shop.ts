import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export const shopFile = `name: Quay workshop
time-zone: Europe/Dublin
units: metric
clock: 24
week-starts-on: monday
currency: EUR
safe-chance: 90 %
opening:
  monday: 08:00-17:00
  tuesday: 08:00-17:00
  wednesday: 08:00-17:00
  thursday: 08:00-17:00
  friday: 08:00-17:00
  saturday: closed
  sunday: closed
rooms:
  workshop:
    name: Workshop
    air: { constant: { temp: 20 °C, rh: 50 % } }
  shed:
    name: Shed
    air: { constant: { temp: 4 °C, rh: 90 % } }
stations:
  bench: { room: workshop, kind: bench, slots: 2 }
hands:
  owner:
    name: Owner
    skills: []
`;

const recipe = `name: Painted with a brush
about: Invented for these tests.
source: common practice, no source
steps:
  - step: scuff
    do: Scuff the old varnish
    stage: sand
    time: { fixed: 30 min }
    at: bench
    grit: 180
  - step: wipe
    do: Wipe the dust off
    stage: clean
    time: { fixed: 10 min }
    at: bench
    supplies: [tack-cloth]
  - step: paint
    do: Brush a thin even coat
    stage: topcoat
    time: { fixed: 40 min }
    at: bench
    material: water-borne-acrylic-enamel
    coats: 2
`;

/** A piece of one section; `name` goes into the file as it stands. */
export const pieceFile = (name: string) => `name: ${name}
kind: stool
price: 90 EUR
cost: 10 EUR
sections:
  seat: { recipe: brushed, area: 0.4 m2, thickness: 18 mm }
`;

const smallShop: Readonly<Record<string, string>> = {
  'shop.yaml': shopFile,
  'recipes/brushed.yaml': recipe,
  'pieces/stool.yaml': pieceFile('Milking stool'),
};

/** Writes the files of a shop into a folder of its own, and gives them to `use`; then takes the folder away. */
export async function inShop<T>(changes: Readonly<Record<string, string>>, use: (folder: string) => Promise<T>) {
  const folder = mkdtempSync(join(tmpdir(), 'drybench-commands-'));
  try {
    for (const [name, text] of Object.entries({ ...smallShop, ...changes })) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What happens to the stool once it is scuffed, in every way in which the journal can be told of it. */
export const enteredOfTheStool: readonly (readonly string[])[] = [
  ['done', 'stool', 'wipe'],
  ['slip', 'stool', 'paint-1', '2027-01-12T10:00'],
  ['done', 'stool', 'paint-1', '--used', '0.1 L'],
  ['seen', 'stool', 'paint-1', 'tacky'],
  ['failed', 'stool', 'paint-1', 'runs'],
  ['undo'],
  ['again', 'stool', 'paint-1'],
  ['skip', 'stool', 'paint-2'],
];
