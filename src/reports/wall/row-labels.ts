import type { Stage } from '../../model/recipe.ts';
import { phrase, translated } from '../../words/worded.ts';
import { sayStep } from '../bench.ts';
import { textWidth, type Type } from './measure.ts';
import type { NumberedWork } from './week-model.ts';

export interface RowLabel {
  readonly x: number;
  readonly text: string;
}

interface Group {
  readonly works: readonly NumberedWork[];
  readonly x: number;
}

/** `3`, `4–6`, `4, 6`: the numbers of blocks that stand too close for a label each. */
function numbersText(works: readonly NumberedWork[]): string {
  const numbers = works.map((w) => w.number);
  const [first = 0] = numbers;
  const inARow = numbers.every((n, i) => n === first + i);
  return inARow && numbers.length > 1 ? `${first}–${numbers.at(-1) ?? ''}` : numbers.join(', ');
}

const GAP = 0.8;

/** What is done, where there is room for one word. */
const stageWords: Readonly<Record<Stage, string>> = {
  clean: phrase('clean'),
  repair: phrase('repair'),
  fill: phrase('fill'),
  sand: phrase('sand'),
  prime: phrase('prime'),
  coat: phrase('coat'),
  topcoat: phrase('topcoat'),
  dismantle: phrase('dismantle'),
  mask: phrase('mask'),
  unmask: phrase('unmask'),
  refit: phrase('refit'),
  inspect: phrase('inspect'),
};

/** Longer words than this make a row hard to follow. */
const LONGEST_WORDS = 62;

function groupsOf(works: readonly NumberedWork[], x: (work: NumberedWork) => number, type: Type): Group[] {
  const groups: Group[] = [];
  for (const work of works) {
    const last = groups.at(-1);
    const end = last === undefined ? -Infinity : last.x + textWidth(numbersText(last.works), type) + GAP;
    if (last !== undefined && x(work) < end) groups[groups.length - 1] = { ...last, works: [...last.works, work] };
    else groups.push({ works: [work], x: x(work) });
  }
  return groups;
}

/** The number of each block above it, and what is done where the room to the next label allows it. */
export function rowLabels(
  works: readonly NumberedWork[],
  x: (work: NumberedWork) => number,
  right: number,
  type: Type,
): RowLabel[] {
  const groups = groupsOf(works, x, type);
  return groups.map((group, i) => {
    const room = Math.min(LONGEST_WORDS, (groups[i + 1]?.x ?? right) - GAP - group.x);
    const numbers = numbersText(group.works);
    const [only] = group.works;
    const longer =
      group.works.length === 1 && only !== undefined
        ? [`${numbers} ${sayStep(only.step)}`, `${numbers} ${translated(stageWords[only.step.stage])}`]
        : [];
    const text = longer.find((t) => textWidth(t, type) <= room) ?? numbers;
    // A label at the right edge moves in rather than out of the page.
    return { x: Math.min(group.x, right - textWidth(text, type)), text };
  });
}
