// Tries the mutants of verifier and drying one after the other in one process: many times as fast as starting each anew.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { TestStatus } from '@stryker-mutator/api/test-runner';
import { bundled } from './bundle-tests.js';
import { collect } from './collect.js';
import { KnownResults } from './known-results.js';
import { testFiles } from './test-files.js';

/** The sources as they were when the run began: those of the project may change meanwhile. */
const original = `${process.cwd()}/build/mutate/original`;
const state = (globalThis.__stryker__ ??= {});
/** What the first look at the tests tells a process that goes on where another was stopped. */
const lookFile = `${process.cwd()}/build/mutate/look.json`;
const all = () => true;
const none = () => false;

class Runner {
  #bundles = new Map();
  /** Test id -> how long it takes, ms. */
  #times = new Map();
  #firstRun;
  #results = new KnownResults();
  /** Source file -> test id -> how many of its mutants that test has killed. */
  #kills = new Map();

  capabilities() {
    return { reloadEnvironment: true };
  }

  /**
   * Looks through the tests before anything is timed: a mutant that hangs is given up after as long as the first run takes.
   * A process that goes on where another was stopped finds their times in a file.
   */
  async init() {
    const known = existsSync(lookFile) && JSON.parse(readFileSync(lookFile, 'utf8'));
    if (known) this.#times = new Map(known.times);
    else this.#firstRun = await this.#lookThrough();
    this.#results.of(known ? known.codes : this.#firstRun.codes);
  }

  dryRun() {
    return this.#firstRun;
  }

  async #lookThrough() {
    Object.assign(state, { mutantCoverage: { static: {}, perTest: {} }, activeMutant: undefined, hitCount: undefined });
    const tests = [];
    const codes = [];
    for (const file of testFiles) {
      // Once with all mutants there, to see which of them a test comes by, and once without, to see how long it takes.
      await this.#runAll(file, (await this.#bundle(file, 'all', all)).start);
      const plain = await this.#bundle(file, 'none', none);
      tests.push(...(await this.#runAll(file, plain.start)));
      codes.push(plain.code);
    }
    this.#bundles.clear();
    for (const { id, timeSpentMs } of tests) this.#times.set(id, timeSpentMs);
    writeFileSync(lookFile, JSON.stringify({ times: [...this.#times], codes }));
    return { status: 'complete', tests, mutantCoverage: state.mutantCoverage, codes };
  }

  async #runAll(file, start) {
    const results = [];
    for (const [i, { name, body }] of collect(file, start).entries()) {
      const id = `${file}#${i}`;
      const { timeSpentMs, error } = await run(id, body);
      const failed =
        error === undefined
          ? { status: TestStatus.Success }
          : { status: TestStatus.Failed, failureMessage: String(error) };
      results.push({ id, name, fileName: file, timeSpentMs, ...failed });
    }
    return results;
  }

  async #bundle(file, key, isMutated) {
    const known = this.#bundles.get(`${file} ${key}`);
    if (known !== undefined) return known;
    const made = await bundled(file, original, isMutated);
    this.#bundles.set(`${file} ${key}`, made);
    return made;
  }

  /** First what has killed most mutants of the same file for the time that it takes. */
  #inOrder(ids, kills) {
    const worth = (id) => ((kills.get(id) ?? 0) + 0.1) / this.#times.get(id);
    return [...ids].sort((a, b) => worth(b) - worth(a));
  }

  async mutantRun(options) {
    const known = this.#results.get(options.activeMutant);
    if (known !== undefined) return known;
    const result = await this.#tryMutant(options);
    this.#results.add(options.activeMutant, result);
    return result;
  }

  async #tryMutant({ activeMutant, mutantActivation, testFilter, hitLimit }) {
    const source = activeMutant.fileName;
    const isMutated = (path) => source.endsWith(`/${path}`) || source === path;
    const kills = this.#kills.get(source) ?? new Map();
    this.#kills.set(source, kills);
    Object.assign(state, {
      activeMutant: activeMutant.id,
      hitCount: hitLimit && 0,
      hitLimit: hitLimit && hitLimit / 10,
    });
    const collected = new Map();
    let nrOfTests = 0;
    const [, folder] = /src\/(\w+)\//.exec(source);
    // What runs as a file is loaded belongs to no test.
    const ids = mutantActivation === 'static' ? undefined : testFilter;
    const own = [...(ids ?? this.#times.keys())].filter((id) => id.startsWith(`tests/${folder}/`));
    for (const id of this.#inOrder(own, kills)) {
      const [file, index] = id.split('#');
      // A busy machine takes many times as long as it took at first.
      const longestMs = 3000 + 20 * this.#times.get(id);
      let error;
      try {
        const { start } = await this.#bundle(file, source, isMutated);
        if (!collected.has(file))
          collected.set(
            file,
            within(20_000, () => collect(file, start)),
          );
        ({ error } = await run(id, collected.get(file)[index].body, longestMs));
      } catch (fileError) {
        error = fileError;
      }
      nrOfTests += 1;
      if (state.hitCount > state.hitLimit || error?.code === HANGS)
        return { status: 'timeout', reason: 'goes round and round' };
      if (error === undefined) continue;
      kills.set(id, (kills.get(id) ?? 0) + 1);
      return {
        status: 'killed',
        killedBy: [id],
        failureMessage: String(error),
        nrOfTests,
      };
    }
    return { status: 'survived', nrOfTests };
  }
}

/** Called through a script of its own, so that what hangs can be broken off without ending the process. */
const call = new Script('globalThis.__stryker__.body()');
const HANGS = 'ERR_SCRIPT_EXECUTION_TIMEOUT';
const LONGEST_MS = 600_000;

function within(ms, body) {
  state.body = body;
  return call.runInThisContext({ timeout: Math.ceil(ms) });
}

async function run(id, body, longestMs = LONGEST_MS) {
  const began = performance.now();
  state.currentTestId = id;
  try {
    await within(longestMs, body);
    return { timeSpentMs: performance.now() - began };
  } catch (error) {
    return { timeSpentMs: performance.now() - began, error };
  } finally {
    state.currentTestId = undefined;
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'in-process', Runner)];
