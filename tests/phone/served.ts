import { connect, type Socket } from 'node:net';
import { feedOf } from '../../src/phone/feed.ts';
import { serve, usualLimits, type Limits, type Served, type Serving } from '../../src/phone/serve.ts';

export const TOKEN = 'AAAAAAAAAAAAAAAAAAAAAA';
export const CONTENT = 'BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n';
export const CHANGED = Date.UTC(2027, 2, 12, 15) / 60_000;

/** The usual limits with the patience of a test. */
export const shortLimits: Limits = {
  ...usualLimits,
  headersMs: 300,
  requestMs: 600,
  checkEveryMs: 50,
  keepAliveMs: 200,
  idleMs: 1_500,
};

export interface TestServer extends Served {
  readonly defects: unknown[];
}

export async function served(more: Partial<Serving> = {}): Promise<TestServer> {
  const defects: unknown[] = [];
  const server = await serve({
    host: '127.0.0.1',
    names: [],
    port: 0,
    token: TOKEN,
    feed: () => Promise.resolve(feedOf(CONTENT, CHANGED)),
    onDefect: (error) => defects.push(error),
    limits: shortLimits,
    ...more,
  });
  return { ...server, defects };
}

export function socketTo(server: Served): Promise<Socket> {
  return new Promise((resolve, reject) => {
    const socket = connect(server.port, '127.0.0.1', () => resolve(socket));
    socket.once('error', reject);
  });
}

/** Everything that the server says to these bytes until it hangs up. */
export async function sayTo(server: Served, bytes: string): Promise<string> {
  const socket = await socketTo(server);
  socket.on('error', () => undefined);
  let heard = '';
  socket.on('data', (data) => (heard += data.toString('latin1')));
  const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
  socket.write(bytes, 'latin1');
  await closed;
  return heard;
}

/** A request by hand, so that no client cleans up the path or the headers. */
export function request(server: Served, line: string, headers: readonly string[] = []): Promise<string> {
  const host = headers.some((h) => /^host:/i.test(h)) ? [] : [`Host: 127.0.0.1:${server.port}`];
  return sayTo(server, [`${line} HTTP/1.1`, ...host, 'Connection: close', ...headers, '', ''].join('\r\n'));
}

export interface Reply {
  readonly status: number;
  readonly headers: ReadonlyMap<string, string>;
  readonly body: string;
}

export function replyOf(heard: string): Reply {
  const [head = '', ...body] = heard.split('\r\n\r\n');
  const [first = '', ...lines] = head.split('\r\n');
  const headers = lines.map((l) => [l.slice(0, l.indexOf(':')).toLowerCase(), l.slice(l.indexOf(':') + 2)] as const);
  return { status: Number(first.split(' ')[1]), headers: new Map(headers), body: body.join('\r\n\r\n') };
}
