import type { Mark } from '../model/mark.ts';
import type { Preparation } from '../model/material.ts';
import { phrase } from '../words/worded.ts';

/** Each mark as something that may be done from then on. */
export const markSaid: Readonly<Record<Mark | 'listed' | 'handedOver', string>> = {
  'dust-free': phrase('dust no longer sticks'),
  touch: phrase('touch lightly'),
  tape: phrase('mask with low-tack tape'),
  sand: phrase('sand'),
  recoat: phrase('coat again'),
  handle: phrase('carry and move'),
  stack: phrase('wrap, stack, set things on it'),
  cure: phrase('full use: wet, hot, cleaned'),
  listed: phrase('photograph and list'),
  handedOver: phrase('hand over'),
};

export const preparationSaid: Readonly<Record<Preparation, string>> = {
  scuff: phrase('scuff first'),
  abrade: phrase('abrade first'),
  'wash-and-scuff': phrase('wash and scuff first'),
  'tack-coat': phrase('lay a tack coat first'),
  strip: phrase('strip it off again first'),
};
