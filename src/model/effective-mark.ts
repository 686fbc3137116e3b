import type { Mark } from './mark.ts';
import type { Material } from './material.ts';

/**
 * Where a material's sheet lacks a mark, the nearest one that is at least as safe stands in for it, else the last one
 * there is. Common practice, no source.
 */
const standIns: Readonly<Record<Mark, readonly Mark[]>> = {
  'dust-free': ['dust-free', 'touch', 'recoat', 'sand', 'handle'],
  touch: ['touch', 'recoat', 'sand', 'handle', 'dust-free'],
  tape: ['tape', 'stack', 'cure', 'handle', 'sand', 'recoat'],
  sand: ['sand', 'recoat', 'handle', 'cure', 'touch'],
  recoat: ['recoat', 'sand', 'handle', 'cure', 'touch'],
  handle: ['handle', 'sand', 'recoat', 'cure', 'touch'],
  stack: ['stack', 'cure', 'handle', 'sand', 'recoat'],
  cure: ['cure', 'stack', 'handle', 'sand', 'recoat'],
};

/** The mark of `material` that answers for `wanted`; undefined where nothing about it has to dry. */
export function effectiveMark(material: Material, wanted: Mark): Mark | undefined {
  return standIns[wanted].find((mark) => material.marks[mark] !== undefined);
}

/** The mark from which the piece may be moved to another place. */
export function moveMark(material: Material): Mark | undefined {
  return effectiveMark(material, 'handle');
}
