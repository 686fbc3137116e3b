/** What the parser says, and the same in words that help. Those not listed are shown as they are. */
const plainWords: readonly (readonly [RegExp, string, string])[] = [
  [/^tab characters/, 'a tab stands where spaces must', 'indent with spaces'],
  [
    /^bad indentation of a mapping entry/,
    'this does not fit here',
    'give keys of one map the same indent, and quote text that holds ": "',
  ],
  [
    /^bad indentation of a sequence entry/,
    'this item of a list is indented wrongly',
    'give all items of a list the same indent',
  ],
  [
    /^deficient indentation/,
    'this is indented too little, or a bracket before it was never closed',
    'indent it further, or close the bracket',
  ],
  [
    /^nesting exceeded/,
    'this is nested too deep, 64 levels or more',
    'no file of a shop is that deep: look for brackets that were never closed',
  ],
  [
    /^unexpected end of the stream within a (single|double) quoted/,
    'a quote is opened and never closed',
    'close the quote',
  ],
  [/^unexpected end of the stream within a flow/, 'a bracket is opened and never closed', 'close it with ] or }'],
  [/^missed comma/, 'a comma is missing between two items', 'put a comma between them'],
  [/^expected the node content/, 'an item is missing before this comma', 'take the comma out'],
  [/^can not read a block mapping entry/, 'a key must stand on one line with a colon behind it', 'write key: value'],
  [/^expected ':' after/, 'a colon is missing after a key', 'write key: value'],
  [
    /^end of the stream or a document/,
    'this does not fit what stands above it',
    'write key: value lines with the same indent, and quote text that holds ": " or " #"',
  ],
  [/^a whitespace character is expected/, 'a space is missing after the colon', 'write key: value'],
  [/^null byte/, 'the file holds a NUL character', 'take it out: it cannot be seen in most editors'],
  [/non-printable/, 'the file holds a control character', 'take it out: it cannot be seen in most editors'],
  [
    /^expected valid JSON/,
    'a control character stands inside quotes',
    'take it out: it cannot be seen in most editors',
  ],
  [
    /^unknown escape/,
    'the backslash stands before a character that it cannot',
    'write \\\\ for a backslash, or use single quotes',
  ],
  [
    /(tag|anchor|alias|directive|YAML version)/,
    'tags, anchors, aliases and directives are not used here',
    'write the value out, in quotes if it begins with &, *, ! or %',
  ],
];

export interface SyntaxWords {
  readonly message: string;
  readonly advice?: string;
}

export function syntaxWords(reason: string): SyntaxWords {
  const found = plainWords.find(([pattern]) => pattern.test(reason));
  return found === undefined ? { message: reason } : { message: found[1], advice: found[2] };
}
