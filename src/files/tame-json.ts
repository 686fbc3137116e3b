/** Shorter texts cost little to parse, whatever they hold. */
const SHORT = 1_000_000;
const MOST_VALUES = 2_000_000;
const DEEPEST = 64;

const code = (character: string): number => character.charCodeAt(0);
const QUOTE = code('"');
const BACKSLASH = code('\\');
const COMMA = code(',');
const OPENING = [code('['), code('{')];
const CLOSING = [code(']'), code('}')];

/** Does a JSON text hold no more values, and no deeper ones, than fit into memory? A parser would only find out there. */
export function isTameJson(text: string): boolean {
  if (text.length <= SHORT) return true;
  let values = 0;
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    if (quoted) {
      if (c === BACKSLASH) i += 1;
      else if (c === QUOTE) quoted = false;
    } else if (c === QUOTE) quoted = true;
    else if (c === COMMA) values += 1;
    else if (OPENING.includes(c)) {
      values += 1;
      depth += 1;
    } else if (CLOSING.includes(c)) depth -= 1;
    if (values > MOST_VALUES || depth > DEEPEST) return false;
  }
  return true;
}
