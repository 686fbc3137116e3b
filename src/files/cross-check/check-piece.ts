import { WHOLE } from '../../model/expand.ts';
import type { Piece, Section } from '../../model/piece.ts';
import type { Recipe, RecipeStep } from '../../model/recipe.ts';
import { findStep, insertJoin, sectionSteps, type ChainStep } from '../../model/section-steps.ts';
import { slotParts, slotProblems } from '../../model/slot-parts.ts';
import { adviseWord } from '../suggest.ts';
import type { Path } from '../yaml/tree.ts';
import { checkDoable, placedSteps } from './check-recipe.ts';
import type { Complaint } from './complaint.ts';
import type { Whole } from './whole.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

type Say = (code: string, path: Path, message: string, advice: string, severity?: Complaint['severity']) => Complaint;

interface Chain {
  /** `whole` for the steps of the whole piece. */
  readonly section: string;
  readonly steps: readonly ChainStep[];
}

function unknownRecipe(id: string, whole: Whole, path: Path, say: Say): Complaint[] {
  if (whole.recipes.ids.includes(id)) return [];
  return [say('unknown-recipe', path, worded`there is no recipe ${id}`, adviseWord(id, whole.recipes.ids))];
}

function attachment(piece: Piece, section: Section, path: Path, say: Say): Complaint[] {
  const others = piece.sections.map((s) => s.id).filter((id) => id !== section.id);
  const { attachedTo } = section;
  if (attachedTo === undefined || others.includes(attachedTo)) return [];
  const message =
    attachedTo === section.id
      ? worded`a section cannot be attached to itself`
      : worded`the piece has no section ${attachedTo}`;
  return [say('unknown-section', [...path, 'attached-to'], message, adviseWord(attachedTo, others))];
}

function allSteps(steps: readonly RecipeStep[]): RecipeStep[] {
  return steps.flatMap((step) => [step, ...allSteps(step.between)]);
}

function replacements(section: Section, steps: readonly RecipeStep[], whole: Whole, path: Path, say: Say): Complaint[] {
  const used = [...new Set(allSteps(steps).flatMap((s) => (s.material === undefined ? [] : [s.material])))];
  return Object.entries(section.materials).flatMap(([from, to]) => [
    ...(used.includes(from)
      ? []
      : [
          say(
            'material-not-in-recipe',
            [...path, 'materials', from],
            worded`the recipe uses no ${from}`,
            adviseWord(from, used),
            'warning',
          ),
        ]),
    ...(whole.materials.ids.includes(to)
      ? []
      : [
          say(
            'unknown-material',
            [...path, 'materials', from],
            worded`there is no material ${to}`,
            adviseWord(to, whole.materials.ids),
          ),
        ]),
  ]);
}

const slotWords = {
  'unknown-part': phrase('there is no part of that name'),
  'unknown-step': phrase('the recipe has no such step'),
  'part-twice': phrase('this part stands twice'),
  'before-and-after': phrase('a part comes before one step or after one, not both'),
};

function parts(section: Section, recipe: Recipe, whole: Whole, path: Path, say: Say): Complaint[] {
  const slots = section.with ?? [];
  return slotProblems(recipe.steps, slots, whole.book.parts).flatMap(({ slot, code, word }) => {
    // A part that is there and could not be read is told of in its own file.
    if (code === 'unknown-part' && whole.parts.ids.includes(word)) return [];
    const known =
      code === 'unknown-part' ? whole.parts.ids : code === 'unknown-step' ? recipe.steps.map((s) => s.id) : [];
    const advice = known.length > 0 ? adviseWord(word, known) : worded`keep one of the two`;
    return [say(code, [...path, 'with', slot], `${word}: ${translated(slotWords[code])}`, advice)];
  });
}

function leftOut(section: Section, steps: readonly RecipeStep[], path: Path, say: Say): Complaint[] {
  const ids = allSteps(steps).map((s) => s.id);
  return section.without.flatMap((id, index) =>
    ids.includes(id)
      ? []
      : [say('unknown-step', [...path, 'without', index], worded`the recipe has no step ${id}`, adviseWord(id, ids))],
  );
}

function checkSection(piece: Piece, section: Section, whole: Whole, say: Say): Complaint[] {
  const path = ['sections', section.id];
  const recipe = whole.book.recipes.get(section.recipe);
  const attached = attachment(piece, section, path, say);
  if (recipe === undefined) return [...attached, ...unknownRecipe(section.recipe, whole, [...path, 'recipe'], say)];
  const slotted = parts(section, recipe, whole, path, say);
  const steps = slotted.length > 0 ? recipe.steps : slotParts(recipe.steps, section.with ?? [], whole.book.parts);
  return [
    ...attached,
    ...slotted,
    ...replacements(section, steps, whole, path, say),
    ...leftOut(section, steps, path, say),
  ];
}

function chainsOf(piece: Piece, whole: Whole): Chain[] {
  const recipe = piece.whole === undefined ? undefined : whole.book.recipes.get(piece.whole);
  return [
    { section: WHOLE, steps: sectionSteps(recipe?.steps ?? [], { without: [] }) },
    ...piece.sections.map((section) => {
      const steps = whole.book.recipes.get(section.recipe)?.steps ?? [];
      const chain = sectionSteps(slotParts(steps, section.with ?? [], whole.book.parts), section);
      const joins = piece.joins.filter((join) => join.section === section.id);
      return { section: section.id, steps: joins.reduce<readonly ChainStep[]>(insertJoin, chain) };
    }),
  ];
}

