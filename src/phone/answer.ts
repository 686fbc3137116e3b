import { createHash, timingSafeEqual } from 'node:crypto';
import type { Feed } from './feed.ts';

/** What matters of a request. */
export interface Asked {
  readonly method: string;
  /** As it came over the wire: never a path of the file system. */
  readonly url: string;
  readonly host: string | undefined;
  readonly ifNoneMatch: string | undefined;
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

/** Who may ask for what. */
export interface Gate {
  /** The one path that is served; holds the secret. */
  readonly path: string;
  /** The one `Host` that is meant (`192.168.1.20:4631`), and the same as localhost: no other name may lead here. */
  readonly hosts: readonly string[];
}

const everyAnswer = {
  'Cache-Control': 'private, no-cache',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

function short(status: number, text: string, more: Readonly<Record<string, string>> = {}): Answer {
  const body = Buffer.from(`${text}\n`);
  const headers = { 'Content-Type': 'text/plain; charset=utf-8', 'Content-Length': String(body.length) };
  return { status, headers: { ...everyAnswer, ...headers, ...more }, body };
}

const digest = (text: string) => createHash('sha256').update(text).digest();

/** Compares in a time that tells nothing of where the two differ. */
function isSame(a: string, b: string): boolean {
  return timingSafeEqual(digest(a), digest(b));
}

/** Does one of the validators that the client holds name this feed? Weak comparison, RFC 9110 section 13.1.2. */
function holds(ifNoneMatch: string, etag: string): boolean {
  const validators = ifNoneMatch.split(',').map((v) => v.trim().replace(/^W\//, ''));
  return validators.includes('*') || validators.includes(etag);
}

/** The answer to everything but the one right path: the same to the byte, so that it says nothing. */
export const notHere = (): Answer => short(404, 'not here');

/** Refusals that need no feed; undefined where the feed itself is asked for. */
export function refusal(asked: Asked, gate: Gate): Answer | undefined {
  if (asked.method !== 'GET' && asked.method !== 'HEAD')
    return short(405, 'only GET and HEAD', { Allow: 'GET, HEAD', Connection: 'close' });
  if (asked.host === undefined || !gate.hosts.includes(asked.host.toLowerCase()))
    return short(421, 'not for this host', { Connection: 'close' });
  return isSame(asked.url, gate.path) ? undefined : notHere();
}

/** The feed, or 304 where the client has it already. `If-Modified-Since` is not heeded: a minute can hold two changes. */
export function feedAnswer(asked: Asked, feed: Feed): Answer {
  const validators = { ...everyAnswer, ETag: feed.etag, 'Last-Modified': feed.lastModified };
  if (asked.ifNoneMatch !== undefined && holds(asked.ifNoneMatch, feed.etag))
    return { status: 304, headers: validators, body: Buffer.alloc(0) };
  const headers = {
    ...validators,
    'Content-Type': 'text/calendar; charset=utf-8',
    'Content-Disposition': 'inline; filename="shop.ics"',
    'Content-Length': String(feed.bytes.length),
  };
  return { status: 200, headers, body: feed.bytes };
}
