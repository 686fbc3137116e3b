import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { onInterrupt } from '../terminal/interrupt.ts';
import type { LanguageCode } from '../words/languages.ts';
import type { Kind, Searches, Waiting } from './searches.ts';

/** A search in a thread of its own. */
export interface Apart<K extends Kind> {
  readonly kind: K;
  readonly ask: Searches[K]['ask'];
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly until: number;
  /** One Int32: 1 as soon as the search is to end with the best that it has. */
  readonly halt: SharedArrayBuffer;
  readonly language: LanguageCode;
}

/** What the thread tells of its search. */
export type Told<K extends Kind> =
  | { readonly kind: 'saying'; readonly text: string }
  | { readonly kind: 'found' }
  | { readonly kind: 'answer'; readonly answer: Searches[K]['answer'] };

/** Beside the program, as it is built. */
const worker = new URL('./search-worker.js', import.meta.url);

/** A search in a thread can be stopped from the keyboard; where the program runs from its sources there is none. */
export function canSearchApart(): boolean {
  return existsSync(fileURLToPath(worker));
}

/** Who waits for the thread. */
interface Listener extends Pick<Waiting, 'say'> {
  /** Told of the first Ctrl-C, where the search ends with what it has. */
  readonly onStop: () => void;
}

/**
 * Searches until done, until the time is up, or until Ctrl-C, after which the best found counts.
 * @returns undefined where Ctrl-C came before anything was found, or once more.
 */
export function searchApart<K extends Kind>(
  search: Omit<Apart<K>, 'halt'>,
  { say, onStop }: Listener,
): Promise<Searches[K]['answer'] | undefined> {
  const halt = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const thread = new Worker(worker, { workerData: { ...search, halt } satisfies Apart<K> });
  let isFound = false;
  let letGo: (() => void) | undefined;
  return new Promise<Searches[K]['answer'] | undefined>((resolve, reject) => {
    const end = () => {
      resolve(undefined);
      void thread.terminate();
    };
    letGo = onInterrupt((times) => {
      if (times > 1 || !isFound) end();
      else {
        Atomics.store(new Int32Array(halt), 0, 1);
        onStop();
      }
    });
    thread.on('message', (told: Told<K>) => {
      if (told.kind === 'saying') say(told.text);
      else if (told.kind === 'found') isFound = true;
      else resolve(told.answer);
    });
    thread.on('error', reject);
    thread.on('exit', () => {
      reject(new Error('the thread that searches ended without an answer'));
    });
  }).finally(() => {
    letGo?.();
  });
}