interface Reference {
  readonly name: string;
  readonly path: Path;
}

function referencesOf(step: RecipeStep, path: Path): Reference[] {
  const links = (['after', 'before'] as const).flatMap((key) =>
    (step[key] ?? []).map((link, index) => ({ name: link.step, path: [...path, key, index] })),
  );
  return step.unmasks === undefined ? links : [...links, { name: step.unmasks, path: [...path, 'unmasks'] }];
}

/** A reference to a step that the piece does not have, where it says so itself or by leaving steps out. */
function danglingReference(reference: Reference, from: Chain, chains: readonly Chain[], say: Say): Complaint[] {
  const { name, path } = reference;
  const [sectionId = '', stepName = ''] = name.includes('/') ? name.split('/') : [from.section, name];
  const targets = chains.filter((chain) => chain.section === sectionId);
  if (targets.some((chain) => findStep(chain.steps, stepName, 'last') !== undefined)) return [];
  const sections = chains.map((chain) => chain.section);
  if (targets.length === 0)
    return [
      say('unknown-section', path, worded`the piece has no section ${sectionId}`, adviseWord(sectionId, sections)),
    ];
  const steps = targets.flatMap((chain) => chain.steps.map((step) => step.id));
  return [
    say(
      'unknown-step',
      path,
      worded`${name} is asked for, and ${sectionId} has no such step`,
      adviseWord(stepName, steps),
    ),
  ];
}

/** References that a recipe makes are the recipe's own to answer for, but those that only this piece breaks. */
function references(piece: Piece, whole: Whole, say: Say): Complaint[] {
  const chains = chainsOf(piece, whole);
  return chains.flatMap((chain) =>
    chain.steps.flatMap(({ recipeStep }) => {
      const join = piece.joins.findIndex((j) => j === recipeStep);
      const path = join >= 0 ? ['joins', join] : ['sections', chain.section];
      const made = referencesOf(recipeStep, path).filter(
        (r) => join >= 0 || r.name.includes('/') || !isBroken(r, chain),
      );
      return made.flatMap((reference) => danglingReference(reference, chain, chains, say));
    }),
  );

  function isBroken({ name }: Reference, chain: Chain): boolean {
    const section = piece.sections.find((s) => s.id === chain.section);
    const recipe = whole.book.recipes.get(section?.recipe ?? piece.whole ?? '');
    const full = slotParts(recipe?.steps ?? [], section?.with ?? [], whole.book.parts);
    return findStep(sectionSteps(full, { without: [] }), name, 'last') === undefined;
  }
}

function joins(piece: Piece, whole: Whole, say: Say): Complaint[] {
  const sections = piece.sections.map((s) => s.id);
  return piece.joins.flatMap((join, index) => [
    ...(sections.includes(join.section)
      ? []
      : [
          say(
            'unknown-section',
            ['joins', index, 'section'],
            worded`the piece has no section ${join.section}`,
            adviseWord(join.section, sections),
          ),
        ]),
    ...(chainsOf(piece, whole)
      .find((chain) => chain.section === join.section)
      ?.steps.some((step) => step.recipeStep !== join && step.id === join.id) === true
      ? [
          say(
            'step-twice',
            ['joins', index, 'step'],
            worded`${join.section} has a step ${join.id} already`,
            worded`give this one another name`,
          ),
        ]
      : []),
  ]);
}

function disturbs({ steps }: Chain): boolean {
  return steps.some((s) => s.recipeStep.disturbsOldPaint);
}

/** What does not fit together within a piece, and between it and recipes, materials and the shop. */
export function checkPiece(piece: Piece, whole: Whole): Complaint[] {
  const file = `pieces/${piece.id}.yaml`;
  const say: Say = (code, path, message, advice, severity = 'error') => ({
    code,
    severity,
    file,
    path,
    message,
    advice,
  });
  const { arrives, wantedBy } = piece;
  return [
    ...(piece.leadUnsaid === true && chainsOf(piece, whole).some(disturbs)
      ? [
          say(
            'lead-unsaid',
            [],
            worded`a step disturbs old paint, and the file does not say whether that may hold lead`,
            worded`write \`may-carry-lead: yes\`, which holds such steps back until its test is recorded; or no`,
            'warning',
          ),
        ]
      : []),
    ...(piece.sections.length === 0
      ? [say('no-sections', ['sections'], worded`the piece has no section`, worded`name one, with its recipe and area`)]
      : []),
    ...(arrives !== undefined && wantedBy !== undefined && wantedBy <= arrives
      ? [
          say(
            'wanted-before-it-arrives',
            ['wanted-by'],
            worded`it is wanted before it arrives`,
            worded`write a later date, or an earlier one as arrives`,
          ),
        ]
      : []),
    ...(piece.whole === undefined || whole.book.recipes.has(piece.whole)
      ? []
      : unknownRecipe(piece.whole, whole, ['whole'], say)),
    ...piece.sections.flatMap((section) => checkSection(piece, section, whole, say)),
    ...joins(piece, whole, say),
    ...references(piece, whole, say),
    ...checkDoable(placedSteps(piece.joins, ['joins']), file, whole.book.shop, whole.materials.ids),
  ];
}
