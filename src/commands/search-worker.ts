import { parentPort, workerData } from 'node:worker_threads';
import { makePlan } from '../planning/make-plan.ts';
import { situationOf } from '../planning/situation-of.ts';
import { speakCode } from './language.ts';
import type { Told, LongSearch } from './search-longer.ts';

/** The search itself, off the thread that listens to the keyboard: whether it is to stop, a shared byte says. */
const { book, now, kept, basis, seed, anew, steps, until, stop, language } = workerData as LongSearch;
const tell = (told: Told) => parentPort?.postMessage(told);
const stopping = new Int32Array(stop);

async function search(): Promise<void> {
  await speakCode(language);
  const made = makePlan(situationOf(book, now), {
    seed,
    anew,
    ...(steps !== undefined && { steps }),
    stop: () => Atomics.load(stopping, 0) === 1 || Date.now() >= until,
    onBetter: (value, bound) => tell({ kind: 'better', value, bound }),
    basis,
    ...(kept && { kept }),
  });
  tell(made.kind === 'plan' ? { kind: 'plan', plan: made.plan } : { kind: 'none' });
}

// What goes wrong ends the thread, and is told there.
void search();
