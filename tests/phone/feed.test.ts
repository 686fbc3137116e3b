import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { feedOf } from '../../src/phone/feed.ts';
import { CHANGED, CONTENT, replyOf, request, served, TOKEN, type TestServer } from './served.ts';

let server: TestServer;
beforeEach(async () => {
  server = await served();
});
afterEach(async () => {
  await server.close();
  expect(server.defects).toEqual([]);
});

const get = async (headers: readonly string[] = [], method = 'GET') =>
  replyOf(await request(server, `${method} ${server.path}`, headers));

describe('the feed over HTTP, RFC 9110', () => {
  test('the right path gives the calendar with validators and quiet headers', async () => {
    const reply = await get();
    expect(reply.status).toBe(200);
    expect(reply.body).toBe(CONTENT);
    expect(Object.fromEntries(reply.headers)).toMatchObject({
      'content-type': 'text/calendar; charset=utf-8',
      'content-length': String(CONTENT.length),
      'cache-control': 'private, no-cache',
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'content-disposition': 'inline; filename="shop.ics"',
      'last-modified': 'Fri, 12 Mar 2027 15:00:00 GMT',
      etag: `"${createHash('sha256').update(CONTENT).digest('base64url')}"`,
    });
    expect(feedOf(CONTENT, CHANGED).etag).not.toBe(feedOf(`${CONTENT} `, CHANGED).etag);
  });

  test('HEAD gives the same headers and no body', async () => {
    const [head, whole] = [await get([], 'HEAD'), await get()];
    head.headers.forEach(
      (value, name) => name !== 'date' && expect([name, whole.headers.get(name)]).toEqual([name, value]),
    );
    expect(head.headers.size).toBe(whole.headers.size);
    expect(head.body).toBe('');
  });

  test.each(['ETAG', 'W/ETAG', '"other", W/ETAG', '*'])('If-None-Match: %s gives 304 and no body', async (form) => {
    const etag = (await get()).headers.get('etag')!;
    const reply = await get([`If-None-Match: ${form.replace('ETAG', etag)}`]);
    expect([reply.status, reply.body, reply.headers.get('etag')]).toEqual([304, '', etag]);
  });

  test('another validator, or a date alone, gives the calendar', async () => {
    expect((await get(['If-None-Match: "other"'])).status).toBe(200);
    expect((await get(['If-Modified-Since: Fri, 12 Mar 2027 15:00:00 GMT'])).status).toBe(200);
  });
});

describe('everything else', () => {
  test('wrong secret, short secret, unknown and clever paths all get the same answer to the byte', async () => {
    const paths = [
      `/c/${TOKEN.replace('A', 'B')}/shop.ics`,
      `/c/${TOKEN.slice(1)}/shop.ics`,
      '/c//shop.ics',
      '/',
      '/favicon.ico',
      '/../../etc/passwd',
      '/%2e%2e/%2e%2e/etc/passwd',
      `/c/${TOKEN}/../../shop.yaml`,
      `/c/${TOKEN}/shop.ics/`,
      `/c/${TOKEN}/shop.ics?x`,
      `/c/${TOKEN}/shop.ics%00`,
      `//c/${TOKEN}/shop.ics`,
      `/C/${TOKEN}/shop.ics`,
      `http://127.0.0.1/c/${TOKEN}/shop.ics`,
      '*',
      `/c/${'A'.repeat(5000)}/shop.ics`,
    ];
    const heard = new Set<string>();
    for (const path of paths) heard.add((await request(server, `GET ${path}`)).replace(/^Date: .*\r\n/m, ''));
    expect(heard.size).toBe(1);
    const [one = ''] = heard;
    expect(replyOf(one).status).toBe(404);
    expect(one).not.toContain(TOKEN);
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE', 'PROPFIND', 'REPORT'])(
    '%s gets 405, with what is allowed',
    async (method) => {
      const reply = await get([], method);
      expect([reply.status, reply.headers.get('allow')]).toEqual([405, 'GET, HEAD']);
      expect(reply.body).not.toContain('VCALENDAR');
    },
  );

  test.each(['evil.example', 'evil.example:80', '127.0.0.1', '127.0.0.1:1', '127.0.0.1.evil.example', ''])(
    'Host %j gets nothing, so that no other name can be bound to this address',
    async (host) => {
      const reply = await get([`Host: ${host}`]);
      expect([reply.status, reply.body]).toEqual([421, 'not for this host\n']);
    },
  );

  test('the name localhost, in any case, is meant', async () => {
    expect((await get([`Host: LocalHost:${server.port}`])).status).toBe(200);
  });
});
