import { join } from 'node:path';
import { readAirCsv } from '../air/read-air-csv.ts';
import { withAppointments } from '../model/appointments.ts';
import type { Book } from '../model/book.ts';
import type { Finding, Place } from '../model/finding.ts';
import type { Material } from '../model/material.ts';
import type { Piece } from '../model/piece.ts';
import type { Recipe } from '../model/recipe.ts';
import type { AirSample, AirSource, Shop } from '../model/shop.ts';
import type { Supply } from '../model/supply.ts';
import { crossCheck } from './cross-check/cross-check.ts';
import { sortFindings } from './cross-check/complaint.ts';
import { realDisk, type Disk } from './disk.ts';
import { readDocument, type ReadDocument, type ReadFile } from './document.ts';
import type { WrittenAir } from './formats/air.ts';
import { pieceOf, pieceShape } from './formats/piece.ts';
import { shopOf, shopShape } from './formats/shop.ts';
import { suppliesOf, suppliesShape } from './formats/supplies.ts';
import { readJournal } from './journal/read.ts';
import { materialLibrary, recipeLibrary, type Library, type ReadOne, type Shelf } from './library.ts';
import { listIds } from './list-ids.ts';
import { readCurrency } from './quantities/money.ts';
import { pressedIn, takeNone, type TakePressed } from './pressed.ts';
import { CSV_CAP, readSource, YAML_CAP, type Folder } from './read-source.ts';
import type { Notes, Shape } from './shapes/shape.ts';
import { PARTS, pressedFile, SHIPPED_LABEL, SHIPPED_RECIPES } from './shipped.ts';
import { SHOP_FILE, SUPPLIES_FILE } from './shop-files.ts';
import { shippedWords } from './shipped-words.ts';
import { isZone } from '../time/zone.ts';
import { entryOf, nearestNode, nodeSaying, type Node, type Path } from './yaml/tree.ts';
import { placeAt, type SourceText } from './source-text.ts';
import { worded } from '../words/worded.ts';

export interface ReadBookOptions {
  /** Drybench's own folder, see shippedDir(). */
  readonly shippedDir: string;
  /** Recipes to read besides those that a piece uses. */
  readonly recipes?: readonly string[];
  /** Materials to read besides those that something uses. */
  readonly materials?: readonly string[];
  /** Reads the supplies, too: what work uses up beside its materials. */
  readonly supplies?: boolean;
  /** Reads all that is the shop's own, used or not, from the very files: for checking. */
  readonly allOwn?: boolean;
  /** Reads everything that there is, shipped as well. */
  readonly everything?: boolean;
  readonly disk?: Disk;
}

export interface ReadBook {
  /** Absent where any finding is an error. */
  readonly book?: Book;
  /** In order of file, line and column. */
  readonly findings: readonly Finding[];
  /** All ids that there are, read or not. */
  readonly recipeIds: readonly string[];
  readonly partIds: readonly string[];
  readonly materialIds: readonly string[];
  /** All that there is, read when it is asked for and not checked against the shop. */
  readonly libraries: Libraries;
  /** Where a value stands in a file that was read; the nearest key above it where it is not written. */
  placeOf(file: string, path: Path): Place | undefined;
}

export interface Libraries {
  readonly recipes: Library<Recipe>;
  readonly parts: Library<Recipe>;
  readonly materials: Library<Material>;
}

type Settings = Pick<Notes, 'zone' | 'currency'>;

/** Zone and currency as shop.yaml names them, before anything is checked; stand-ins where it names none. */
function settingsIn(tree: Node): Settings {
  const textAt = (key: string) => {
    const value = entryOf(tree, key)?.value;
    return value?.kind === 'text' ? value.text : '';
  };
  const zone = textAt('time-zone');
  const currency = textAt('currency');
  return {
    zone: zone !== '' && zone.length <= 64 && isZone(zone) ? zone : 'UTC',
    currency: readCurrency(currency).ok ? currency : 'EUR',
  };
}

/** A warning about a file that comes with Drybench is for its makers, whose tests look for it. */
function isForTheUser(finding: Finding): boolean {
  return finding.severity === 'error' || finding.place?.file.startsWith(SHIPPED_LABEL) !== true;
}

/** Reads files of one shop, and gathers what is wrong in them. */
interface Desk {
  readonly disk: Disk;
  readonly shop: Folder;
  readonly findings: Finding[];
  readonly files: Map<string, ReadFile>;
  readonly takePressed: TakePressed;
}

/** The build has read the file by the shape that it has at its place. */
function pressedDocument<T>(desk: Desk, source: SourceText): ReadDocument<T> | undefined {
  return desk.takePressed(source) as ReadDocument<T> | undefined;
}

