import type { Type } from './measure.ts';

/** SVG or HTML that is made: text of others is in it only escaped. */
export type Markup = string;

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

// Controls, and the marks that turn the direction of what stands around them. Joiners stay: scripts need them.
const unprintable = /[\p{Cc}\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069\p{Zl}\p{Zp}]+/gu;

/** A text of others as it may stand on a page: on one line, whole characters, and unable to turn its neighbours round. */
export function printable(text: string): string {
  return text
    .replace(unprintable, ' ')
    .replace(/\p{Cs}/gu, '\ufffd')
    .replace(/ {2,}/g, ' ')
    .trim();
}

export function escapedXml(text: string): string {
  return printable(text).replace(/[&<>"']/g, (c) => escapes[c] ?? c);
}

const rounded = (value: number) => String(Math.round(value * 100) / 100);

/** `<name a="1">…</name>`; numbers are lengths in mm. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  ...inside: Markup[]
): Markup {
  const written = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === 'number' ? rounded(value) : escapedXml(value)}"`,
  );
  return `<${name}${written.join('')}>${inside.join('')}</${name}>`;
}

export interface TextStyle extends Type {
  readonly anchor?: 'middle' | 'end';
  readonly tone?: 'quiet' | 'strong' | 'halo';
}

/** One line of text. Its direction is its own: a name in a script from right to left does not turn the page round. */
export function text(x: number, y: number, content: string, style: TextStyle): Markup {
  const attributes = {
    x,
    y,
    'font-size': style.size,
    ...(style.anchor === undefined ? {} : { 'text-anchor': style.anchor }),
    class: [style.bold === true ? 'bold' : 'plain', style.tone ?? 'ink'].join(' '),
  };
  return element('text', attributes, `\u2068${escapedXml(content)}\u2069`);
}

/** Lines under each other, the first with its foot at `y`. */
export function textLines(x: number, y: number, lines: readonly string[], lead: number, style: TextStyle): Markup {
  return lines.map((line, i) => text(x, y + i * lead, line, style)).join('');
}

export function rect(x: number, y: number, width: number, height: number, kind: string): Markup {
  return element('rect', { x, y, width: Math.max(0, width), height, class: kind });
}

export function line(x1: number, y1: number, x2: number, y2: number, kind: string): Markup {
  return element('line', { x1, y1, x2, y2, class: kind });
}

function strokes(x: number, y: number, width: number, height: number, pitch: number, lean: 1 | -1): string {
  let path = '';
  for (let foot = x - height + pitch / 2; foot < x + width; foot += pitch) {
    const [from, to] = [Math.max(foot, x), Math.min(foot + height, x + width)];
    if (to - from < 0.05) continue;
    const [low, high] = [y + height - (from - foot), y + height - (to - foot)];
    const [y1, y2] = lean === 1 ? [low, high] : [2 * y + height - low, 2 * y + height - high];
    path += `M${rounded(from)} ${rounded(y1)}L${rounded(to)} ${rounded(y2)}`;
  }
  return path;
}

const texture = (d: string) => element('path', { d, class: 'texture' });

/**
 * Kinds of time that are filled with a texture of their own, so that the picture holds without its colours. Drawn
 * stroke by stroke: printers make a heavy bitmap of every area that an SVG pattern fills.
 */
const textures = {
  drying: (x: number, y: number, width: number, height: number) => texture(strokes(x, y, width, height, 1.3, 1)),
  unfit: (x: number, y: number, width: number, height: number) =>
    texture(strokes(x, y, width, height, 1.6, 1) + strokes(x, y, width, height, 1.6, -1)),
  window: (x: number, y: number, width: number, height: number) =>
    [0.25, 0.5, 0.75]
      .map((part) => line(x + 0.5, y + part * height, x + width - 0.3, y + part * height, 'dotted'))
      .join(''),
} as const;
export type Textured = keyof typeof textures;

export function textured(x: number, y: number, width: number, height: number, kind: Textured): Markup {
  const inside = width > 0.8 ? textures[kind](x, y, width, height) : '';
  return element('g', { class: kind }, rect(x, y, width, height, 'ground'), inside);
}

/** A shape with a name that a screen reader says and a pointer shows. */
export function named(name: string, ...inside: Markup[]): Markup {
  return element('g', { role: 'img', 'aria-label': name }, element('title', {}, escapedXml(name)), ...inside);
}
