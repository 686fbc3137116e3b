export type Environment = Readonly<Record<string, string | undefined>>;

const isSet = (value: string | undefined): value is string => value !== undefined && value !== '';

/** May answers be coloured? The flag first, then NO_COLOR, then FORCE_COLOR, then whether a person's terminal reads. */
export function wantsColour(plain: boolean, env: Environment, isTerminal: boolean): boolean {
  if (plain || isSet(env['NO_COLOR'])) return false;
  const forced = env['FORCE_COLOR'];
  if (isSet(forced)) return forced !== '0' && forced !== 'false';
  return isTerminal && env['TERM'] !== 'dumb';
}

/** Does the locale promise that more than ASCII can be shown? One that is not set promises it. */
export function showsUnicode(env: Environment): boolean {
  const locale = [env['LC_ALL'], env['LC_CTYPE'], env['LANG']].find(isSet);
  return locale === undefined || /utf-?8/i.test(locale);
}
