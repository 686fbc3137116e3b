// Controls, format characters (bidi marks, zero width, tags), line and paragraph separators, lone surrogates: all that
// moves a cursor, hides, or turns text round instead of standing on the line as a letter.
const harmful = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

// Where there is nothing else than letters of the west and punctuation, there is nothing harmful: quicker seen, since the
// classes above are large, and made anew in every process.
const unusual = /[^ -~\xa1-\xac\xae-\u02ff\u2010-\u2027\u2030-\u205e]/;

const hex = (character: string) => (character.codePointAt(0) ?? 0).toString(16);

/** `text` with every character that could steer a terminal made visible as `\u{..}`. */
export function harmless(text: string): string {
  if (!unusual.test(text)) return text;
  return text.replace(harmful, (c) => `\\u{${hex(c)}}`);
}

/** As `harmless`, but lines stay lines: for text that we made of harmless lines and of words from outside. */
export function harmlessLines(text: string): string {
  return text.split('\n').map(harmless).join('\n');
}

/** Plain data (records, lists, maps) with every string in it harmless, keys included. Only the parts that have to be changed are copied. */
export function harmlessData<T>(data: T): T {
  return tamed(data) as T;
}

function tamed(data: unknown): unknown {
  if (typeof data === 'string') return harmless(data);
  if (typeof data !== 'object' || data === null) return data;
  if (Array.isArray(data)) return changedIn(data, (entry) => tamed(entry)) ?? data;
  const entries = data instanceof Map ? [...data] : Object.entries(data);
  const changed = changedIn(entries, tamedEntry);
  if (changed === undefined) return data;
  return data instanceof Map ? new Map(changed) : Object.fromEntries(changed);
}

function tamedEntry(entry: [unknown, unknown]): [unknown, unknown] {
  const [key, value] = [tamed(entry[0]), tamed(entry[1])];
  return key === entry[0] && value === entry[1] ? entry : [key, value];
}

/** Undefined where nothing is changed: a whole book is looked through, and hardly ever is there anything. */
function changedIn<T>(list: readonly T[], change: (entry: T) => T): T[] | undefined {
  let changed: T[] | undefined;
  list.forEach((entry, i) => {
    const after = change(entry);
    if (after === entry) return;
    changed ??= [...list];
    changed[i] = after;
  });
  return changed;
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
