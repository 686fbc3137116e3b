import type { Language, Wording } from './worded.ts';

const wordings = new Map<string, Wording>();

export const spanish: Language = { code: 'es', wordingOf: (english) => wordings.get(english) };
