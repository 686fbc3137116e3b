import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';

const FILE = `${process.cwd()}/build/mutate/results.jsonl`;

/** What a mutant came to, by tests and sources as they are: a run that was stopped goes on where it was. */
export class KnownResults {
  #known = new Map();
  #tree = '';

  constructor() {
    mkdirSync(dirname(FILE), { recursive: true });
    const lines = existsSync(FILE) ? readFileSync(FILE, 'utf8').split('\n') : [];
    for (const line of lines.filter((l) => l.endsWith('}'))) {
      const { key, ...result } = JSON.parse(line);
      this.#known.set(key, result);
    }
  }

  /** `code`: all that the tests run, without mutants. */
  of(code) {
    this.#tree = hash(code);
  }

  #keyOf({ fileName, mutatorName, location, replacement }) {
    const [file] = /src\/.*$/.exec(fileName);
    return hash([this.#tree, file, mutatorName, JSON.stringify(location), replacement]);
  }

  get(mutant) {
    return this.#known.get(this.#keyOf(mutant));
  }

  add(mutant, { status, killedBy, failureMessage, nrOfTests, reason }) {
    const result = { status, killedBy, failureMessage: failureMessage?.slice(0, 300), nrOfTests, reason };
    appendFileSync(FILE, `${JSON.stringify({ ...result, key: this.#keyOf(mutant) })}\n`);
  }
}

function hash(texts) {
  const sum = createHash('sha256');
  for (const text of texts) sum.update(text).update('\0');
  return sum.digest('hex').slice(0, 24);
}
