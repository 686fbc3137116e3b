import { setTimeout } from 'node:timers/promises';
import type { Socket } from 'node:net';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { feedOf } from '../../src/phone/feed.ts';
import { CONTENT, replyOf, request, sayTo, served, shortLimits, socketTo, TOKEN, type TestServer } from './served.ts';

let server: TestServer;
beforeEach(async () => {
  server = await served();
});
afterEach(async () => {
  const alive = replyOf(await request(server, `GET ${server.path}`));
  expect([alive.status, alive.body]).toEqual([200, CONTENT]);
  await server.close();
  expect(server.defects).toEqual([]);
});

const leaks = (heard: string) => /VCALENDAR|node:|\bat .*\.[jt]s|AAAAAAAAAAAAAAAAAAAAAA/.test(heard);

describe('attacks on the feed; the server must stay up and give nothing away', () => {
  test.each([
    ['not HTTP at all', '\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03'],
    ['an old version without a host', `GET /c/${TOKEN}/shop.ics HTTP/1.0\r\n\r\n`],
    ['two hosts', `GET /x HTTP/1.1\r\nHost: a\r\nHost: b\r\nConnection: close\r\n\r\n`],
    ['headers of 64 kB', `GET /x HTTP/1.1\r\nHost: a\r\nX: ${'a'.repeat(65_536)}\r\n\r\n`],
    ['a path of 64 kB', `GET /${'a'.repeat(65_536)} HTTP/1.1\r\nHost: a\r\n\r\n`],
    ['ten thousand headers', `GET /x HTTP/1.1\r\n${'A: b\r\n'.repeat(10_000)}\r\n`],
    [
      'both a length and chunks',
      'GET /x HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
    ],
    ['a proxy request', 'CONNECT example.com:443 HTTP/1.1\r\nHost: example.com:443\r\n\r\n'],
    ['a header inside the path', `GET /x\rX-Evil: 1 HTTP/1.1\r\nHost: a\r\n\r\n`],
    ['an expectation', 'POST /x HTTP/1.1\r\nHost: a\r\nExpect: 100-continue\r\nContent-Length: 1000000\r\n\r\n'],
    ['an upgrade', 'GET /x HTTP/1.1\r\nHost: a\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n'],
    ['a body that never comes', 'GET /x HTTP/1.1\r\nHost: a\r\nContent-Length: 1000000\r\n\r\n'],
    ['nothing', ''],
    ['half a request', 'GET /x HT'],
  ])('%s', async (_, bytes) => {
    const heard = await sayTo(server, bytes);
    expect(leaks(heard)).toBe(false);
    if (heard !== '') expect(replyOf(heard).status).toBeGreaterThanOrEqual(400);
  });

  test('a client that sends a byte now and then is cut off', async () => {
    const socket = await socketTo(server);
    let heard = '';
    socket.on('data', (data) => (heard += data.toString('latin1')));
    socket.on('error', () => undefined);
    const line = `GET /x HTTP/1.1\r\nHost: a\r\nX: ${'a'.repeat(1_000)}`;
    let sent = 0;
    for (; !socket.closed && sent < line.length; sent += 1) {
      socket.write(line[sent]!);
      await setTimeout(20);
    }
    expect(socket.closed).toBe(true);
    expect(sent).toBeLessThan(line.length);
    expect(heard === '' || replyOf(heard).status === 408).toBe(true);
  });

  test('a client that does not read its answer is dropped', async () => {
    const big = 'x'.repeat(20_000_000);
    const other = await served({
      feed: () => Promise.resolve(feedOf(big, 0)),
      limits: { ...shortLimits, idleMs: 200 },
    });
    const socket = await socketTo(other);
    socket.on('error', () => undefined);
    socket.write(`GET ${other.path} HTTP/1.1\r\nHost: 127.0.0.1:${other.port}\r\n\r\n`);
    await setTimeout(1_500);
    let heard = 0;
    const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
    socket.on('data', (data) => (heard += data.length));
    await closed;
    expect(heard).toBeLessThan(big.length);
    await other.close();
  });

  async function thousandTo(target: TestServer) {
    const sockets = await Promise.all(Array.from({ length: 1_000 }, () => socketTo(target).catch(() => undefined)));
    const held = sockets.filter((s): s is Socket => s !== undefined);
    for (const socket of held) socket.on('error', () => undefined).resume();
    return { open: () => held.filter((s) => !s.closed).length };
  }

  test('of a thousand connections no more are held than are allowed', async () => {
    const patient = await served({ limits: { ...shortLimits, headersMs: 60_000, requestMs: 60_000, idleMs: 60_000 } });
    const { open } = await thousandTo(patient);
    await vi.waitFor(() => expect(open()).toBeLessThanOrEqual(shortLimits.connections), { timeout: 20_000 });
    expect(open()).toBeGreaterThan(0);
    await patient.close();
    await vi.waitFor(() => expect(open()).toBe(0), { timeout: 20_000 });
  });

  test('a thousand connections that say nothing all end by themselves', async () => {
    const { open } = await thousandTo(server);
    await vi.waitFor(() => expect(open()).toBe(0), { timeout: 20_000 });
  });
});

describe('stopping', () => {
  test('closes although someone holds a connection open', async () => {
    const other = await served();
    const socket = await socketTo(other);
    socket.on('error', () => undefined);
    socket.write('GET /x HT');
    const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
    await other.close();
    await closed;
    await expect(socketTo(other)).rejects.toThrow(/ECONNREFUSED/);
  });

  test('a port that is taken is refused, not waited for', async () => {
    await expect(served({ port: server.port })).rejects.toThrow(/EADDRINUSE/);
  });

  test('a defect while making the feed tells the client nothing', async () => {
    const other = await served({ feed: () => Promise.reject(new Error('secret of the shop')) });
    const heard = await request(other, `GET ${other.path}`);
    expect(replyOf(heard).status).toBe(500);
    expect(heard).not.toContain('secret of the shop');
    expect(other.defects).toHaveLength(1);
    await other.close();
  });
});
