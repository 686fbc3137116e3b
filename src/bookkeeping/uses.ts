import { fillLitres, GLUED_SHARE, litresFor, sheetSpreadM2PerL, USUAL_WASTE_PERCENT } from '../drying/film-maths.ts';
import type { Book } from '../model/book.ts';
import { isFullCoat } from '../model/film-needs.ts';
import { coarsestOnFilm } from '../model/grit.ts';
import type { Material } from '../model/material.ts';
import type { Section } from '../model/piece.ts';
import type { QuantityUnit } from '../model/quantity.ts';
import { sameSection, sectionOf } from '../model/section-tasks.ts';
import type { SessionPart } from '../model/session-part.ts';
import { abrasiveId, GLOVES, RAGS, supplyOf, TAPE } from '../model/supply.ts';
import type { Task, Way } from '../model/task.ts';

/** How much of one material or supply a step takes. */
export interface Use {
  /** Id of the material or supply. */
  readonly item: string;
  readonly unit: QuantityUnit;
  /** Absent: nothing says how much. */
  readonly value?: number;
}

/** Does the task lay the first coat on bare wood: wood that was stripped, or sanded as coarsely as no film is? */
export function isOnBareWood(tasks: readonly Task[], task: Task, book: Pick<Book, 'materials'>): boolean {
  const before = tasks.slice(0, tasks.indexOf(task)).filter((t) => sameSection(t, task));
  const isCoated = before.some((t) => {
    const material = book.materials.get(t.material ?? '');
    return material !== undefined && isFullCoat(material);
  });
  const isBared = (t: Task) => t.supplies.includes('stripper') || (t.grit ?? Infinity) <= coarsestOnFilm;
  return !isCoated && before.some(isBared);
}

/** Litres of a material that land on the work, or are lost beside it; undefined where its file says too little. */
function litresLaid(material: Material, section: Section, way: Way, onBareWood: boolean): number | undefined {
  const spread = sheetSpreadM2PerL(material);
  const { film, transfer = 1 } = way;
  if (spread === undefined) {
    const depthMm = film?.depthMm ?? material.sheetDepthMm;
    const solids = material.volumeSolidsPercent?.typical;
    return depthMm === undefined || solids === undefined ? undefined : fillLitres(section.areaM2, depthMm, solids);
  }
  const areaM2 = section.areaM2 * (material.family === 'glue' ? GLUED_SHARE : 1);
  return litresFor(areaM2, 1, spread / (film?.thickness ?? 1), transfer, onBareWood && isFullCoat(material));
}

/** `mineral spirits` as the id of a supply. */
function thinnerId(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
}

function materialUses(book: Book, section: Section, material: Material, way: Way, onBareWood: boolean): Use[] {
  if (material.family === 'tape') return [supplyUse(book, section, TAPE, material.id)];
  const laid = litresLaid(material, section, way, onBareWood);
  if (laid === undefined) return [{ item: material.id, unit: 'L' }];
  const litres = laid / (1 - (book.shop.wastePercent ?? USUAL_WASTE_PERCENT) / 100);
  const { thinning } = material;
  const thinner: Use[] =
    thinning === undefined || thinning.percent === 0
      ? []
      : [{ item: thinnerId(thinning.with), unit: 'L', value: (litres * thinning.percent) / 100 }];
  return [{ item: material.id, unit: 'L', value: litres }, ...thinner];
}

/** What washing up after a full coat takes of the thinner: of the tools that name a wash-up, else of a brush; a cloth is not washed. */
function washUpUse(book: Book, material: Material, way: Way, part: SessionPart | undefined): Use[] {
  const id = material.thinning && thinnerId(material.thinning.with);
  const thinner = id === undefined ? undefined : supplyOf(book.supplies, id);
  if (id === undefined || thinner === undefined || !isFullCoat(material) || material.wipeOff !== undefined) return [];
  if (part === 'first' || part === 'middle') return [];
  const washed = book.shop.tools.filter((t) => way.tools.includes(t.id) && t.washUpMinutes > 0).length;
  const { unit, perToolWashed = 0, perBrushWashed = 0 } = thinner;
  const value = washed > 0 ? washed * perToolWashed : perBrushWashed;
  return value > 0 ? [{ item: id, unit, value }] : [];
}

/** Two uses of one thing as one. */
function together(uses: readonly Use[]): Use[] {
  return [...new Set(uses.map((u) => u.item))].flatMap((item) => {
    const [first, ...more] = uses.filter((u) => u.item === item);
    if (first === undefined || more.length === 0 || first.value === undefined) return first ?? [];
    return { ...first, value: more.reduce((sum, { value = 0 }) => sum + value, first.value) };
  });
}

/** What a supply's figures make for a section; `named`: the id that it is bought by, where that differs. */
function supplyUse(book: Book, { areaM2, items }: Section, id: string, named = id): Use {
  const supply = supplyOf(book.supplies, id);
  if (supply === undefined) return { item: named, unit: 'pieces', value: 1 };
  const { perStep, perM2, perItem, unit } = supply;
  return { item: named, unit, value: perStep + perM2 * areaM2 + perItem * items };
}

const needsGloves = ['stripper', 'degreaser'];

function supplyIds(task: Task, material: Material | undefined): string[] {
  const isWet = material !== undefined && material.family !== 'tape' && material.containers !== undefined;
  const gloves = isWet || task.supplies.some((id) => needsGloves.includes(id));
  if (task.atOnceAfter !== undefined) return [];
  const wipes = task.stage === 'clean' || material?.wipeOff !== undefined || material?.oilyRags === true;
  return [
    ...(task.grit === undefined ? [] : [abrasiveId(task.grit)]),
    ...task.supplies,
    ...(gloves ? [GLOVES] : []),
    ...(wipes && !task.supplies.includes('lint-free-cloth') ? [RAGS] : []),
  ];
}

/**
 * All that one step takes, done in this way: of its material by area, coverage or volume solids and dry film, film
 * thickness, what lands, and what is lost in the pot; the thinner for it and for washing up; and what is used up besides.
 * `part`: as that part of a session, of which only the last washes up.
 */
export function usesOf(book: Book, tasks: readonly Task[], task: Task, way: Way, part?: SessionPart): Use[] {
  const section = sectionOf(book, task);
  const material = book.materials.get(task.material ?? '');
  const laid =
    material === undefined ? [] : materialUses(book, section, material, way, isOnBareWood(tasks, task, book));
  const washed = material === undefined ? [] : washUpUse(book, material, way, part);
  return together([...laid, ...washed, ...supplyIds(task, material).map((id) => supplyUse(book, section, id))]);
}
