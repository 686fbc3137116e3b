// Controls, format characters (bidi marks, zero width, tags), line and paragraph separators, lone surrogates: all that
// moves a cursor, hides, or turns text round instead of standing on the line as a letter.
const harmful = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;
const anyHarmful = new RegExp(harmful.source, 'u');

const hex = (character: string) => (character.codePointAt(0) ?? 0).toString(16);

/** `text` with every character that could steer a terminal made visible as `\u{..}`. */
export function harmless(text: string): string {
  return text.replace(harmful, (c) => `\\u{${hex(c)}}`);
}

/** As `harmless`, but lines stay lines: for text that we made of harmless lines and of words from outside. */
export function harmlessLines(text: string): string {
  return text.split('\n').map(harmless).join('\n');
}

/** Plain data (records, lists, maps) with every string in it harmless, keys included. Only the parts that have to be changed are copied. */
export function harmlessData<T>(data: T): T {
  return isHarmless(data) ? data : (cleaned(data) as T);
}

function isHarmless(data: unknown): boolean {
  if (typeof data === 'string') return !anyHarmful.test(data);
  if (typeof data !== 'object' || data === null) return true;
  if (Array.isArray(data)) return data.every(isHarmless);
  if (data instanceof Map) return [...data].every(isHarmless);
  for (const [key, value] of Object.entries(data)) if (anyHarmful.test(key) || !isHarmless(value)) return false;
  return true;
}

function cleaned(data: unknown): unknown {
  if (typeof data === 'string') return harmless(data);
  if (typeof data !== 'object' || data === null) return data;
  if (Array.isArray(data)) return data.map(harmlessData);
  if (data instanceof Map) return new Map([...data].map(([key, value]) => [harmlessData(key), harmlessData(value)]));
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [harmless(key), harmlessData(value)]));
}

/** JSON text that says the same with every harmful character written as an escape. */
export function harmlessJson(json: string): string {
  return json.replace(harmful, (c) =>
    c === '\n' ? c : Array.from({ length: c.length }, (_, i) => `\\u${unit(c, i)}`).join(''),
  );
}

function unit(character: string, index: number): string {
  return character.charCodeAt(index).toString(16).padStart(4, '0');
}
