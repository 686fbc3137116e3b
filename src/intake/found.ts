import { phrase } from '../words/worded.ts';

/** Faults that a repair part is there for. */
export const faults = ['joints-loose', 'veneer-loose', 'runner-missing', 'gouges', 'odour'] as const;
export type Fault = (typeof faults)[number];

export interface FaultFace {
  readonly say: string;
  /** Id of the part that mends it. */
  readonly part: string;
}

export const faultFaces: Readonly<Record<Fault, FaultFace>> = {
  'joints-loose': { say: phrase('joints loose'), part: 'reglue-joints' },
  'veneer-loose': { say: phrase('veneer loose or missing'), part: 'patch-veneer' },
  'runner-missing': { say: phrase('a drawer runner worn out or missing'), part: 'replace-runners' },
  gouges: { say: phrase('gouges, deep dents'), part: 'fill-gouges' },
  odour: { say: phrase('it smells: smoke, mothballs, mice'), part: 'seal-odour' },
};

/** Parts that the wood and the change of colour ask for. */
export const GRAIN_PART = 'fill-grain';
export const TANNIN_PART = 'seal-tannin';
export const DARK_PART = 'block-stains';

/** Old finishes that a piece can come with. */
export const oldFinishes = ['bare', 'clear', 'paint', 'wax-or-oil', 'unknown'] as const;
export type OldFinish = (typeof oldFinishes)[number];

export const oldFinishSay: Readonly<Record<OldFinish, string>> = {
  bare: phrase('nothing, bare wood'),
  clear: phrase('clear: varnish, shellac or lacquer'),
  paint: phrase('paint'),
  'wax-or-oil': phrase('wax or oil'),
  unknown: phrase('not known'),
};
