import type { Material } from '../../model/material.ts';
import type { RecipeStep, StepLink } from '../../model/recipe.ts';
import { worded } from '../../words/worded.ts';
import type { Path } from '../yaml/tree.ts';

/** A link that no weather can keep: what is wrong, what to write, and where. */
export interface NeverDry {
  readonly path: Path;
  readonly message: string;
  readonly advice: string;
}

const said = (hours: number): string =>
  hours < 48 ? `${Number(hours.toFixed(2))} h` : `${Number((hours / 24).toFixed(2))} d`;

/** Where `link` asks that a film be ready sooner than even its fastest hours let it be. */
export function neverDry(
  { mark, atMostHours, waitHours = 0 }: StepLink,
  film: RecipeStep | undefined,
  materialOf: (id: string) => Material | undefined,
  path: Path,
): NeverDry[] {
  if (atMostHours === undefined) return [];
  if (waitHours > atMostHours)
    return [
      {
        path,
        message: worded`a wait of ${said(waitHours)} is never over within ${said(atMostHours)}`,
        advice: worded`write a shorter wait, or a longer time behind within`,
      },
    ];
  const material = film?.material === undefined ? undefined : materialOf(film.material);
  const least = mark === undefined ? undefined : material?.marks[mark]?.low;
  if (material === undefined || mark === undefined || least === undefined || least <= atMostHours) return [];
  const message = worded`${material.name} takes at least ${said(least)} to reach ${mark}: never within ${said(atMostHours)}`;
  return [{ path, message, advice: worded`write within ${said(least)} or more, or a mark that it reaches sooner` }];
}
