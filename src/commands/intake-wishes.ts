import { refuse, type Reader } from '../files/quantities/read.ts';
import { adviseChoice, adviseWord } from '../files/suggest.ts';
import type { AgreedSection } from '../intake/answers.ts';
import type { Estimate, Role } from '../intake/estimate.ts';
import { faultFaces, faults, type Fault } from '../intake/found.ts';
import type { Means } from '../intake/propose.ts';
import { isForWhole } from '../intake/recipe-traits.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Call } from './call.ts';
import { CannotGoOn } from './call.ts';
import { namedValues } from './intake-sections.ts';
import { numbered, oneOf, optionText, someOf, type Asker } from './questions.ts';
import { translated, worded } from '../words/worded.ts';

/** Recipes for what is not finished but put in order. */
export const roleRecipes: Readonly<Record<Exclude<Role, 'outside'>, string>> = {
  drawers: 'drawers',
  inside: 'drawers',
  fittings: 'metal-hardware',
};

function isFinish(recipe: Recipe): boolean {
  return !isForWhole(recipe) && !Object.values(roleRecipes).includes(recipe.id);
}

/** Recipes that a person can want on the outside of a piece, by id. */
function finishes({ recipes }: Means): string[] {
  return [...recipes.values()].filter(isFinish).map((r) => r.id);
}

/** What the shop lacks for each finish that it cannot do, a line each: `check` says nothing of recipes that no piece has. */
function lackedForFinishes({ beyond }: Means): string[] {
  return [...beyond.values()]
    .filter(({ recipe }) => isFinish(recipe))
    .map(({ recipe, lacks }) => `${recipe.name} (${recipe.id}): ${lacks.join('; ')}`);
}

async function askFinishes(asker: Asker, outside: readonly Estimate[], means: Means): Promise<Map<string, string>> {
  const ids = finishes(means);
  const names = ids.map((id) => `${means.recipes.get(id)?.name ?? id} (${id})`);
  const chosen = new Map<string, string>();
  for (const { id, name } of outside) {
    const first = chosen.values().next().value;
    const recipe = await asker.know({
      ...(first === undefined && { flag: 'finish' }),
      ask: outside.length === 1 ? worded`What finish is wanted?` : worded`What finish is wanted on: ${name}?`,
      more: first === undefined ? numbered(names) : [],
      ...(first === undefined ? { example: ids[0] ?? '1' } : { usual: first }),
      read: oneOf(ids),
    });
    chosen.set(id, recipe);
  }
  return chosen;
}

/** By its name, or by its number among those that are asked about. */
function finishNamed(word: string, ids: readonly string[], { recipes, beyond }: Means): string {
  const named = oneOf(ids)(word);
  if (named.ok) return named.value;
  const lacking = beyond.get(word);
  if (lacking !== undefined && isFinish(lacking.recipe))
    throw new CannotGoOn(
      worded`--finish: ${lacking.recipe.id} cannot be done with what the shop has`,
      worded`add to shop.yaml what it lacks, or ${adviseChoice(ids)}`,
      2,
      [],
      lacking.lacks,
    );
  if (recipes.has(word) || lacking !== undefined)
    throw new CannotGoOn(worded`--finish: ${word} is no finish for the outside of a piece`, adviseChoice(ids));
  throw new CannotGoOn(worded`--finish: this shop has no such finish "${word}"`, adviseWord(word, ids));
}

function finishesSaid(option: string, outside: readonly Estimate[], means: Means): Map<string, string> {
  const said = namedValues('--finish', option, outside);
  const ids = finishes(means);
  const recipes = new Map([...said].map(([section, word]) => [section, finishNamed(word, ids, means)]));
  const forAll = recipes.get('');
  return new Map(
    outside.map(({ id, name }): [string, string] => {
      const recipe = recipes.get(id) ?? forAll;
      if (recipe !== undefined) return [id, recipe];
      throw new CannotGoOn(
        worded`--finish says nothing of: ${name}`,
        worded`write --finish "${option}, ${id}=${ids[0] ?? ''}"`,
      );
    }),
  );
}

