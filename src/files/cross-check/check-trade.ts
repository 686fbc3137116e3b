import type { Book } from '../../model/book.ts';
import type { Piece } from '../../model/piece.ts';
import { tradeOfPiece } from '../../model/trade-of-piece.ts';
import type { Complaint } from './complaint.ts';

/** Steps in an order that the trade would not choose: worth knowing, never a reason to refuse the shop's files. */
export function checkTrade(book: Book, piece: Piece): Complaint[] {
  return tradeOfPiece(book, piece).map(({ code, section, step, message, advice }) => {
    const join = piece.joins.findIndex((j) => j.section === section && j.id === step);
    return {
      code,
      severity: 'warning',
      message: `${section}/${step}: ${message}`,
      advice,
      file: `pieces/${piece.id}.yaml`,
      path: join >= 0 ? ['joins', join] : ['sections', section],
    };
  });
}
