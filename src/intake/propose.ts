import type { Piece, Section } from '../model/piece.ts';
import type { Recipe } from '../model/recipe.ts';
import type { AgreedSection, Answers } from './answers.ts';
import { DARK_PART, faultFaces, faults, GRAIN_PART, TANNIN_PART } from './found.ts';
import { placePart } from './place-part.ts';
import {
  drinksIn,
  gluingSteps,
  isPainted,
  sealsFirst,
  strippingSteps,
  usesMaterial,
  type MaterialOf,
} from './recipe-traits.ts';
import { joinedByOr, phrase, translated, worded } from '../words/worded.ts';

/** What the shop can do, and its word on what is proposed. */
export interface Means {
  /** Recipes and parts that the shop can do. */
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly parts: ReadonlyMap<string, Recipe>;
  /** Recipes that the shop cannot do, each with what it lacks for them, in words. */
  readonly beyond: ReadonlyMap<string, { readonly recipe: Recipe; readonly lacks: readonly string[] }>;
  readonly materialOf: MaterialOf;
  /** How many things `check` would say of this piece. */
  readonly problems: (piece: Piece) => number;
}

/** A section with all that was found for it; why each part is in and each step is out, by its id. */
export interface ProposedSection {
  readonly section: Section;
  readonly agreed: AgreedSection;
  readonly reasons: ReadonlyMap<string, string>;
}

export interface Proposal {
  readonly piece: Piece;
  readonly sections: readonly ProposedSection[];
  /** What was found and nothing is proposed for, with the reason. */
  readonly left: readonly string[];
}

interface Wish {
  readonly part: string;
  readonly why: string;
}

const RUNNER_STEP = 'runners';
const GRAIN_FILLER = 'grain-filler';

/** Parts that a section asks for, in the order of the trade: glue, veneer, runners, gouges, then what lies under a film. */
function wishesFor(agreed: AgreedSection, answers: Answers, recipe: Recipe, materialOf: MaterialOf): Wish[] {
  const found = (Object.keys(faultFaces) as (keyof typeof faultFaces)[])
    .filter((fault) => answers.found[fault]?.includes(agreed.id) === true)
    .map((fault): Wish => ({ part: faultFaces[fault].part, why: worded`found: ${translated(faultFaces[fault].say)}` }));
  if (agreed.role !== 'outside') return found;
  const painted = isPainted(recipe, materialOf);
  return [...found, ...woodWishes(agreed, answers, recipe, materialOf), ...(painted ? colourWishes(answers) : [])];
}

const DARK_TO_LIGHT = phrase('a dark old finish under a light colour');

function colourWishes({ darkToLight, wood }: Answers): Wish[] {
  return darkToLight
    ? [
        {
          part: DARK_PART,
          why: `${translated(DARK_TO_LIGHT)}${wood.bleeds ? worded`; it holds the brown of the wood back too` : ''}`,
        },
      ]
    : [];
}

/**
 * What the wood asks for under a film. Open pores show through an old finish that stays as well; tannin comes through where
 * the wood lies bare: stripped, cut back for a repair, or, under an old clear finish, at each edge that sanding goes through.
 * Common practice, no source.
 */
function woodWishes(agreed: AgreedSection, answers: Answers, recipe: Recipe, materialOf: MaterialOf): Wish[] {
  const { wood, oldFinish, darkToLight, found } = answers;
  const bare = oldFinish === 'bare' || strippingSteps(recipe).length > 0;
  const cutBack = (['gouges', 'veneer-loose'] as const).some((fault) => found[fault]?.includes(agreed.id) === true);
  const laidBare = bare || cutBack || oldFinish !== 'paint';
  const fills = wood.openGrained && !drinksIn(recipe, materialOf) && !usesMaterial(recipe, GRAIN_FILLER);
  const seals =
    wood.bleeds && laidBare && isPainted(recipe, materialOf) && !sealsFirst(recipe, materialOf) && !darkToLight;
  const bleeding = bare
    ? worded`bare ${wood.name} bleeds brown through paint`
    : worded`${wood.name} bleeds brown through paint where sanding or a repair bares it`;
  return [
    ...(fills ? [{ part: GRAIN_PART, why: worded`${wood.name} has open pores` }] : []),
    ...(seals ? [{ part: TANNIN_PART, why: bleeding }] : []),
  ];
}

