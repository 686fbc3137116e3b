import { joinedByOr, phrase, spokenCode, translated, worded } from '../words/worded.ts';

/** What the places of the command line are called: `<piece>`, `--days <number>`. */
const placeNames = [
  phrase('address'),
  phrase('amount'),
  phrase('answer'),
  phrase('areas'),
  phrase('change'),
  phrase('code'),
  phrase('command'),
  phrase('currency'),
  phrase('date'),
  phrase('day'),
  phrase('difference'),
  phrase('fault'),
  phrase('faults'),
  phrase('file'),
  phrase('finish'),
  phrase('folder'),
  phrase('hand'),
  phrase('hours'),
  phrase('how'),
  phrase('humidity'),
  phrase('kind'),
  phrase('kinds'),
  phrase('line'),
  phrase('measures'),
  phrase('minutes'),
  phrase('money'),
  phrase('name'),
  phrase('names'),
  phrase('number'),
  phrase('numbers'),
  phrase('options'),
  phrase('other'),
  phrase('piece'),
  phrase('place'),
  phrase('recipe'),
  phrase('recipes'),
  phrase('result'),
  phrase('room'),
  phrase('seconds'),
  phrase('section'),
  phrase('shares'),
  phrase('shell'),
  phrase('station'),
  phrase('step'),
  phrase('temp'),
  phrase('temps'),
  phrase('text'),
  phrase('time'),
  phrase('units'),
  phrase('until'),
  phrase('use'),
  phrase('wood'),
  phrase('words'),
  phrase('zone'),
] as const;

const known: ReadonlySet<string> = new Set(placeNames);

/** `--warmer <room=difference...>` with the names of its places in the language that is spoken. */
export function namesWorded(flags: string): string {
  return flags.replaceAll(/[<[][^>\]]*[>\]]/g, (place) =>
    place.replaceAll(/[a-z]+/g, (name) => (known.has(name) ? translated(name) : name)),
  );
}

/** Titles of the help that the library for the command line writes. */
export const helpTitles = [
  phrase('Usage:'),
  phrase('Arguments:'),
  phrase('Options:'),
  phrase('Global Options:'),
  phrase('Commands:'),
];

/** What the library for the command line says of a line that it cannot take, and the same in our words. */
const usageErrors: readonly (readonly [RegExp, (...found: string[]) => string])[] = [
  [/^error: unknown option '(.*)'$/, (flag = '') => worded`error: unknown option '${flag}'`],
  [/^error: unknown command '(.*)'$/, (name = '') => worded`error: unknown command '${name}'`],
  [
    /^error: missing required argument '(.*)'$/,
    (name = '') => worded`error: missing required argument '${translated(name)}'`,
  ],
  [
    /^error: option '(.*)' argument missing$/,
    (flags = '') => worded`error: option '${namesWorded(flags)}' argument missing`,
  ],
  [
    /^error: too many arguments(?: for '(.*)')?\. Expected (\d+) arguments? but got (\d+)\.$/,
    (name = '', most = '', typed = '') =>
      worded`error: too many arguments for '${name}'. Expected ${most} but got ${typed}.`,
  ],
  [/^\(Did you mean (?:one of )?(.*)\?\)$/, (words = '') => worded`(Did you mean ${joinedByOr(words.split(', '))}?)`],
];

/** An error of usage in the language that is spoken; what is not known stays as it is. */
export function usageError(text: string): string {
  if (spokenCode() === 'en') return text;
  return text
    .split('\n')
    .map((line) => {
      for (const [pattern, said] of usageErrors) {
        const found = pattern.exec(line);
        if (found !== null) return said(...found.slice(1));
      }
      return line;
    })
    .join('\n');
}