function readFile<T>(
  desk: Desk,
  folder: Folder,
  name: string,
  shape: Shape<T>,
  settingsOf: (tree: Node) => Settings,
): ReadDocument<T> | undefined {
  const read = readSource(desk.disk, folder, name, YAML_CAP);
  if (!read.ok) {
    desk.findings.push(read.finding);
    return undefined;
  }
  const document = pressedDocument<T>(desk, read.source) ?? readDocument(read.source, shape, settingsOf);
  desk.findings.push(...document.findings);
  if (document.file !== undefined) desk.files.set(read.source.file, document.file);
  return folder.label === SHIPPED_LABEL && document.value !== undefined
    ? { ...document, value: shippedWords(document.value) }
    : document;
}

function placeIn(files: ReadonlyMap<string, ReadFile>, file: string, path: Path): Place | undefined {
  const found = files.get(file);
  return found && placeAt(found.source, nearestNode(found.tree, path).start);
}

/** Said where the shop names the record, for that is the line to mend. */
function missingAir(desk: Desk, file: string, finding: Finding): Finding {
  const shop = desk.files.get(SHOP_FILE);
  const named = shop && nodeSaying(shop.tree, file);
  return {
    ...finding,
    message: worded`there is no file ${file}`,
    advice: worded`put the record there, or correct the name here`,
    ...(shop && named && { place: placeAt(shop.source, named.start) }),
  };
}

/** Reads the records that the air of rooms names; each file once. */
function airReader(desk: Desk, zone: string): (air: WrittenAir) => AirSource {
  const known = new Map<string, readonly AirSample[]>();
  const samplesOf = (file: string): readonly AirSample[] => {
    const before = known.get(file);
    if (before !== undefined) return before;
    const read = readSource(desk.disk, desk.shop, file, CSV_CAP);
    const record = read.ok
      ? readAirCsv(read.source.text, zone, read.source.file)
      : {
          samples: [],
          findings: [read.missing ? missingAir(desk, file, read.finding) : read.finding],
        };
    desk.findings.push(...record.findings);
    known.set(file, record.samples);
    return record.samples;
  };
  const airOf = (air: WrittenAir): AirSource => {
    if (air.kind === 'csv') return { kind: 'series', name: air.file, samples: samplesOf(air.file) };
    return air.kind === 'heated' ? { ...air, outdoors: airOf(air.outdoors) } : air;
  };
  return airOf;
}

function listed(desk: Desk, folder: Folder, sub: string): readonly string[] {
  const { ids, findings } = listIds(desk.disk, folder, sub);
  desk.findings.push(...findings);
  return ids;
}

function readPieces(desk: Desk, settings: Settings): Piece[] {
  return listed(desk, desk.shop, 'pieces').flatMap((id) => {
    const doc = readFile(desk, desk.shop, `pieces/${id}.yaml`, pieceShape, () => settings)?.value;
    return doc === undefined ? [] : [pieceOf(id, doc)];
  });
}

function stepMaterials(steps: Recipe['steps']): string[] {
  return steps.flatMap((s) => [...(s.material === undefined ? [] : [s.material]), ...stepMaterials(s.between)]);
}

function usedMaterials(shop: Shop, pieces: readonly Piece[], recipes: Iterable<Recipe>): Set<string> {
  return new Set([
    ...[...recipes].flatMap((r) => stepMaterials(r.steps)),
    ...pieces.flatMap((p) => [...stepMaterials(p.joins), ...p.sections.flatMap((s) => Object.values(s.materials))]),
    ...keptAndPriced(shop),
  ]);
}

/** Ids of what is on the shelf or has a price. */
function keptAndPriced(shop: Shop): string[] {
  return [...Object.keys(shop.stock ?? {}), ...Object.keys(shop.prices ?? {})];
}

/** The supplies that come with Drybench, the shop's own over them. */
function readSupplies(desk: Desk, shipped: Folder, settings: Settings): Map<string, Supply> {
  const own = readSource(desk.disk, desk.shop, SUPPLIES_FILE, YAML_CAP);
  const folders = !own.ok && own.missing ? [shipped] : [shipped, desk.shop];
  const all = folders.flatMap((folder) => {
    const doc = readFile(desk, folder, SUPPLIES_FILE, suppliesShape, () => settings)?.value;
    return doc === undefined ? [] : suppliesOf(doc);
  });
  return new Map(all.map((supply) => [supply.id, supply]));
}

function taken<T>(library: Library<T>, ids: Iterable<string>): Map<string, T> {
  const all = [...new Set(ids)].sort();
  return new Map(
    all.flatMap((id): [string, T][] => {
      const value = library.ids.includes(id) ? library.get(id) : undefined;
      return value === undefined ? [] : [[id, value]];
    }),
  );
}

