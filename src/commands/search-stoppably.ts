import { whileSaying } from '../terminal/progress.ts';
import { worded } from '../words/worded.ts';
import { CannotGoOn, type Call } from './call.ts';
import { languageSpoken } from './language.ts';
import { canSearchApart, searchApart } from './search-apart.ts';
import { type Kind, searches, type Searches } from './searches.ts';

/** From so many steps on a search takes longer than a thread takes to start. */
const WORTH_A_THREAD = 10;

interface Wanted {
  /** Said meanwhile. */
  readonly saying: string;
  /** Steps to be planned. */
  readonly steps: number;
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly until?: number;
}

/**
 * Searches, and says so while it takes. Ctrl-C ends a search that takes long: what was found until then counts, and `call.halt` tells that.
 * @throws CannotGoOn, exit code 130, where Ctrl-C came before anything was found.
 */
export async function searchStoppably<K extends Kind>(
  call: Call,
  kind: K,
  ask: Searches[K]['ask'],
  { saying, steps, until = Infinity }: Wanted,
): Promise<Searches[K]['answer']> {
  // Who has stopped the plan that this one was to begin from, waits for no other.
  if (call.halt.early) throw stopped();
  const apart = steps >= WORTH_A_THREAD && canSearchApart();
  const answer = await whileSaying(call.io, saying, ({ say, tick }) => {
    if (apart)
      return searchApart(
        { kind, ask, until, language: languageSpoken() },
        {
          say: (text) => {
            if (!call.halt.early) say(text);
          },
          onStop: () => {
            call.halt.early = true;
            say(worded`stopping …`);
          },
        },
      );
    const stop = () => {
      tick();
      return call.io.clock() >= until;
    };
    return searches[kind](ask, { stop, say, onFound: () => undefined });
  });
  if (answer !== undefined) return answer;
  throw stopped();
}

function stopped(): CannotGoOn {
  return new CannotGoOn(worded`stopped before a plan was found; nothing was written`, undefined, 130);
}
