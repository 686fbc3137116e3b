import { counted, joinedByOr, phrase, translated, worded } from '../words/worded.ts';

/** What the places of the command line are called: `<piece>`, `--days <number>`. */
const placeNames = [
  phrase('address'),
  phrase('amount'),
  phrase('answer'),
  phrase('areas'),
  phrase('change'),
  phrase('code'),
  phrase('columns'),
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
const refusals: readonly (readonly [RegExp, (...found: string[]) => string])[] = [
  [/^unknown option '(.*)'$/s, (flag = '') => worded`unknown option "${flag}"`],
  [/^unknown command '(.*)'$/s, (name = '') => worded`unknown command "${name}"`],
  [/^missing required argument '(.*)'$/, (name = '') => worded`a word is missing: ${translated(name)}`],
  [/^option '(.*)' argument missing$/, (flags = '') => worded`option "${namesWorded(flags)}" needs a value`],
  [
    /^too many arguments for '(.*)'\. Expected (\d+) arguments? but got (\d+)\.$/,
    (name = '', most = '', typed = '') =>
      most === '0'
        ? worded`${name} takes no word behind it`
        : worded`${name} takes ${counted(Number(most), '{0} word', '{0} words')} behind it, and there are ${typed}`,
  ],
];

const GUESS = '\n(Did you mean ';

/** `one of a, b?)` */
function guessesIn(text: string): string[] {
  return text
    .slice(0, -'?)'.length)
    .replace(/^one of /, '')
    .split(', ');
}

/**
 * Why the line cannot be taken, and what to write, from what the library says of it; what is not known stays as it is.
 * @param command that the line is for, where it names one
 */
export function usageTrouble(text: string, command?: string): { readonly message: string; readonly advice: string } {
  const whole = text.replace(/^error: /, '');
  const guess = whole.endsWith('?)') ? whole.lastIndexOf(GUESS) : -1;
  const said = guess < 0 ? whole : whole.slice(0, guess);
  const ours = refusals.flatMap(([pattern, say]) => {
    const found = pattern.exec(said);
    return found === null ? [] : [say(...found.slice(1))];
  });
  return {
    message: ours[0] ?? said,
    advice:
      guess < 0
        ? command === undefined
          ? worded`drybench --help lists the commands; drybench COMMAND --help its options`
          : worded`drybench ${command} --help says what may be written`
        : worded`did you mean ${joinedByOr(guessesIn(whole.slice(guess + GUESS.length)))}?`,
  };
}
