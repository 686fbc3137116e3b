import type { Preparation } from './material.ts';
import type { StationKind } from './shop.ts';
import { phrase } from '../words/worded.ts';

interface PreparationWork {
  readonly title: string;
  readonly fixedMinutes: number;
  readonly minutesPerM2: number;
  readonly dusty: boolean;
  readonly grit?: number;
  readonly stations: readonly StationKind[];
}

/** What a late coat asks for first. Minutes: common practice, no source. */
export const preparationWork: Readonly<Record<Preparation, PreparationWork>> = {
  scuff: {
    title: phrase('Scuff for the late coat, vacuum off'),
    fixedMinutes: 5,
    minutesPerM2: 8,
    dusty: true,
    grit: 320,
    stations: ['bench', 'floor'],
  },
  abrade: {
    title: phrase('Abrade for the late coat, vacuum off'),
    fixedMinutes: 10,
    minutesPerM2: 12,
    dusty: true,
    grit: 220,
    stations: ['bench', 'floor'],
  },
  'wash-and-scuff': {
    title: phrase('Wash, let dry and scuff for the late coat'),
    fixedMinutes: 15,
    minutesPerM2: 14,
    dusty: true,
    grit: 320,
    stations: ['bench', 'floor'],
  },
  'tack-coat': {
    title: phrase('Clean and lay a thin tack coat before the late coat'),
    fixedMinutes: 15,
    minutesPerM2: 10,
    dusty: false,
    stations: ['bench', 'floor', 'spray'],
  },
  strip: {
    title: phrase('Strip the coat that is past its window'),
    fixedMinutes: 30,
    minutesPerM2: 60,
    dusty: true,
    stations: ['bench', 'floor'],
  },
};
