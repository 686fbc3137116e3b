import type { CoatFault } from './journal.ts';
import type { Preparation } from './material.ts';
import { phrase } from '../words/worded.ts';

/** How a failed coat is got ready to be laid again: the words, and the preparation whose minutes it takes. */
interface FaultWork {
  readonly title: string;
  readonly like: Preparation;
}

/** What to do about a fault. Common practice, no source. */
export const coatFaultWork: Readonly<Record<CoatFault, FaultWork>> = {
  runs: { title: phrase('Level the runs, sand the coat back'), like: 'abrade' },
  'fish-eyes': { title: phrase('Wash off what drove the coat apart, sand it back'), like: 'wash-and-scuff' },
  'scratched-through': { title: phrase('Feather the place that is scratched through, sand the coat'), like: 'abrade' },
  blush: { title: phrase('Sand off the milky surface'), like: 'scuff' },
  wrinkles: { title: phrase('Take the wrinkled coat off'), like: 'strip' },
  'dust-nibs': { title: phrase('Nib off the dust'), like: 'scuff' },
};

/** Common practice, no source. */
export const dustOffWork = {
  title: phrase('Vacuum and tack off the dust'),
  fixedMinutes: 5,
  minutesPerM2: 2,
  stations: ['bench', 'floor', 'spray', 'rack'],
} as const;
