import type { ErrorCode } from 'yaml';
import { phrase, translated } from '../../words/worded.ts';

export interface SyntaxWords {
  readonly message: string;
  readonly advice?: string;
}

const misfit: SyntaxWords = {
  message: phrase('this does not fit what stands above it'),
  advice: phrase(
    'write key: value lines with the same indent, and quote text that holds ": " or " #", or between { } a bracket: "6 h [4 h - 8 h]"',
  ),
};
const noFeatures: SyntaxWords = {
  message: phrase('tags, anchors, aliases and directives are not used here'),
  advice: phrase('write the value out, in quotes if it begins with &, *, ! or %'),
};

/** What the parser says by its code, in words that help. Those not listed are shown as the parser has them. */
const plainWords: Readonly<Partial<Record<ErrorCode, SyntaxWords>>> = {
  TAB_AS_INDENT: {
    message: phrase('a tab stands where spaces must'),
    advice: phrase('put spaces there instead, as many as before the lines around it'),
  },
  BAD_INDENT: {
    message: phrase('this line does not begin under its neighbours'),
    advice: phrase('put as many spaces before it as before them'),
  },
  BAD_SCALAR_START: {
    message: phrase('a text cannot begin with this character'),
    advice: phrase('put the text in quotes'),
  },
  BAD_DQ_ESCAPE: {
    message: phrase('the backslash stands before a character that it cannot'),
    advice: phrase('write \\\\ for a backslash, or use single quotes'),
  },
  BLOCK_AS_IMPLICIT_KEY: {
    message: phrase('a second colon stands on this line'),
    advice: phrase('put the text in quotes: "Table: the big one"'),
  },
  BLOCK_IN_FLOW: {
    message: phrase('this cannot stand between brackets'),
    advice: phrase('close the bracket before it'),
  },
  IMPOSSIBLE: misfit,
  KEY_OVER_1024_CHARS: { message: phrase('the key is too long'), advice: phrase('shorten it') },
  MISSING_CHAR: {
    message: phrase('a character is missing'),
    advice: phrase('write key: value, and a comma between items in brackets'),
  },
  MULTILINE_IMPLICIT_KEY: {
    message: phrase('a colon with a space behind it is missing on this line'),
    advice: phrase('write it like kind: table'),
  },
  UNEXPECTED_TOKEN: misfit,
  TAG_RESOLVE_FAILED: noFeatures,
  BAD_ALIAS: noFeatures,
  BAD_DIRECTIVE: noFeatures,
  MULTIPLE_ANCHORS: noFeatures,
  MULTIPLE_TAGS: noFeatures,
  BAD_PROP_ORDER: noFeatures,
};

const openBracket: SyntaxWords = {
  message: phrase('a bracket is opened and never closed'),
  advice: phrase('close it with ] or }'),
};

/** A missing character is named by the parser's own words only. */
const missing: readonly (readonly [RegExp, SyntaxWords])[] = [
  [
    /closing ["']quote|Missing closing ["']/,
    {
      message: phrase('a quote is opened and never closed'),
      advice: phrase('put the same quote at the end of the text'),
    },
  ],
  [/end with a [\]}]/, openBracket],
  [
    /^Comments must/,
    { message: phrase('a space is missing before the #'), advice: phrase('put a space before a comment') },
  ],
  [
    /Missing ,/,
    { message: phrase('a comma is missing between two items'), advice: phrase('put a comma between them') },
  ],
  [/:|[Ii]mplicit map key/, { message: phrase('a colon is missing after a key'), advice: phrase('write key: value') }],
];

function saidNow({ message, advice }: SyntaxWords): SyntaxWords {
  return { message: translated(message), ...(advice !== undefined && { advice: translated(advice) }) };
}

export function syntaxWords(code: ErrorCode, reason: string): SyntaxWords {
  const named = code === 'MISSING_CHAR' ? missing.find(([pattern]) => pattern.test(reason))?.[1] : undefined;
  return saidNow(named ?? plainWords[code] ?? { message: reason });
}

/** What is said of a bracket that is never closed, wherever the parser notices it. */
export function openBracketWords(): SyntaxWords {
  return saidNow(openBracket);
}
