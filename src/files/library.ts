import type { Finding } from '../model/finding.ts';
import type { Material } from '../model/material.ts';
import type { Recipe } from '../model/recipe.ts';
import type { ReadDocument, ReadFile } from './document.ts';
import {
  completed,
  materialShape,
  overlay,
  partOf,
  type MaterialPart,
  type WrittenMaterial,
} from './formats/material.ts';
import { recipeOf, recipeShape } from './formats/recipe.ts';
import type { Folder } from './read-source.ts';
import type { Shape } from './shapes/shape.ts';
import { placeAt } from './source-text.ts';
import { adviseWord } from './suggest.ts';
import { entryOf, type Node } from './yaml/tree.ts';
import { worded } from '../words/worded.ts';

/** One folder of recipes or materials: the shop's own, or the one that comes with Drybench. */
export interface Shelf {
  readonly folder: Folder;
  readonly sub: string;
  readonly ids: readonly string[];
}

/** Reads a file of a shelf by a shape, and keeps its findings. */
export type ReadOne = <T>(folder: Folder, name: string, shape: Shape<T>) => ReadDocument<T> | undefined;

/** Recipes or materials by id, the shop's own over those that come with Drybench. Each is read when first asked for. */
export interface Library<T> {
  readonly ids: readonly string[];
  /** Undefined: there is none of that id, or its file is wrong, as the findings then say. */
  get(id: string): T | undefined;
  /** The file that an id comes from, as findings name it. */
  fileOf(id: string): string | undefined;
}

function shelvesWith(shelves: readonly Shelf[], id: string): readonly Shelf[] {
  return shelves.filter((s) => s.ids.includes(id));
}

function allIds(shelves: readonly Shelf[]): readonly string[] {
  return [...new Set(shelves.flatMap((s) => s.ids))].sort();
}

function pathOf(shelf: Shelf, id: string): string {
  return `${shelf.sub}/${id}.yaml`;
}

function fileOf(shelves: readonly Shelf[], id: string): string | undefined {
  const [shelf] = shelvesWith(shelves, id);
  return shelf && shelf.folder.label + pathOf(shelf, id);
}

function remembered<T>(read: (id: string) => T | undefined): (id: string) => T | undefined {
  const known = new Map<string, T | undefined>();
  return (id) => {
    if (!known.has(id)) known.set(id, read(id));
    return known.get(id);
  };
}

/** `shelves`: the shop's own first. */
export function recipeLibrary(shelves: readonly Shelf[], readOne: ReadOne): Library<Recipe> {
  return {
    ids: allIds(shelves),
    fileOf: (id) => fileOf(shelves, id),
    get: remembered((id) => {
      const [shelf] = shelvesWith(shelves, id);
      const doc = shelf && readOne(shelf.folder, pathOf(shelf, id), recipeShape)?.value;
      return doc && recipeOf(id, doc);
    }),
  };
}

function finding(file: ReadFile, node: Node, code: string, message: string, advice: string): Finding {
  return { code, severity: 'error', message, advice, place: placeAt(file.source, node.start) };
}

function likeNode(file: ReadFile): Node {
  return entryOf(file.tree, 'like')?.value ?? file.tree;
}

/** An example of what a material of one's own starts from. */
const CLASS = 'water-borne-acrylic-enamel';

/** `shelves`: the shop's own first. A file that is `like` its own id means the one of the next shelf. */
export function materialLibrary(shelves: readonly Shelf[], readOne: ReadOne, findings: Finding[]): Library<Material> {
  const ids = allIds(shelves);

  const baseOf = (doc: WrittenMaterial, file: ReadFile, depth: number, trail: readonly string[]) => {
    const like = doc.like;
    if (like === undefined) return {};
    const id = trail.at(-1);
    const from = like === id ? depth + 1 : 0;
    if (shelvesWith(shelves.slice(from), like).length === 0) {
      const others = ids.filter((known) => known !== id);
      findings.push(
        finding(
          file,
          likeNode(file),
          'unknown-material',
          like === id ? worded`a material cannot be like itself` : worded`there is no material ${like}`,
          like === id ? worded`write the class that it starts from, like ${CLASS}` : adviseWord(like, others),
        ),
      );
      return undefined;
    }
    if (like !== id && trail.includes(like)) {
      const round = [...trail.slice(trail.indexOf(like)), like].join(' like ');
      findings.push(
        finding(
          file,
          likeNode(file),
          'like-in-a-circle',
          worded`materials are like each other: ${round}`,
          worded`let one stand alone`,
        ),
      );
      return undefined;
    }
    return part(like, from, like === id ? trail : [...trail, like])?.part;
  };

  const part = (
    id: string,
    from: number,
    trail: readonly string[],
  ): { readonly part: MaterialPart; readonly file: ReadFile } | undefined => {
    const depth = shelves.findIndex((s, i) => i >= from && s.ids.includes(id));
    const shelf = shelves[depth];
    const read = shelf && readOne(shelf.folder, pathOf(shelf, id), materialShape);
    if (read?.value === undefined || read.file === undefined) return undefined;
    const base = baseOf(read.value, read.file, depth, trail);
    return base && { part: overlay(base, partOf(read.value)), file: read.file };
  };

  return {
    ids,
    fileOf: (id) => fileOf(shelves, id),
    get: remembered((id) => {
      const found = part(id, 0, [id]);
      if (found === undefined) return undefined;
      const material = completed(id, found.part);
      if (typeof material !== 'string') return material;
      const message = worded`a material needs the key ${material}, or one that it is like`;
      findings.push(finding(found.file, found.file.tree, 'missing-key', message, worded`write ${material}: …`));
      return undefined;
    }),
  };
}