/** Each section with its recipe; and those that the shop cannot do, in words. */
export async function knowFinishes(
  call: Call,
  asker: Asker,
  sections: readonly Estimate[],
  means: Means,
): Promise<{ readonly sections: AgreedSection[]; readonly notDoable: string[] }> {
  const outside = sections.filter((s) => s.role === 'outside');
  if (finishes(means).length === 0)
    throw new CannotGoOn(
      worded`no recipe can be done with what the shop has`,
      worded`add to shop.yaml what one of them lacks`,
      2,
      [],
      lackedForFinishes(means),
    );
  const option = optionText(call, 'finish');
  const wanted = option === undefined ? await askFinishes(asker, outside, means) : finishesSaid(option, outside, means);
  const recipeOf = (s: Estimate) => (s.role === 'outside' ? (wanted.get(s.id) ?? '') : roleRecipes[s.role]);
  const all = sections.map((s): AgreedSection => ({ ...s, recipe: recipeOf(s) }));
  return {
    sections: all.filter((s) => means.recipes.has(s.recipe)),
    notDoable: all
      .filter((s) => !means.recipes.has(s.recipe))
      .map((s) => worded`${s.name}: the recipe ${s.recipe} cannot be done with what the shop has`),
  };
}

type Found = Readonly<Partial<Record<Fault, readonly string[]>>>;

/** The section in which a fault mostly is. */
function usualPlace(fault: Fault, sections: readonly { readonly id: string; readonly role: Role }[]): string {
  const has = (id: string) => sections.some((s) => s.id === id);
  if (fault === 'runner-missing') return 'drawer-boxes';
  if (fault === 'odour' && has('drawer-boxes')) return 'drawer-boxes';
  if (fault === 'odour' && (has('body') || has('carcass'))) return 'inside';
  if (fault === 'joints-loose' && has('base')) return 'base';
  return sections.find((s) => s.role === 'outside')?.id ?? '';
}

/** Faults, each perhaps with its section: `gouges=top`. */
function faultsReader(sections: readonly { readonly id: string }[]): Reader<readonly (readonly [Fault, string?])[]> {
  const some = someOf(faults);
  const ids = sections.map((s) => s.id);
  return (text) => {
    const found: (readonly [Fault, string?])[] = [];
    for (const part of text.split(',')) {
      const [word = '', section] = part.split('=').map((w) => w.trim());
      if (section !== undefined && !ids.includes(section))
        return refuse(worded`names a section "${section}" that the piece has not`, adviseWord(section, ids));
      const read = some(word);
      if (!read.ok) return read;
      found.push(
        ...read.value.map((fault) => (section === undefined ? ([fault] as const) : ([fault, section] as const))),
      );
    }
    return { ok: true, value: found };
  };
}

export async function knowFound(
  asker: Asker,
  sections: readonly { readonly id: string; readonly name: string; readonly role: Role }[],
): Promise<Found> {
  const named = await asker.know({
    flag: 'found',
    ask: worded`What is wrong with it? Numbers with commas; Enter: nothing`,
    more: numbered(faults.map((fault) => translated(faultFaces[fault].say))),
    usual: '',
    read: faultsReader(sections),
  });
  const found: Partial<Record<Fault, readonly string[]>> = {};
  for (const [fault, section] of named) {
    const usual = usualPlace(fault, sections);
    const choices = sections.filter((s) => s.role === 'outside').map((s) => s.id);
    const asks = section === undefined && choices.length > 1 && choices.includes(usual);
    const place = asks
      ? await asker.know({
          ask: worded`Where: ${translated(faultFaces[fault].say)}?`,
          more: numbered(choices),
          usual,
          read: oneOf(choices),
        })
      : (section ?? usual);
    found[fault] = [...(found[fault] ?? []), place];
  }
  return found;
}
