import { textWidth } from './measure.ts';
import { rowLook, readyShape } from './week-shapes.ts';
import { element, rect, text, textured, type Markup } from './svg.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

const entries = [
  ['work', phrase('hands-on work; its number stands on the day sheet')],
  ['done', phrase('done')],
  ['drying', phrase('drying')],
  ['window', phrase('window open for the next coat')],
  ['shut', phrase('window shuts')],
  ['ready', phrase('ready to hand over')],
  ['closed', phrase('closed (drawn narrower)')],
  ['unfit', phrase('air not fit for coating, or for some materials: the day sheet says which')],
] as const;

const SIZE = 2.3;
const SAMPLE = 5;

function sample(kind: (typeof entries)[number][0], x: number, y: number): Markup {
  if (kind === 'ready') return readyShape(x + SAMPLE / 2, y, worded`ready to hand over`);
  if (kind === 'shut')
    return element('path', {
      d: `M${(x + 3).toFixed(2)} ${(y + rowLook.bar).toFixed(2)}v${-rowLook.bar}h-1.3z`,
      class: 'shut',
    });
  if (kind === 'work' || kind === 'done' || kind === 'closed') return rect(x, y, SAMPLE, rowLook.bar, kind);
  return textured(x, y, SAMPLE, rowLook.bar, kind);
}

/** What each pattern means, on as many lines as it takes; the first line's foot is `y`. */
export function legend(y: number, width: number): { readonly drawing: Markup; readonly height: number } {
  let x = 0;
  let lineY = y;
  const drawing = entries.map(([kind, meaning]) => {
    const words = translated(meaning);
    const room = SAMPLE + 1.2 + textWidth(words, { size: SIZE }) + 4;
    if (x + room - 4 > width) {
      x = 0;
      lineY += 4.4;
    }
    const entry = sample(kind, x, lineY - 2.5) + text(x + SAMPLE + 1.2, lineY, words, { size: SIZE });
    x += room;
    return entry;
  });
  return { drawing: drawing.join(''), height: lineY - y + 4.4 };
}
