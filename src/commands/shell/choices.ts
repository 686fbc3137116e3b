import { kinds } from '../../intake/kinds.ts';
import { oldFinishes } from '../../intake/found.ts';
import { coatFaults, sightings } from '../../model/journal.ts';
import { eventKinds } from '../../reports/calendar/event.ts';
import { languageCodes } from '../../words/languages.ts';
import { shells } from './scripts.ts';

/** The few words that something at the command line may be: by the option's flag, or by the argument's name in the help. */
export const choices: Readonly<Record<string, readonly string[]>> = {
  how: sightings,
  fault: coatFaults,
  result: ['found', 'none'],
  shell: shells,
  '--kind': kinds,
  '--old-finish': oldFinishes,
  '--lead': ['no', 'yes', 'tested-none', 'tested-found'],
  '--language': languageCodes,
  '--units': ['metric', 'us'],
  '--clock': ['12', '24'],
  '--week-starts-on': ['monday', 'sunday'],
  '--dark-to-light': ['yes', 'no'],
  '--only': eventKinds,
};
