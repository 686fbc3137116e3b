import { createHash } from 'node:crypto';
import { element, escapedXml, type Markup } from './svg.ts';
import { spokenCode } from '../../words/worded.ts';

// What both A4 and US Letter hold, laid wide or upright, inside margins of 8 mm: ISO 216 A4 is 210 × 297 mm, Letter
// 215.9 × 279.4 mm (8.5 × 11 in, ASME Y14.1). So one page prints on one sheet of either, and nobody has to say which.
export const sheets = {
  landscape: { width: 263, height: 193 },
  portrait: { width: 193, height: 262 },
} as const;
export type Lie = keyof typeof sheets;

const MARGIN_MM = 8;

const style = (lie: Lie) => `
@page { size: ${lie}; margin: ${MARGIN_MM}mm; }
html { background: #fff; color: #111; }
body { margin: 0; font-family: Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif; }
.page { display: block; width: ${sheets[lie].width}mm; height: ${sheets[lie].height}mm; margin: 0 auto; overflow: hidden; break-inside: avoid; }
.page + .page { break-before: page; }
@media screen { .page { margin: ${MARGIN_MM}mm auto; outline: 1px solid #bbb; outline-offset: ${MARGIN_MM}mm; } .page + .page { margin-top: ${3 * MARGIN_MM}mm; } }
text { fill: #111; white-space: pre; }
.bold { font-weight: bold; }
.quiet { fill: #444; }
.strong { fill: #0b2a4a; }
.halo { paint-order: stroke; stroke: #fff; stroke-width: 0.7; stroke-linejoin: round; }
.closed { fill: #ececec; }
.rule { stroke: #8a8a8a; stroke-width: 0.15; }
.day { stroke: #555; stroke-width: 0.3; }
.piece { stroke: #222; stroke-width: 0.3; }
.work { fill: #0b2a4a; }
.done { fill: #fff; stroke: #0b2a4a; stroke-width: 0.35; }
.drying { stroke: #4d6f91; stroke-width: 0.25; }
.window { stroke: #9c4a00; stroke-width: 0.3; }
.unfit { stroke: #666; stroke-width: 0.15; }
.ground { fill: #fff; }
.texture { fill: none; }
.dotted { stroke-width: 0.45; stroke-dasharray: 0.01 0.9; stroke-linecap: round; }
.shut { fill: #9c4a00; }
.ready { fill: #fff; stroke: #111; stroke-width: 0.4; }
.box { fill: #fff; stroke: #111; stroke-width: 0.35; }
.cut { fill: none; stroke: #999; stroke-width: 0.2; stroke-dasharray: 1.5 1.5; }
`;

/** One sheet: what is drawn on it, and its name for who cannot see it. */
export interface Page {
  readonly title: string;
  readonly description: string;
  readonly drawing: Markup;
}

function pageMarkup(page: Page, lie: Lie, index: number): Markup {
  const { width, height } = sheets[lie];
  const ids = { title: `title-${index}`, desc: `desc-${index}` };
  return element(
    'svg',
    {
      class: 'page',
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      role: 'graphics-document document',
      'aria-labelledby': `${ids.title} ${ids.desc}`,
    },
    element('title', { id: ids.title }, escapedXml(page.title)),
    element('desc', { id: ids.desc }, escapedXml(page.description)),
    page.drawing,
  );
}

/** By this a file is known as one of ours, which may be written anew. */
export const PAPER_MARK = '<meta name="generator" content="Drybench">';

/** A file that needs nothing but itself: no script, no network; the policy in its head forbids both. */
export function paperDocument(title: string, lie: Lie, pages: readonly Page[]): string {
  const css = style(lie);
  const hash = createHash('sha256').update(css).digest('base64');
  const policy = `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
  return [
    '<!doctype html>',
    `<html lang="${spokenCode()}">`,
    '<head>',
    '<meta charset="utf-8">',
    PAPER_MARK,
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width">',
    `<title>${escapedXml(title)}</title>`,
    `<style>${css}</style>`,
    '</head>',
    '<body>',
    ...pages.map((page, i) => pageMarkup(page, lie, i)),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
