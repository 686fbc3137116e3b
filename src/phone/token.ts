import { createHash, randomBytes } from 'node:crypto';
import { constants } from 'node:fs';
import { mkdir, open, readFile, rm } from 'node:fs/promises';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';

type Environment = Readonly<Record<string, string | undefined>>;

/** 128 bits, RFC 4648 section 5. */
const FORM = /^[A-Za-z0-9_-]{22}$/;

function stateFolder(env: Environment): string {
  if (process.platform === 'win32') return join(env['LOCALAPPDATA'] ?? join(homedir(), 'AppData', 'Local'), 'drybench');
  const named = env['XDG_STATE_HOME'];
  return join(named?.startsWith('/') === true ? named : join(homedir(), '.local', 'state'), 'drybench');
}

/**
 * Where the secret of a shop's feed is kept: in the user's own state folder, one file a shop, never in the shop's
 * folder, which may be shared or put under version control. `shopFolder` must be its real, absolute path.
 */
export function tokenFile(shopFolder: string, env: Environment): string {
  const name = createHash('sha256').update(shopFolder).digest('hex').slice(0, 32);
  return join(stateFolder(env), 'phone', name);
}

function isMissing(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}

async function kept(file: string): Promise<string | undefined> {
  try {
    const token = (await readFile(file, 'utf8')).trim();
    return FORM.test(token) ? token : undefined;
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

/** The shop's secret; a new one where there is none yet, or where `anew`: then old addresses stop working. */
export async function tokenIn(file: string, anew: boolean): Promise<string> {
  const old = anew ? undefined : await kept(file);
  if (old !== undefined) return old;
  await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  await rm(file, { force: true });
  const token = randomBytes(16).toString('base64url');
  const handle = await open(file, constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL, 0o600);
  try {
    await handle.writeFile(`${token}\n`);
    await handle.sync();
  } finally {
    await handle.close();
  }
  return token;
}
