import { createRequire } from 'node:module';
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  ChaiStyleAssertions,
  chai,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';

for (const plugin of [JestExtend, JestChaiExpect, ChaiStyleAssertions, JestAsymmetricMatchers]) chai.use(plugin);

const expect = Object.assign((value, message) => chai.expect(value, message), chai.expect);
Object.assign(expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
setState({ assertionCalls: 0 }, expect);

/** That of the usual run: a mutant that dies in one run dies in the next. */
const SEED = 20270111;

// Properties are tried less often than otherwise, and what they find is not made small: fewer tries can only kill fewer.
const fastCheck = createRequire(import.meta.url)('fast-check');
const less = (file) => {
  const share = file.startsWith('tests/drying/') ? 0.1 : 0.2;
  const assert = (property, { numRuns = 100, ...options } = {}) =>
    fastCheck.assert(property, { seed: SEED, ...options, numRuns: Math.ceil(numRuns * share), endOnFailure: true });
  return { ...fastCheck, assert, default: { ...fastCheck.default, assert } };
};

/** A number tells apart the cases that elsewhere go by their values. */
const cases = (add) => (rows) => (name, body) =>
  rows.forEach((row, i) => add(`${name} #${i}`, () => (Array.isArray(row) ? body(...row) : body(row))));

/** The tests that a file of tests asks for, in order. */
export function collect(file, start) {
  const tests = [];
  const path = [];
  const describe = (name, body) => {
    path.push(name);
    body();
    path.pop();
  };
  const test = (name, body) => tests.push({ name: [...path, name].join(' > '), body });
  describe.each = cases(describe);
  test.each = cases(test);
  start({ vitest: { describe, test, it: test, expect }, 'fast-check': less(file) });
  return tests;
}
