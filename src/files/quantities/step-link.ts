import { marks, type Mark } from '../../model/mark.ts';
import type { StepLink } from '../../model/recipe.ts';
import { adviseWord } from '../suggest.ts';
import { readHours } from './duration.ts';
import { read, refuse, type Read } from './read.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

const WRITE = phrase('write a step like prime, legs/stain, prime @ recoat, or prime @ sand + 2 h within 3 d');
const LONGEST_LINK = 160;
const STEP = /^[a-z0-9-]{1,40}(?:\/[a-z0-9-]{1,40})?$/;

function isMark(word: string): word is Mark {
  return (marks as readonly string[]).includes(word);
}

/** Cuts `text` at the first `word`; the second part is undefined where it does not occur. */
function cut(text: string, word: string): readonly [string, string | undefined] {
  const index = text.indexOf(word);
  return index < 0 ? [text.trim(), undefined] : [text.slice(0, index).trim(), text.slice(index + word.length).trim()];
}

/** `SECTION/STEP @ MARK + 2 h within 3 d`; all but the step may be left out. */
export function readStepLink(text: string): Read<StepLink> {
  if (text.length > LONGEST_LINK) return refuse(worded`is not a step`, translated(WRITE));
  const [beforeWithin, within] = cut(text, ' within ');
  const [beforeWait, wait] = cut(beforeWithin, '+');
  const [step, mark] = cut(beforeWait, '@');
  if (!STEP.test(step)) return refuse(worded`names no step`, translated(WRITE));
  if (mark !== undefined && !isMark(mark))
    return refuse(worded`asks for "${mark}", which is no dry mark`, adviseWord(mark, marks));
  const waitHours = wait === undefined ? undefined : readHours(wait);
  if (waitHours?.ok === false) return waitHours;
  const atMostHours = within === undefined ? undefined : readHours(within);
  if (atMostHours?.ok === false) return atMostHours;
  return read({
    step,
    ...(mark !== undefined && { mark }),
    ...(waitHours !== undefined && { waitHours: waitHours.value }),
    ...(atMostHours !== undefined && { atMostHours: atMostHours.value }),
  });
}
