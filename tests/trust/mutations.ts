import fc from '../support/property.ts';

const spoilers: readonly string[] = [
  '',
  ' ',
  '\n',
  '\t',
  ':',
  ': ',
  '-',
  '- ',
  '[',
  ']',
  '{',
  '}',
  '"',
  "'",
  '#',
  '&a',
  '*a',
  '!x',
  '|',
  '>',
  '%',
  '@',
  ',',
  '\u0000',
  '\uFEFF',
  '\u2028',
  '😀',
  '\r\n',
  '0',
  '-1',
  '1e999',
  '.nan',
  '999999999999',
  '1/0',
  '~',
  'yes',
  'no',
  'closed',
  '__proto__',
  'constructor',
  'sand',
  'recoat',
  'whole',
  'body',
  'coat',
  'coat-1',
  'body/prime',
  'legs/stain @ tape',
  '2027-03-28T01:30',
  '0000-00-00',
  '9999-12-31',
  '24:00-00:00',
  '14 d',
  '0 min',
  '-4 h',
  '5 EUR',
  'water-borne',
  'none',
  '0001-01-01T00:00',
  '0000-12-31',
  '9999-12-31T23:59',
  '2199-12-31T23:59',
  '2027-10-31T02:30',
  '.inf',
  '-.inf',
  'NaN',
  'Infinity',
  '-0 h',
  '99999 d',
  '1e308 m2',
  '0.0000001 h',
  '<<: *a',
  'prototype',
  '../../etc/passwd',
  'C:\\CON',
  '/dev/zero',
  '\u001b]0;x\u0007',
  '\u001b[2J',
  '\u009b31m',
  '\u202eevil',
  '\u2066x',
  '\u200b',
  '\ud800',
  '"a\\nb\\x1b[31m\\u202e"',
  '👩‍👩‍👧‍👦',
  '=cmd()',
  '\u0085',
  'ﷺ'.repeat(300),
  'x'.repeat(10_000),
  '['.repeat(3000),
  '{a: '.repeat(200),
  '- '.repeat(500),
  'a: &a [x]\nb: &b [*a,*a,*a,*a]\nc: [*b,*b,*b,*b]\n',
  'name: a\nname: b\n',
  '%YAML 1.1\n---\n',
  '\n---\n',
  '\n...\n',
  '!!binary x',
];

export type Mutation =
  | { readonly kind: 'insert' | 'replace'; readonly at: number; readonly length: number; readonly text: string }
  | {
      readonly kind: 'drop-line' | 'double-line' | 'swap-lines' | 'indent-line';
      readonly at: number;
      readonly other: number;
    }
  | { readonly kind: 'token'; readonly at: number; readonly text: string }
  | { readonly kind: 'byte'; readonly at: number; readonly value: number };

const at = fc.nat(1_000_000);
const text = fc.oneof(fc.constantFrom(...spoilers), fc.string({ maxLength: 12 }));

export const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({ kind: fc.constantFrom('insert' as const, 'replace' as const), at, length: fc.nat(20), text }),
  fc.record({
    kind: fc.constantFrom('drop-line' as const, 'double-line' as const, 'swap-lines' as const, 'indent-line' as const),
    at,
    other: at,
  }),
  fc.record({ kind: fc.constant('token' as const), at, text }),
  fc.record({ kind: fc.constant('byte' as const), at, value: fc.nat(255) }),
);

function mutatedLines(lines: string[], m: Extract<Mutation, { other: number }>): string[] {
  const i = m.at % lines.length;
  const j = m.other % lines.length;
  const line = lines[i] ?? '';
  switch (m.kind) {
    case 'drop-line':
      return lines.toSpliced(i, 1);
    case 'double-line':
      return lines.toSpliced(j, 0, line);
    case 'swap-lines':
      return lines.with(i, lines[j] ?? '').with(j, line);
    case 'indent-line':
      return lines.with(i, ' '.repeat(m.other % 9) + line.trimStart());
  }
}

export function mutated(bytes: Buffer, m: Mutation): Buffer {
  if (bytes.length === 0) return Buffer.from('x');
  if (m.kind === 'byte') {
    const copy = Buffer.from(bytes);
    copy[m.at % bytes.length] = m.value;
    return copy;
  }
  const source = bytes.toString('utf8');
  if ('other' in m) return Buffer.from(mutatedLines(source.split('\n'), m).join('\n'));
  if (m.kind === 'token') {
    const tokens = [...source.matchAll(/[^\s:,{}[\]]+/g)];
    const token = tokens[m.at % Math.max(1, tokens.length)];
    if (token === undefined) return bytes;
    return Buffer.from(source.slice(0, token.index) + m.text + source.slice(token.index + token[0].length));
  }
  const start = m.at % (source.length + 1);
  const end = m.kind === 'insert' ? start : start + m.length;
  return Buffer.from(source.slice(0, start) + m.text + source.slice(end));
}
