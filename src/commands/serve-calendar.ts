import { realpathSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { readMinutes } from '../files/quantities/duration.ts';
import { lanAddress } from '../phone/address.ts';
import { feedOf, type Feed } from '../phone/feed.ts';
import { freshFeed } from '../phone/fresh-feed.ts';
import { scanCode } from '../phone/scan.ts';
import { serve, usualLimits, type Served } from '../phone/serve.ts';
import { stampOfShop } from '../phone/stamp.ts';
import { tokenFile, tokenIn } from '../phone/token.ts';
import { harmless } from '../terminal/harmless.ts';
import { localTime } from '../time/zone.ts';
import { answerLook, printJson, tell, wantsJson } from './answers.ts';
import { CannotGoOn, isFlagged, numberFlag, textFlag, type Call, type ExitCode } from './call.ts';
import { calendarWishes } from './calendar-wishes.ts';
import { complaint } from './complain.ts';
import { nowOf, openShop, shopFolder } from './open-shop.ts';
import { planOf } from './plan-of.ts';
import { toldCalendar } from './told-calendar.ts';
import { worded } from '../words/worded.ts';

const usualPort = 47_631;
const loopback = '127.0.0.1';
const everywhere = '0.0.0.0';
/** Timers of Node hold no more than 24 days. */
const LONGEST_MINUTES = 14 * 24 * 60;

interface Address {
  readonly listen: string;
  /** What a phone is to call. */
  readonly name: string;
}

function addressOf(call: Call): Address {
  const host = textFlag(call, 'host');
  const lan = lanAddress(networkInterfaces());
  if (host !== undefined) return { listen: host, name: host === everywhere ? (lan ?? loopback) : host };
  if (!isFlagged(call, 'lan')) return { listen: loopback, name: loopback };
  if (lan !== undefined) return { listen: lan, name: lan };
  throw new CannotGoOn(
    worded`this machine has no address in a local network`,
    worded`join one, or name an address with --host`,
  );
}

interface Made {
  readonly feed: Feed;
  readonly events: number;
  readonly shopName: string;
}

async function make(call: Call): Promise<Made> {
  const shop = await openShop(call);
  const wishes = await calendarWishes(call, shop);
  const calendar = toldCalendar(call.disk, shop, (await planOf(call, shop)).plan, { ...wishes, form: 'feed' });
  const feed = feedOf(calendar.text, calendar.ledger.lastChanged);
  return { feed, events: calendar.eventCount, shopName: shop.book.shop.name };
}

async function sayBroken(call: Call, error: unknown): Promise<void> {
  const text = error instanceof Error ? error.message : String(error);
  const why = error instanceof CannotGoOn ? await complaint(error, call.io) : `drybench: ${harmless(text)}\n`;
  call.io.stderr.write(worded`${why}drybench: the calendar stays as it was until this is mended\n`);
}

async function listen(call: Call, address: Address, token: string, feed: () => Promise<Feed>): Promise<Served> {
  const port = numberFlag(call, 'port', usualPort, 1, 65_535);
  const onDefect = (error: unknown) => {
    call.io.stderr.write(`drybench: ${harmless(error instanceof Error ? error.message : String(error))}\n`);
  };
  try {
    return await serve({
      host: address.listen,
      names: [address.name],
      port,
      token,
      feed,
      onDefect,
      limits: usualLimits,
    });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'EADDRINUSE')
      throw new CannotGoOn(worded`port ${port} is in use`, worded`name another one with --port`);
    if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND' || code === 'EACCES')
      throw new CannotGoOn(worded`cannot listen on ${address.listen}:${port}`, worded`see --host and --port`);
    throw error;
  }
}

/** Minutes of `--for`, or undefined for as long as nobody interrupts. */
function minutesToServe(call: Call): number | undefined {
  const written = textFlag(call, 'for');
  if (written === undefined) return undefined;
  const read = readMinutes(written);
  if (read.ok && read.value > 0 && read.value <= LONGEST_MINUTES) return read.value;
  throw new CannotGoOn(
    worded`--for "${written}" is no time to serve`,
    worded`write a time up to 14 d, like 10 min or 2 h`,
  );
}

function ended(forMinutes: number | undefined): Promise<ExitCode> {
  return new Promise((resolve) => {
    const timer = forMinutes === undefined ? undefined : setTimeout(() => end(0), forMinutes * 60_000);
    const interrupt = () => end(130);
    const end = (code: ExitCode) => {
      clearTimeout(timer);
      process.off('SIGINT', interrupt).off('SIGTERM', interrupt);
      resolve(code);
    };
    process.on('SIGINT', interrupt).on('SIGTERM', interrupt);
  });
}

async function sayWhere(call: Call, url: string, made: Made, name: string): Promise<void> {
  const look = await answerLook(call);
  const isColoured = look.paint.strong('x') !== 'x';
  const columns = call.io.stdout.isTTY === true ? look.columns : undefined;
  const code = scanCode(`webcal://${url}`, { columns, colour: isColoured, plain: look.ascii });
  const whom =
    name === loopback ? worded`this machine only (add --lan for your network)` : worded`phones in this network`;
  await tell(
    call,
    [
      worded`${harmless(made.shopName)}: ${made.events} entries, for ${whom}.`,
      `  webcal://${url}`,
      `  http://${url}`,
      ...(code === '' ? [] : [code]),
      worded`Whoever has this address can read the plan; --new-address makes it worthless and gives another.`,
      worded`It works while this command runs and phone and machine share a network; a calendar that is fetched by a service on the internet cannot reach it. When you subscribe, look for a switch that keeps alarms.`,
      worded`Ctrl-C ends it.`,
      '',
    ].join('\n'),
  );
}

/** Serves the calendar until interrupted, or for as long as `--for` says. */
export async function serveCalendar(call: Call): Promise<ExitCode> {
  const forMinutes = minutesToServe(call);
  const address = addressOf(call);
  const folder = realpathSync(shopFolder(call));
  const first = await openShop(call);
  // A plan grows old: what was not done by today is planned anew each day, also where no file has changed.
  const stamp = async () =>
    `${await stampOfShop(folder)}\n${localTime(nowOf(call, first.manner.zone), first.manner.zone).date}`;
  const firstStamp = await stamp();
  const made = await make(call);
  // Whoever pressed Ctrl-C while it planned wants no server either.
  if (call.halt.early) throw new CannotGoOn(worded`stopped before anything was served`, undefined, 130);
  const token = await tokenIn(tokenFile(folder, call.io.env), isFlagged(call, 'newAddress'));
  const onBroken = (error: unknown) => void sayBroken(call, error);
  const feed = freshFeed(
    { stamp, build: async () => (await make({ ...call, halt: { early: false } })).feed, onBroken },
    made.feed,
    firstStamp,
  );
  const served = await listen(call, address, token, feed);
  const url = `${address.name}:${served.port}${served.path}`;
  const end = ended(forMinutes);
  if (wantsJson(call)) printJson(call, { format: 'drybench.phone/1', url: `http://${url}`, events: made.events });
  else await sayWhere(call, url, made, address.name);
  const code = await end;
  await served.close();
  return code;
}
