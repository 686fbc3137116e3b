import { effectiveMark, moveMark } from './effective-mark.ts';
import type { Mark } from './mark.ts';
import type { Family, Material, Preparation, RecoatWindow } from './material.ts';
import type { RecipeStep, Stage } from './recipe.ts';
import { stackRule } from './stack-rule.ts';
import type { Need, WindowChoice } from './task.ts';

/** A film that lies on the section when a step begins. */
export interface LaidFilm {
  readonly task: string;
  readonly material: Material;
}

/** Mark that the films below must have reached, by stage. Common practice, no source. */
export const neededMark: Readonly<Record<Stage, Mark>> = {
  clean: 'recoat',
  repair: 'handle',
  fill: 'recoat',
  sand: 'sand',
  prime: 'recoat',
  coat: 'recoat',
  topcoat: 'recoat',
  dismantle: 'handle',
  mask: 'tape',
  unmask: 'touch',
  refit: 'handle',
  inspect: 'touch',
};

/** As much of a step as its waits depend on. */
type Staged = Pick<RecipeStep, 'stage'>;

const coatStages: readonly Stage[] = ['prime', 'coat', 'topcoat'];
const notAllOver: readonly Family[] = ['filler', 'glue', 'cleaner', 'tape'];
/** Marks that every film below must have reached, not only those on top. */
const throughAllFilms: readonly Mark[] = ['tape', 'handle', 'stack', 'cure'];

/** Does this film cover the whole section, so that the next coat lies on it? */
export function isFullCoat(material: Material): boolean {
  return material.mechanism !== 'none' && !notAllOver.includes(material.family);
}

/** Is the step itself the laying of a coat, to which the windows of the coat below apply? */
export function laysCoat(step: Staged, material: Material | undefined): material is Material {
  return material !== undefined && coatStages.includes(step.stage) && isFullCoat(material);
}

/** The windows of `below` for a next coat of `family`: those that name it, else those that name none. */
export function windowsUnder(below: Material, family: Family): readonly RecoatWindow[] {
  const named = below.windows.filter((w) => w.under?.includes(family) === true);
  return named.length > 0 ? named : below.windows.filter((w) => w.under === undefined);
}

function doneByRecipe(prep: Preparation, between: readonly Staged[]): boolean {
  const sanded = between.some((s) => s.stage === 'sand');
  const washed = between.some((s) => s.stage === 'clean');
  switch (prep) {
    case 'scuff':
    case 'abrade':
      return sanded;
    case 'wash-and-scuff':
      return sanded && washed;
    case 'tack-coat':
    case 'strip':
      return false;
  }
}

/**
 * What is left when the last window has shut: sand the fully cured film and coat it; a film that has no cure mark is
 * stripped. Common practice, no source.
 */
function remedyOf(material: Material, windows: readonly RecoatWindow[], coatTask: string): WindowChoice[] {
  const last = windows.at(-1)?.shuts;
  if (last === undefined || windows.some((w) => w.shuts === undefined)) return [];
  const { cure } = material.marks;
  const prep = cure === undefined ? 'strip' : material.family === 'two-part' ? 'abrade' : 'scuff';
  return [{ opens: cure ?? last, prep, prepTask: `${coatTask}-remedy-${prep}`, remedy: true }];
}

function windowNeed(below: LaidFilm, next: Material, between: readonly Staged[], coatTask: string): Need {
  const ofSheet = windowsUnder(below.material, next.family);
  const windows = ofSheet.map((w): WindowChoice => {
    const plain = { opens: w.opens, ...(w.shuts && { shuts: w.shuts }) };
    if (w.prep === undefined) return plain;
    if (doneByRecipe(w.prep, between)) return { ...plain, prep: w.prep };
    return { ...plain, prep: w.prep, prepTask: `${coatTask}-${w.prep}` };
  });
  return { kind: 'window', task: below.task, windows: [...windows, ...remedyOf(below.material, ofSheet, coatTask)] };
}

function markNeed(film: LaidFilm, wanted: Mark): Need[] {
  const mark = effectiveMark(film.material, wanted);
  return mark === undefined ? [] : [{ kind: 'mark', task: film.task, mark }];
}

/** What the next coat asks of the one below by its rules of the stack, e.g. water-borne over oil: its cure. */
function stackNeed(below: LaidFilm, next: Material): Need[] {
  const rule = stackRule(below.material, next);
  return rule?.verdict === 'after' && rule.mark !== undefined ? markNeed(below, rule.mark) : [];
}

/**
 * What a step waits for from the films already laid on its section, oldest first. `between` gives the recipe's steps
 * since a film was laid, to know whether a late coat's preparation is done by the recipe itself.
 */
export function filmNeeds(
  taskId: string,
  step: Staged & Pick<RecipeStep, 'needs'>,
  material: Material | undefined,
  films: readonly LaidFilm[],
  between: (film: LaidFilm) => readonly Staged[],
): Need[] {
  const lastCoat = films.findLastIndex((f) => isFullCoat(f.material));
  const below = films[lastCoat];
  if (laysCoat(step, material)) {
    const fills = films.slice(lastCoat + 1).flatMap((f) => markNeed(f, step.needs ?? 'recoat'));
    if (below === undefined) return fills;
    const hasWindow = windowsUnder(below.material, material.family).length > 0;
    const own = hasWindow ? [windowNeed(below, material, between(below), taskId)] : markNeed(below, 'recoat');
    const asked = step.needs === undefined ? [] : markNeed(below, step.needs);
    return [...own, ...asked, ...stackNeed(below, material), ...fills];
  }
  const wanted = step.needs ?? neededMark[step.stage];
  const relevant = throughAllFilms.includes(wanted) ? films : films.slice(Math.max(0, lastCoat));
  return relevant.flatMap((f) => markNeed(f, wanted));
}

/**
 * A preparation waits until the coat that is past its window can be handled, and sanded where it is ever sanded; as a
 * remedy, until it is cured: sanded before, it would open again.
 */
export function preparationNeeds(film: LaidFilm, remedy = false): Need[] {
  const { material } = film;
  const cured = remedy && material.marks.cure !== undefined ? ['cure' as const] : [];
  const wanted = new Set([moveMark(material), effectiveMark(material, 'sand'), ...cured]);
  return [...wanted].flatMap((mark) => (mark === undefined ? [] : [{ kind: 'mark' as const, task: film.task, mark }]));
}
