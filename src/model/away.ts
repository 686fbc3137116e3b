import { unite, type Minute, type Spans } from '../time/span.ts';
import { rootOf, WHOLE } from './expand.ts';
import type { Away, Piece } from './piece.ts';

/** All stays of a piece and of its sections, each with the section; none: the whole piece. */
export function staysAway(piece: Piece): { readonly section?: string; readonly away: Away }[] {
  return [
    ...(piece.away ?? []).map((away) => ({ away })),
    ...piece.sections.flatMap((s) => (s.away ?? []).map((away) => ({ section: s.id, away }))),
  ];
}

/**
 * When `object` of the piece (`PIECE/SECTION`) is away: with the whole piece, or with a section that is part of it. What
 * is done to the whole piece needs all of it.
 */
export function awaySpans(piece: Piece, object: string): Spans {
  const parts = piece.sections.filter(
    (s) => s.away !== undefined && [WHOLE, rootOf(piece, s)].some((id) => object === `${piece.id}/${id}`),
  );
  return unite([...(piece.away ?? []), ...parts.flatMap((s) => s.away ?? [])]);
}

/** When all of the piece is back for good; undefined where nothing of it leaves. */
export function backFrom(piece: Piece): Minute | undefined {
  const ends = staysAway(piece).map(({ away }) => away.end);
  return ends.length === 0 ? undefined : Math.max(...ends);
}
