import type { Task } from '../../model/task.ts';
import { situationOf } from '../../planning/situation-of.ts';
import type { Call } from '../call.ts';
import { meant } from '../choose.ts';
import { pieceChoice } from '../name-things.ts';
import { rememberedShop } from '../open-shop.ts';
import { worded } from '../../words/worded.ts';
import type { Asked, Offered } from './asked.ts';

const MS_PER_MINUTE = 60_000;

/** Commands about steps that are over. */
const looksBack: ReadonlySet<string> = new Set(['seen', 'failed', 'again']);

const bookIn = async (call: Call, shop: string) => (await rememberedShop(call, shop, {})).value.book;

export async function handsIn(call: Call, shop: string): Promise<readonly Offered[]> {
  return ((await bookIn(call, shop))?.shop.hands ?? []).map(({ id, name }) => [id, name]);
}

/** What `compare` may change, with a figure to begin from: `garage=+3K`, `bench-1=+1`. */
export async function changesIn(call: Call, shop: string, { flag }: Asked): Promise<readonly Offered[]> {
  const settings = (await bookIn(call, shop))?.shop;
  if (settings === undefined) return [];
  if (flag === '--slot') return settings.stations.map(({ id, name }) => [`${id}=+1`, name]);
  const figure = flag === '--drier' ? '50%' : settings.units === 'us' ? '+5F' : '+3K';
  return settings.rooms.map(({ id, name }) => [`${id}=${figure}`, name]);
}

/** The steps of a piece that the command can be about, in their order; by their bare name once that is being typed. */
export async function stepsIn(call: Call, shop: string, { face, words, typed }: Asked): Promise<readonly Offered[]> {
  const book = await bookIn(call, shop);
  const [piece, ...more] = meant(words[0] ?? '', (book?.pieces ?? []).map(pieceChoice));
  if (book === undefined || piece === undefined || more.length > 0) return [];
  const { tasks, done } = situationOf(book, Math.floor(call.io.clock() / MS_PER_MINUTE));
  const over = looksBack.has(face?.name ?? '');
  const fitting = tasks.filter((t) => t.piece === piece.id && done.has(t.id) === over);
  const about = ({ title, coat }: Task) => title + (coat === undefined ? '' : worded`, coat ${coat}`);
  const whole = (task: Task): Offered => [`${task.section}/${task.step}`, about(task)];
  const offered = fitting.map(whole);
  if (offered.some(([word]) => word.startsWith(typed))) return offered;
  const once = fitting.filter(({ step }) => fitting.filter((other) => other.step === step).length === 1);
  return once.map((task) => [task.step, about(task)]);
}
