import { createHash } from 'node:crypto';

/** A short name for all that a plan was made from. */
export function fingerprint(basis: string): string {
  return createHash('sha256').update(basis).digest('hex').slice(0, 24);
}
