// Tries the mutants of verifier and drying one after the other in one process: many times as fast as starting each anew.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { TestStatus } from '@stryker-mutator/api/test-runner';
import { bundled } from './bundle-tests.js';
import { collect } from './collect.js';
import { testFiles } from './test-files.js';

/** The sources as they were when the run began: those of the project may change meanwhile. */
const original = `${process.cwd()}/build/mutate/original`;
const state = (globalThis.__stryker__ ??= {});
/** How long each test takes, for a process that goes on where another was stopped. */
const timesFile = `${process.cwd()}/build/mutate/times.json`;
const all = () => true;
const none = () => false;

class Runner {
  #bundles = new Map();
  /** Test id -> how long it takes, ms. */
  #times = new Map();
  #firstRun;
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
    if (existsSync(timesFile)) this.#times = new Map(JSON.parse(readFileSync(timesFile, 'utf8')));
    else this.#firstRun = await this.#lookThrough();
  }

  dryRun() {
    return this.#firstRun;
  }

  async #lookThrough() {
    Object.assign(state, {
      mutantCoverage: { static: {}, perTest: {} },
      activeMutant: undefined,
      hitCount: undefined,
    });
    const tests = [];
    for (const file of testFiles) {
      // Once with all mutants there, to see which of them a test comes by, and once without, to see how long it takes.
      await this.#runAll(file, await this.#bundle(file, 'all', all));
      tests.push(...(await this.#runAll(file, await this.#bundle(file, 'none', none))));
    }
    this.#bundles.clear();
    for (const { id, timeSpentMs } of tests) this.#times.set(id, timeSpentMs);
    writeFileSync(timesFile, JSON.stringify([...this.#times]));
    return { status: 'complete', tests, mutantCoverage: state.mutantCoverage };
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
    const start = await bundled(file, original, isMutated);
    this.#bundles.set(`${file} ${key}`, start);
    return start;
  }

  /** First what has killed most mutants of the same file for the time that it takes. */
  #inOrder(ids, kills) {
    const worth = (id) => ((kills.get(id) ?? 0) + 0.1) / this.#times.get(id);
    return [...ids].sort((a, b) => worth(b) - worth(a));
  }

  async mutantRun({ activeMutant, mutantActivation, testFilter, hitLimit }) {
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
      let error;
      try {
        if (!collected.has(file)) collected.set(file, collect(file, await this.#bundle(file, source, isMutated)));
        ({ error } = await run(id, collected.get(file)[index].body));
      } catch (fileError) {
        error = fileError;
      }
      nrOfTests += 1;
      if (state.hitCount > state.hitLimit) return { status: 'timeout', reason: 'goes round and round' };
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

async function run(id, body) {
  const began = performance.now();
  state.currentTestId = id;
  try {
    await body();
    return { timeSpentMs: performance.now() - began };
  } catch (error) {
    return { timeSpentMs: performance.now() - began, error };
  } finally {
    state.currentTestId = undefined;
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'in-process', Runner)];
