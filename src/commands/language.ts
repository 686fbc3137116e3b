import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { findShop } from '../files/find-shop.ts';
import type { Io } from '../terminal/io.ts';
import { languageCodes, type LanguageCode } from '../words/languages.ts';
import { speak, spokenCode, type Language, worded } from '../words/worded.ts';
import { CannotGoOn } from './call.ts';

/** Read only when they are spoken. */
const languages: Readonly<Record<LanguageCode, () => Promise<Language | undefined>>> = {
  en: () => Promise.resolve(undefined),
  es: async () => (await import('../words/spanish.ts')).spanish,
};

/** Value of an option in a line that nobody has read yet. */
export function valueIn(words: readonly string[], flag: string): string | undefined {
  const at = words.findLastIndex((word) => word === flag || word.startsWith(`${flag}=`));
  const word = words[at];
  return word === flag ? words[at + 1] : word?.slice(flag.length + 1);
}

/** The language that shop.yaml names, whatever else is wrong in it. */
function ofShop(words: readonly string[], { folder }: Io): string | undefined {
  const shop = findShop(resolve(folder, valueIn(words, '--shop') ?? '.'));
  if (shop === undefined) return undefined;
  try {
    return /^language:[ \t]*["']?([a-z]{2})\b/m.exec(readFileSync(join(shop, 'shop.yaml'), 'utf8'))?.[1];
  } catch {
    // Whoever reads the shop says what is wrong with its file.
    return undefined;
  }
}

const isLanguage = (code: string): code is LanguageCode => (languageCodes as readonly string[]).includes(code);

/** Speaks as `--language` asks, else as the shop does, else English: never by the computer's locale. */
export async function speakAsAsked(words: readonly string[], io: Io): Promise<void> {
  speak();
  const asked = valueIn(words, '--language');
  if (asked !== undefined && !isLanguage(asked))
    throw new CannotGoOn(
      worded`--language "${asked}" is not spoken here`,
      worded`write one of ${languageCodes.join(', ')}`,
    );
  const code = asked ?? ofShop(words, io) ?? 'en';
  if (isLanguage(code)) await speakCode(code);
}

export async function speakCode(code: LanguageCode): Promise<void> {
  speak(await languages[code]());
}

/** What is spoken now. */
export function languageSpoken(): LanguageCode {
  const code = spokenCode();
  return isLanguage(code) ? code : 'en';
}
