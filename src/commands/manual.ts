import { faces, type Face } from './faces.ts';
import { about, care, commonOptions } from './program.ts';
import { namesWorded } from './usage.ts';
import { translated, worded } from '../words/worded.ts';

// As call.ts has them.
const exitCodes: readonly (readonly [code: number, meaning: string])[] = [
  [0, 'done'],
  [1, 'the answer is no: no plan exists, a promise cannot be kept, there is nothing to take back'],
  [2, 'what was typed, or stands in a file, is not right; or a file cannot be written'],
  [70, 'a defect in Drybench'],
  [75, 'the shop is in use by another command: try again'],
  [130, 'interrupted'],
];

const environment: readonly (readonly [name: string, meaning: string])[] = [
  ['NO_COLOR', 'set and not empty: no colour'],
  ['FORCE_COLOR', 'colour, whatever reads it; 0: none. NO_COLOR and --plain stand above it'],
  ['TERM', 'dumb: no colour, and no line that tells how far a search has come'],
  ['COLUMNS', 'width of pictures, where no terminal tells it (default 80); there no line of text is broken'],
  ['LC_ALL, LC_CTYPE, LANG', 'a locale that is not UTF-8: ASCII signs only'],
  ['PAGER', 'program that shows answers longer than the terminal; none is used where it is not set'],
  ['DRYBENCH_AT', 'time that counts as now, where --at is not given'],
  ['DRYBENCH_DEBUG', '1: as --debug'],
];

const files: readonly (readonly [name: string, meaning: string])[] = [
  ['shop.yaml', 'opening hours, rooms and their air, places, tools, hands, stock and prices'],
  ['pieces/NAME.yaml', 'a piece: its sections, their recipes and areas, when it is wanted'],
  ['recipes/NAME.yaml, recipes/parts/NAME.yaml', "the shop's own recipes and parts of recipes"],
  ['materials/NAME.yaml', "the shop's own materials"],
  ['supplies.yaml', 'what work uses up besides'],
  ['air/NAME.csv', 'records of temperature and humidity'],
  ['journal.jsonl', 'what was done and seen; written by Drybench alone'],
  ['plan.json, plans/', 'the plan that the shop follows, and those before; written by Drybench alone'],
  ['schemas/', 'the forms of the files above, for an editor'],
];

const hex = (character: string) => (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');

/** Text that a formatter of manuals shows letter by letter. */
function roff(text: string): string {
  return text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replaceAll(/[^\x20-\x7e\n]/gu, (c) => `\\[u${hex(c)}]`)
    .replaceAll(/^(?=[.'])/gm, '\\&');
}

const quoted = (text: string) => `"${roff(text).replaceAll('"', '\\(dq')}"`;

/** `--days <number>`: the flag bold, what comes behind it in italics. */
function heading(flags: string): string {
  const [flag = '', ...rest] = namesWorded(flags).split(' ');
  return `.TP\n\\fB${roff(flag)}\\fR${rest.map((word) => ` \\fI${roff(word)}\\fR`).join('')}`;
}

const entry = ([flags, text]: readonly [flags: string, about: string]) =>
  `${heading(flags)}\n${roff(translated(text))}`;

const row = ([name, meaning]: readonly [name: string | number, meaning: string]) =>
  `.TP\n\\fB${roff(String(name))}\\fR\n${roff(translated(meaning))}`;

function command({ name, words, about, options = [] }: Face): string {
  const top = entry([words === undefined ? name : `${name} ${words}`, about]);
  return options.length === 0 ? top : [top, '.RS', ...options.map(entry), '.RE'].join('\n');
}

const section = (title: string) => `.SH ${roff(title)}`;

function commandsByGroup(): string[] {
  const groups = [...new Set(faces.map((face) => face.group))];
  return groups.flatMap((group) => [
    `.SS ${roff(translated(group))}`,
    ...faces.filter((face) => face.group === group).map(command),
  ]);
}

/** The manual page, in the form that `man` reads: what `--help` says of each command, and what holds for all. */
export function manualPage(version: string): string {
  return [
    `.TH DRYBENCH 1 "" ${quoted(`drybench ${version}`)} ${quoted(worded`User commands`)}`,
    // Set ragged, words whole.
    '.nh\n.ad l',
    section(worded`NAME`),
    `drybench \\- ${roff(worded`plans a furniture refinisher's week around drying, curing and recoat windows`)}`,
    section(worded`SYNOPSIS`),
    `.B drybench\n.I ${roff(worded`command`)}\n.RI [ ${roff(worded`words`)} ]\n.RI [ ${roff(worded`options`)} ]`,
    section(worded`DESCRIPTION`),
    roff(translated(about)),
    roff(
      worded`A shop is a folder of text files; each command reads them there, or above, and answers on standard output.`,
    ),
    roff(worded`All else goes to standard error.`),
    '.PP',
    roff(translated(care)),
    section(worded`COMMANDS`),
    ...commandsByGroup(),
    section(worded`OPTIONS`),
    roff(worded`Every command takes these:`),
    ...commonOptions.map(entry),
    entry(['--help', worded`how a command is used`]),
    section(worded`EXIT STATUS`),
    ...exitCodes.map(row),
    section(worded`ENVIRONMENT`),
    ...environment.map(row),
    section(worded`FILES`),
    roff(worded`In the folder of a shop:`),
    ...files.map(row),
    '',
  ].join('\n');
}
