/** What kills mutants of verifier and drying. The tests that plan whole shops kill some more, but take too long for it. */
export const testFiles = [
  ...[
    'words',
    'every-word',
    'facts',
    'rags',
    'session',
    'session-words',
    'dates',
    'pace',
    'settled',
    'carried',
    'surface',
    'passed',
  ],
  ...['verify', 'oracle', 'sweep'],
]
  .map((name) => `tests/verify/${name}.test.ts`)
  .concat(
    [
      ...['windows', 'learn', 'acceptance', 'chance', 'surface', 'fit-hours', 'dose-map', 'laws', 'outlook'],
      ...['film-maths', 'stack', 'first-minute', 'keep-above', 'rate-law', 'spread', 'why-unfit', 'learn-by-bayes'],
      ...['carry-in', 'dose', 'film-hours', 'remedy'],
    ].map((name) => `tests/drying/${name}.test.ts`),
  );
