import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { worded } from '../words/worded.ts';

/** What every screen says of a shop without pieces, and what to do then. */
export function noPieceLines(look: Look): string[] {
  return paragraph(worded`No piece is in the shop: drybench intake takes one in.`, look);
}

/** The same as a screen of its own. */
export function noPieceScreen(look: Look): string {
  return `${noPieceLines(look).join('\n')}\n`;
}
