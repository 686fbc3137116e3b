import { phrase } from '../words/worded.ts';

/** Shapes of furniture whose areas can be estimated, and `other`, whose area has to be said. */
export const kinds = ['chest', 'table', 'chair', 'cabinet', 'bed', 'other'] as const;
export type Kind = (typeof kinds)[number];

/** Things that are counted, not measured. */
export const countables = ['alike', 'drawers', 'doors', 'fittings'] as const;
export type Countable = (typeof countables)[number];
export type Counts = Readonly<Record<Countable, number>>;

/** Overall measures, mm, in the order in which the kind names them. */
export type Size = readonly [number, number, number];

export interface KindFace {
  /** For a person who has to choose. */
  readonly say: string;
  /** What its three measures are; absent: it has none. */
  readonly measures?: readonly [string, string, string];
  /** Of a usual one, mm: an example, and the answer of who presses Enter. Common practice, no source. */
  readonly usual: Size;
  /** What can be counted on it. */
  readonly counts: readonly Countable[];
}

export const kindFaces: Readonly<Record<Kind, KindFace>> = {
  chest: {
    say: phrase('chest, box, dresser or washstand'),
    measures: [phrase('width'), phrase('depth'), phrase('height')],
    usual: [900, 450, 800],
    counts: ['drawers', 'fittings'],
  },
  table: {
    say: phrase('table or desk'),
    measures: [phrase('length'), phrase('width'), phrase('height')],
    usual: [1600, 800, 750],
    counts: ['drawers', 'fittings'],
  },
  chair: {
    say: phrase('chair, or several alike'),
    measures: [phrase('width'), phrase('depth'), phrase('height of the back')],
    usual: [450, 450, 900],
    counts: ['alike'],
  },
  cabinet: {
    say: phrase('cabinet, cupboard or bookcase'),
    measures: [phrase('width'), phrase('depth'), phrase('height')],
    usual: [1000, 400, 1800],
    counts: ['doors', 'drawers', 'fittings'],
  },
  bed: {
    say: phrase('bed frame'),
    measures: [phrase('width'), phrase('length'), phrase('height of the head')],
    usual: [1500, 2050, 1000],
    counts: [],
  },
  other: { say: phrase('something else: you say its area'), usual: [0, 0, 0], counts: ['alike'] },
};