/** Steps of the recipe that this piece does not need. */
function leftOut(agreed: AgreedSection, answers: Answers, recipe: Recipe, materialOf: MaterialOf): [string, string][] {
  const has = (fault: keyof typeof faultFaces) => answers.found[fault]?.includes(agreed.id) === true;
  const bare = answers.oldFinish === 'bare' ? strippingSteps(recipe) : [];
  const runners = recipe.steps.some((s) => s.id === RUNNER_STEP) && agreed.role !== 'outside' ? [RUNNER_STEP] : [];
  const glued = gluingSteps(recipe, materialOf).filter((id) => !runners.includes(id));
  return [
    ...bare.map((id): [string, string] => [id, worded`bare wood: nothing to strip`]),
    ...glued.map((id): [string, string] => [
      id,
      has('joints-loose') ? worded`glued above` : worded`no loose joints found`,
    ]),
    ...(agreed.role === 'inside' ? runners.map((id): [string, string] => [id, worded`there are none`]) : []),
    ...(has('runner-missing') ? runners.map((id): [string, string] => [id, worded`new ones instead`]) : []),
  ];
}

function plainSection(agreed: AgreedSection): Section {
  const { id, name, recipe, areaM2, items, thicknessMm, attachedTo } = agreed;
  const section = { id, name, recipe, areaM2, items, thicknessMm, materials: {}, without: [] };
  return attachedTo === undefined ? section : { ...section, attachedTo };
}

function proposeSection(
  agreed: AgreedSection,
  answers: Answers,
  means: Means,
): { readonly proposed: ProposedSection; readonly left: string[] } {
  const { materialOf, parts } = means;
  const recipe = means.recipes.get(agreed.recipe);
  const plain = plainSection(agreed);
  if (recipe === undefined) return { proposed: { section: plain, agreed, reasons: new Map() }, left: [] };
  const problems = (section: Section) => means.problems(pieceWith(answers, [section], undefined));
  const reasons = new Map<string, string>();
  const left: string[] = [];

  let section = plain;
  for (const [step, why] of leftOut(agreed, answers, recipe, materialOf)) {
    const without: Section = { ...section, without: [...section.without, step] };
    if (problems(without) > problems(section)) continue;
    section = without;
    reasons.set(step, why);
  }
  for (const { part, why } of wishesFor(agreed, answers, recipe, materialOf)) {
    const placed = parts.has(part) ? placePart(part, section, recipe, materialOf, problems) : undefined;
    if (placed === undefined) {
      const reason = parts.has(part)
        ? worded`finds no place in ${recipe.id}`
        : worded`cannot be done with what the shop has`;
      left.push(worded`${agreed.name}: ${why}; the part ${part} ${reason}`);
      continue;
    }
    section = placed;
    reasons.set(part, why);
  }
  return { proposed: { section, agreed, reasons }, left };
}

function pieceWith(answers: Answers, sections: readonly Section[], whole: string | undefined): Piece {
  const { id, name, kind, lead } = answers;
  return {
    id,
    name,
    kind,
    priceMinor: answers.priceMinor ?? 0,
    costMinor: answers.costMinor ?? 0,
    mayCarryLead: lead !== 'no',
    sections,
    joins: [],
    ...(whole !== undefined && { whole }),
  };
}

const PLAIN_WHOLE = 'whole-piece-plain';
/** The second for a shop where two hands are never in together. */
const CASED_WHOLE = ['whole-piece', 'whole-piece-alone'];

/** The recipe of the steps round all sections: one with hardware and drawers, or the plain one where that is not to be had. */
function wholeOf(answers: Answers, means: Means): { readonly whole?: string; readonly left: string[] } {
  const cased = answers.sections.some((s) => s.role === 'drawers' || s.role === 'fittings' || s.id === 'doors');
  const wanted = cased ? CASED_WHOLE : [PLAIN_WHOLE];
  const found = wanted.find((id) => means.recipes.has(id));
  if (found !== undefined) return { whole: found, left: [] };
  const cannot = worded`the recipe ${joinedByOr(wanted)} cannot be done with what the shop has`;
  return means.recipes.has(PLAIN_WHOLE)
    ? { whole: PLAIN_WHOLE, left: [worded`${cannot}: ${PLAIN_WHOLE} instead`] }
    : { left: [cannot] };
}

function unplaced(answers: Answers): string[] {
  const ids = answers.sections.map((s) => s.id);
  return faults
    .filter((fault) => answers.found[fault]?.some((id) => ids.includes(id)) === false)
    .map((fault) => worded`${translated(faultFaces[fault].say)}: there is no section for it`);
}

/** What is to be done with a piece, from what was found and what is wanted. */
export function propose(answers: Answers, means: Means): Proposal {
  const each = answers.sections.map((agreed) => proposeSection(agreed, answers, means));
  const sections = each.map((e) => e.proposed);
  const round = wholeOf(answers, means);
  const piece = pieceWith(
    answers,
    sections.map((s) => s.section),
    round.whole,
  );
  return {
    piece,
    sections,
    left: [...answers.notDoable, ...round.left, ...each.flatMap((e) => e.left), ...unplaced(answers)],
  };
}
