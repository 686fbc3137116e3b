import { createHash } from 'node:crypto';

/** The bytes that a phone gets, whole in memory: what is sent never depends on a file while it is being replaced. */
export interface Feed {
  readonly bytes: Buffer;
  /** Strong, of the bytes sent (RFC 9110 section 8.8.3). */
  readonly etag: string;
  /** As an HTTP date. */
  readonly lastModified: string;
}

/** `lastChanged`: minutes since 1970-01-01T00:00Z. */
export function feedOf(text: string, lastChanged: number): Feed {
  const bytes = Buffer.from(text, 'utf8');
  return {
    bytes,
    etag: `"${createHash('sha256').update(bytes).digest('base64url')}"`,
    lastModified: new Date(lastChanged * 60_000).toUTCString(),
  };
}
