import { createHash } from 'node:crypto';

/**
 * An identifier in the form of a UUID of version 8 (RFC 9562 section 5.8), worked out from `parts` alone: the same
 * parts always give the same one, and nothing can be read back from it (RFC 7986 section 5.3 asks for just that).
 */
export function derivedUuid(parts: readonly string[]): string {
  const hash = createHash('sha256').update(JSON.stringify(parts)).digest('hex');
  const variant = '89ab'[parseInt(hash.slice(16, 17), 16) % 4] ?? '8';
  return [
    hash.slice(0, 8),
    hash.slice(8, 12),
    `8${hash.slice(13, 16)}`,
    `${variant}${hash.slice(17, 20)}`,
    hash.slice(20, 32),
  ].join('-');
}
