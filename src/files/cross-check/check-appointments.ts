import { adviseWord } from '../suggest.ts';
import type { Complaint } from './complaint.ts';
import type { Whole } from './whole.ts';
import { worded } from '../../words/worded.ts';

/** Appointments that name a piece that is not there; every piece's file must have been read. */
export function checkAppointments({ book }: Whole): Complaint[] {
  const pieces = book.pieces.map((p) => p.id);
  return (book.shop.appointments ?? []).flatMap((appointment, i) =>
    (['brings', 'takes'] as const).flatMap((key) =>
      appointment[key]
        .filter((id) => !pieces.includes(id))
        .map((id) => ({
          code: 'unknown-piece',
          severity: 'error' as const,
          file: 'shop.yaml',
          path: ['appointments', i, key],
          message: worded`there is no piece ${id}`,
          advice: adviseWord(id, pieces),
        })),
    ),
  );
}
