import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Book } from '../model/book.ts';
import type { Plan } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';
import { onInterrupt } from '../terminal/interrupt.ts';
import type { LanguageCode } from '../words/languages.ts';

/** What a search works on in a thread of its own: data only. */
export interface LongSearch {
  readonly book: Book;
  readonly now: Minute;
  readonly kept?: Plan;
  readonly basis: string;
  readonly seed: number;
  /** Moves off the kept plan cost nothing. */
  readonly anew: boolean;
  /** Steps of search; absent: by the size of the shop. */
  readonly steps?: number;
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly until: number;
  /** One Int32: 1 as soon as the search is to end with the best that it has. */
  readonly stop: SharedArrayBuffer;
  readonly language: LanguageCode;
}

/** What the thread tells of its search. */
export type Told =
  | { readonly kind: 'better'; readonly value: number; readonly bound: number }
  | { readonly kind: 'plan'; readonly plan: Plan }
  | { readonly kind: 'none' };

/** How a search ended: with the plan, or with none that holds; and whether somebody cut it short. */
export interface Ended {
  readonly plan?: Plan;
  readonly interrupted: boolean;
}

/** Beside the program, as it is built. */
const worker = new URL('./search-worker.js', import.meta.url);

/** A search in a thread can be stopped from the keyboard; where the program runs from its sources there is none. */
export function canSearchApart(): boolean {
  return existsSync(fileURLToPath(worker));
}

/** Searches until the time is up or Ctrl-C is pressed, which `onStop` is told of; the best plan found counts. */
export function searchApart(
  search: Omit<LongSearch, 'stop'>,
  onBetter: (value: number, bound: number) => void,
  onStop: () => void,
): Promise<Ended> {
  const stop = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  let interrupted = false;
  const letGo = onInterrupt(() => {
    interrupted = true;
    Atomics.store(new Int32Array(stop), 0, 1);
    onStop();
  });
  const thread = new Worker(worker, { workerData: { ...search, stop } satisfies LongSearch });
  return new Promise<Ended>((resolve, reject) => {
    thread.on('message', (told: Told) => {
      if (told.kind === 'better') onBetter(told.value, told.bound);
      else resolve({ interrupted, ...(told.kind === 'plan' && { plan: told.plan }) });
    });
    thread.on('error', reject);
    thread.on('exit', () => {
      reject(new Error('the thread that searches ended without an answer'));
    });
  }).finally(letGo);
}