/**
 * Reads a shop's folder: shop.yaml, its pieces, the recipes and materials that they use, the records of air, and the
 * journal. All that is wrong anywhere is found in one go. Never throws for what stands in a file.
 */
export function readBook(shopDir: string, options: ReadBookOptions): ReadBook {
  const disk = options.disk ?? realDisk;
  const shopFolder: Folder = { path: shopDir, label: '' };
  // To check is to look at the very files.
  const takePressed = options.everything === true || options.allOwn === true ? takeNone : pressedIn(pressedFile);
  const desk: Desk = { disk, shop: shopFolder, findings: [], files: new Map(), takePressed };
  let settings: Settings = { zone: 'UTC', currency: 'EUR' };
  const shopDoc = readFile(desk, shopFolder, SHOP_FILE, shopShape, (tree) => (settings = settingsIn(tree)))?.value;
  const shop = shopDoc && shopOf(shopDoc, airReader(desk, settings.zone));

  const readOne: ReadOne = (folder, name, shape) => readFile(desk, folder, name, shape, () => settings);
  const shippedRecipes: Folder = { path: options.shippedDir, label: SHIPPED_LABEL };
  const shippedMaterials: Folder = { path: join(options.shippedDir, 'shared'), label: SHIPPED_LABEL };
  const shelf = (folder: Folder, sub: string): Shelf => ({ folder, sub, ids: listed(desk, folder, sub) });
  const recipeShelves = [shelf(shopFolder, 'recipes'), shelf(shippedRecipes, SHIPPED_RECIPES)];
  const materialShelves = [shelf(shopFolder, 'materials'), shelf(shippedMaterials, 'materials')];
  const recipes = recipeLibrary(recipeShelves, readOne);
  const materials = materialLibrary(materialShelves, readOne, desk.findings);

  const partShelves = [shelf(shopFolder, PARTS), shelf(shippedRecipes, PARTS)];
  const parts = recipeLibrary(partShelves, readOne);

  const pieces = readPieces(desk, settings);
  // Where a file is wrong, what it would have used is not known: look at all that is the shop's own.
  const spoilt = shop === undefined || desk.findings.some((f) => f.severity === 'error');
  const own = ([shelf]: readonly Shelf[]) => (spoilt || options.allOwn === true ? (shelf?.ids ?? []) : []);
  const recipesInUse = pieces.flatMap((p) => [...p.sections.map((s) => s.recipe), ...(p.whole ? [p.whole] : [])]);
  const readRecipes = taken(
    recipes,
    options.everything ? recipes.ids : [...recipesInUse, ...(options.recipes ?? []), ...own(recipeShelves)],
  );
  const partsInUse = pieces.flatMap((p) => p.sections.flatMap((s) => (s.with ?? []).map((slot) => slot.part)));
  const readParts = taken(parts, options.everything ? parts.ids : [...partsInUse, ...own(partShelves)]);
  const stepLists = [...readRecipes.values(), ...readParts.values()];
  const materialsInUse = shop === undefined ? [] : usedMaterials(shop, pieces, stepLists);
  const readMaterials = taken(
    materials,
    options.everything ? materials.ids : [...materialsInUse, ...(options.materials ?? []), ...own(materialShelves)],
  );
  const namesSupplies = shop !== undefined && keptAndPriced(shop).some((id) => !materials.ids.includes(id));
  const supplies =
    options.supplies === true || options.everything === true || options.allOwn === true || namesSupplies
      ? readSupplies(desk, shippedMaterials, settings)
      : undefined;
  const journal = readJournal(disk, shopFolder);
  desk.findings.push(...journal.findings);

  const libraries = { recipes, parts, materials };
  const ids = { recipeIds: recipes.ids, partIds: parts.ids, materialIds: materials.ids, libraries };
  const placeOf = (file: string, path: Path) => placeIn(desk.files, file, path);
  if (shop !== undefined) {
    const book = {
      shop,
      materials: readMaterials,
      recipes: readRecipes,
      parts: readParts,
      ...(supplies && { supplies }),
      pieces: pieces.map((piece) => withAppointments(piece, shop)),
      journal: journal.entries,
    };
    const eachSound = desk.findings.every((f) => f.severity !== 'error');
    desk.findings.push(...crossCheck({ book, recipes, parts, materials }, placeOf, eachSound));
    const findings = sortFindings(desk.findings.filter(isForTheUser));
    const sound = findings.every((f) => f.severity !== 'error');
    return { ...(sound && { book }), findings, ...ids, placeOf };
  }
  return { findings: sortFindings(desk.findings), ...ids, placeOf };
}
