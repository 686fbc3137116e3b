import type { Piece } from './piece.ts';
import type { Shop } from './shop.ts';

/** The piece as its appointments have it: it arrives no sooner than it is brought, and is wanted by when it is taken. */
export function withAppointments(piece: Piece, { appointments = [] }: Shop): Piece {
  const brought = appointments.filter((a) => a.brings.includes(piece.id)).map((a) => a.end);
  const taken = appointments.filter((a) => a.takes.includes(piece.id)).map((a) => a.start);
  return {
    ...piece,
    ...(brought.length > 0 && { arrives: Math.max(piece.arrives ?? 0, ...brought) }),
    ...(taken.length > 0 && { wantedBy: Math.min(piece.wantedBy ?? Infinity, ...taken) }),
  };
}
