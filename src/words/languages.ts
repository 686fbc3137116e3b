/** ISO 639-1 codes of the languages that are spoken here. */
export const languageCodes = ['en', 'es'] as const;
export type LanguageCode = (typeof languageCodes)[number];
