import { parentPort, workerData } from 'node:worker_threads';
import { speakCode } from './language.ts';
import type { Apart, Told } from './search-apart.ts';
import { type Kind, searches, type Searches } from './searches.ts';

/** The search itself, off the thread that listens to the keyboard: whether it is to stop, a shared number says. */
const { kind, ask, until, halt, language } = workerData as Apart<Kind>;
const tell = (told: Told<Kind>) => parentPort?.postMessage(told);
const halted = new Int32Array(halt);

function search<K extends Kind>(what: K, asked: Searches[K]['ask']): Searches[K]['answer'] {
  return searches[what](asked, {
    stop: () => Atomics.load(halted, 0) === 1 || Date.now() >= until,
    say: (text) => tell({ kind: 'saying', text }),
    onFound: () => tell({ kind: 'found' }),
  });
}

async function answer(): Promise<void> {
  await speakCode(language);
  tell({ kind: 'answer', answer: search(kind, ask) });
}

// What goes wrong ends the thread, and is told there.
void answer();
