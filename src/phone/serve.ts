import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { feedAnswer, refusal, type Answer, type Asked, type Gate } from './answer.ts';
import type { Feed } from './feed.ts';

/** How much patience the server has; tests have less. */
export interface Limits {
  readonly headersMs: number;
  readonly requestMs: number;
  readonly checkEveryMs: number;
  readonly keepAliveMs: number;
  readonly idleMs: number;
  readonly connections: number;
  readonly headerBytes: number;
}

export const usualLimits: Limits = {
  headersMs: 5_000,
  requestMs: 10_000,
  checkEveryMs: 1_000,
  keepAliveMs: 5_000,
  idleMs: 15_000,
  connections: 32,
  headerBytes: 8 * 1024,
};

export interface Serving {
  /** Address to listen on. */
  readonly host: string;
  /** Names under which a client may call, beside localhost. */
  readonly names: readonly string[];
  /** 0: any free one. */
  readonly port: number;
  readonly token: string;
  /** The feed as of now. Asked once a request; must not throw for what the user can mend. */
  readonly feed: () => Promise<Feed>;
  /** Told of a defect while answering; the client learns nothing but 500. */
  readonly onDefect: (error: unknown) => void;
  readonly limits: Limits;
}

export interface Served {
  readonly port: number;
  readonly path: string;
  /** Stops listening and drops who is connected. */
  close(): Promise<void>;
}

/** The path that holds the secret. */
export const pathOf = (token: string) => `/c/${token}/shop.ics`;

function askedBy(request: IncomingMessage): Asked {
  return {
    method: request.method ?? '',
    url: request.url ?? '',
    host: request.headers.host,
    ifNoneMatch: request.headers['if-none-match'],
  };
}

function send(response: ServerResponse, answer: Answer, method: string): void {
  response.writeHead(answer.status, answer.headers);
  response.end(method === 'HEAD' ? undefined : answer.body);
}

async function respond(serving: Serving, gate: Gate, request: IncomingMessage, response: ServerResponse) {
  const asked = askedBy(request);
  try {
    const answer = refusal(asked, gate) ?? feedAnswer(asked, await serving.feed());
    send(response, answer, asked.method);
  } catch (error) {
    serving.onDefect(error);
    if (!response.headersSent) send(response, { status: 500, headers: {}, body: Buffer.alloc(0) }, asked.method);
  }
}

function listening(server: Server, serving: Serving): Promise<AddressInfo> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host: serving.host, port: serving.port }, () => {
      server.off('error', reject);
      const address = server.address();
      if (address === null || typeof address === 'string') reject(new Error('no port to listen on'));
      else resolve(address);
    });
  });
}

function limited(limits: Limits): Server {
  const server = createServer({
    headersTimeout: limits.headersMs,
    requestTimeout: limits.requestMs,
    connectionsCheckingInterval: limits.checkEveryMs,
    keepAliveTimeout: limits.keepAliveMs,
    maxHeaderSize: limits.headerBytes,
  });
  server.maxConnections = limits.connections;
  server.setTimeout(limits.idleMs, (socket) => socket.destroy());
  return server;
}

/** Serves one calendar at one secret path, and nothing else. Rejects if the port cannot be had. */
export async function serve(serving: Serving): Promise<Served> {
  const server = limited(serving.limits);
  const path = pathOf(serving.token);
  const { port } = await listening(server, serving);
  const hosts = [...serving.names, 'localhost', '127.0.0.1'].map((host) => `${host}:${port}`);
  const gate: Gate = { path, hosts };
  const onRequest = (request: IncomingMessage, response: ServerResponse) =>
    void respond(serving, gate, request, response);
  server.on('request', onRequest);
  // Without this, Node would first tell the client to send its body.
  server.on('checkContinue', onRequest);
  server.on('error', serving.onDefect);
  return {
    port,
    path,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
