import {} from '../words/worded.ts';
/** What Drybench is, in a line. */
export const about = `Plans a furniture refinisher's week around drying, curing and recoat windows.`;

/** Stands under every help. */
export const care =
  'Drybench gives times, never permission: the label and safety data sheet of the container stand above every figure here, and local rules and licensed practice above both.';

/** Options that every command takes. */
export const commonOptions: readonly (readonly [flags: string, about: string])[] = [
  ['--shop <folder>', 'folder of the shop (default: here or above, where shop.yaml is)'],
  ['--at <time>', 'act as if now were this time, e.g. 2027-01-11T07:30'],
  ['--language <code>', 'en or es (default: as shop.yaml says, else en)'],
  ['--json', 'one JSON document on standard output'],
  ['--plain', 'no colour, ASCII signs only'],
  ['--width <columns>', 'lay the answer out for so many columns, also in a pipe (default: the terminal’s)'],
  ['--no-pager', 'long answers all at once, even where PAGER is set'],
  ['--debug', 'tells where a defect in Drybench arose'],
  ['--dry-run', 'write nothing: show what would be written, as a diff'],
  ['--version', 'the version of Drybench'],
];
