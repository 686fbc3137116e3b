import type { Mark } from '../model/mark.ts';
import type { Preparation } from '../model/material.ts';

/** Each mark as something that may be done from then on. */
export const markSaid: Readonly<Record<Mark | 'listed' | 'handedOver', string>> = {
  'dust-free': 'dust no longer sticks',
  touch: 'touch lightly',
  tape: 'mask with low-tack tape',
  sand: 'sand',
  recoat: 'coat again',
  handle: 'carry and move',
  stack: 'wrap, stack, set things on it',
  cure: 'full use: wet, hot, cleaned',
  listed: 'photograph and list',
  handedOver: 'hand over',
};

export const preparationSaid: Readonly<Record<Preparation, string>> = {
  scuff: 'scuff first',
  abrade: 'abrade first',
  'wash-and-scuff': 'wash and scuff first',
  'tack-coat': 'lay a tack coat first',
  strip: 'strip it off again first',
};
