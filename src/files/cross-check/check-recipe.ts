import type { Material } from '../../model/material.ts';
import type { Recipe, RecipeStep, RecipeWay, StepLink } from '../../model/recipe.ts';
import { sectionSteps } from '../../model/section-steps.ts';
import type { Shop } from '../../model/shop.ts';
import { adviseWord } from '../suggest.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';
import { neverDry } from './dry-in-time.ts';
import { longestTogether } from './hours-together.ts';
import { counted, joinedByOr, worded } from '../../words/worded.ts';

/** A step and where it stands in its file. */
export interface PlacedStep {
  readonly step: RecipeStep;
  readonly path: Path;
}

/** Steps, and the steps between their coats, in the order of the file. */
export function placedSteps(steps: readonly RecipeStep[], above: Path): PlacedStep[] {
  return steps.flatMap((step, index) => {
    const path = [...above, index];
    return [{ step, path }, ...placedSteps(step.between, [...path, 'between'])];
  });
}

type Say = (code: string, path: Path, message: string, advice: string, severity?: Complaint['severity']) => Complaint;

function sayIn(file: string): Say {
  return (code, path, message, advice, severity = 'error') => ({ code, severity, file, path, message, advice });
}

/** Why nobody and nothing in the shop can do a step in this way; undefined where it can be done. */
function hindrance(way: RecipeWay, people: number, shop: Shop): readonly [string, string, string, string] | undefined {
  const tools = shop.tools.map((t) => t.id);
  const missingTool = way.tools.find((tool) => !tools.includes(tool));
  if (missingTool !== undefined)
    return ['unknown-tool', 'tools', worded`the shop has no tool ${missingTool}`, adviseWord(missingTool, tools)];
  const kinds = [...new Set<string>(shop.stations.map((s) => s.kind))];
  if (!way.stations.some((kind) => kinds.includes(kind)))
    return [
      'no-such-station',
      'at',
      worded`the shop has no station of the kind ${joinedByOr(way.stations)}`,
      kinds.length > 0 ? worded`it has ${kinds.join(', ')}` : worded`add one to shop.yaml`,
    ];
  const skilled = shop.hands.filter((hand) => way.skill === undefined || hand.skills.includes(way.skill));
  const together = skilled.length >= people && (people === 1 || longestTogether(shop, way.skill, people) > 0);
  if (together) return undefined;
  const skills = [...new Set(shop.hands.flatMap((hand) => hand.skills))];
  if (way.skill !== undefined && skilled.length === 0)
    return [
      'no-such-skill',
      'skill',
      worded`nobody in the shop has the skill ${way.skill}`,
      adviseWord(way.skill, skills),
    ];
  const whose = way.skill === undefined ? '' : worded` with the skill ${way.skill}`;
  const needs = worded`the step needs ${people} hands${whose} at once, and`;
  if (skilled.length >= people)
    return [
      'never-together',
      'people',
      worded`${needs} so many are never in together`,
      worded`let their hours overlap in shop.yaml`,
    ];
  const there = counted(skilled.length, 'there is {0}', 'there are {0}');
  return ['too-few-hands', 'people', `${needs} ${there}`, fewerHands(people)];
}

function fewerHands(people: number): string {
  const add = worded`add a hand to shop.yaml`;
  return people === 1 ? add : worded`${add}; or, where it can be done so without harm, write people: ${people - 1}`;
}

/** Steps that the shop cannot do at all, in none of their ways; and materials that there are not. */
export function checkDoable(
  steps: readonly PlacedStep[],
  file: string,
  shop: Shop,
  materialIds: readonly string[],
): Complaint[] {
  const say = sayIn(file);
  return steps.flatMap(({ step, path }) => {
    const { material } = step;
    const unknown =
      material === undefined || materialIds.includes(material)
        ? []
        : [
            say(
              'unknown-material',
              [...path, 'material'],
              worded`there is no material ${material}`,
              adviseWord(material, materialIds),
            ),
          ];
    const hindrances = step.ways.map((way) => ({ way, why: hindrance(way, step.people, shop) }));
    const [first] = hindrances;
    if (first?.why === undefined || hindrances.some((h) => h.why === undefined)) return unknown;
    const [code, key, message, advice] = first.why;
    const where = first.way.name === '' || key === 'people' ? path : [...path, 'ways', first.way.name];
    return [...unknown, say(code, [...where, key], message, advice)];
  });
}

function repeatedIds(placed: readonly PlacedStep[], recipe: Recipe, say: Say): Complaint[] {
  const counted = sectionSteps(recipe.steps, { without: [] }).map((s) => s.id);
  const clash = counted.find((id, index) => counted.indexOf(id) < index);
  const twice = placed.filter(({ step }, index) => placed.findIndex((p) => p.step.id === step.id) < index);
  const complaints = twice.map(({ step, path }) =>
    say(
      'step-twice',
      [...path, 'step'],
      worded`two steps are called ${step.id}`,
      worded`give each step a name of its own`,
    ),
  );
  if (complaints.length > 0 || clash === undefined) return complaints;
  const at = placed.find(({ step }) => step.id === clash)?.path ?? [];
  const advice = worded`coats are numbered step-1, step-2: give this step another name`;
  return [say('step-twice', [...at, 'step'], worded`two steps come to be called ${clash}`, advice)];
}

/** References inside one recipe: to steps that there are, and that come before. */
function ownLinks(placed: readonly PlacedStep[], recipe: Recipe, say: Say): Complaint[] {
  const ids = [
    ...new Set([...placed.map((p) => p.step.id), ...sectionSteps(recipe.steps, { without: [] }).map((s) => s.id)]),
  ];
  const isCoatOf = (id: string, step: RecipeStep) =>
    id.startsWith(`${step.id}-`) && /^\d{1,2}$/.test(id.slice(step.id.length + 1));
  const indexOf = (id: string) => {
    const exact = placed.findIndex(({ step }) => step.id === id);
    return exact >= 0 ? exact : placed.findIndex(({ step }) => isCoatOf(id, step));
  };
  const checkLink = (key: 'after' | 'before', { step: name }: StepLink, path: Path, index: number): Complaint[] => {
    if (name.includes('/')) return [];
    if (!ids.includes(name))
      return [say('unknown-step', path, worded`the recipe has no step ${name}`, adviseWord(name, ids))];
    const target = indexOf(name);
    if (key === 'after' ? target < index : target > index) return [];
    const order =
      key === 'after' ? worded`comes after this one in the list` : worded`comes before this one in the list`;
    return [
      say(
        'order-in-a-circle',
        path,
        target === index ? worded`the step ${name} waits for itself` : worded`the step ${name} ${order}`,
        worded`steps are done from the top down: move one of the two`,
      ),
    ];
  };
  return placed.flatMap(({ step, path }, index) =>
    (['after', 'before'] as const).flatMap((key) =>
      (step[key] ?? []).flatMap((link, i) => checkLink(key, link, [...path, key, i], index)),
    ),
  );
}

function masking(placed: readonly PlacedStep[], say: Say): Complaint[] {
  const masks = placed.filter(({ step }) => step.stage === 'mask');
  const maskIds = masks.map(({ step }) => step.id);
  const taken = new Set(placed.map(({ step }) => step.unmasks));
  const unmasking = placed.flatMap(({ step, path }, index) => {
    if (step.unmasks === undefined)
      return step.stage === 'unmask'
        ? [
            say(
              'unmasks-nothing',
              path,
              worded`${step.id} does not say what it unmasks`,
              worded`write unmasks: and the masking step`,
            ),
          ]
        : [];
    const target = placed.findIndex((p) => p.step.id === step.unmasks);
    if (!maskIds.includes(step.unmasks))
      return [
        say(
          'unknown-step',
          [...path, 'unmasks'],
          worded`there is no masking step ${step.unmasks}`,
          adviseWord(step.unmasks, maskIds),
        ),
      ];
    return target < index
      ? []
      : [
          say(
            'order-in-a-circle',
            [...path, 'unmasks'],
            worded`${step.unmasks} comes after this step`,
            worded`mask before you unmask`,
          ),
        ];
  });
  const left = masks
    .filter(({ step }) => !taken.has(step.id))
    .map(({ step, path }) =>
      say(
        'never-unmasked',
        path,
        worded`nothing takes off what ${step.id} puts on`,
        worded`add a step with unmasks:`,
        'warning',
      ),
    );
  return [...unmasking, ...left];
}

function coats(placed: readonly PlacedStep[], say: Say): Complaint[] {
  return placed
    .filter(({ step }) => step.coats === 1 && step.between.length > 0)
    .map(({ step, path }) =>
      say(
        'between-one-coat',
        [...path, 'between'],
        worded`${step.id} has one coat: nothing lies between`,
        worded`write coats: 2`,
        'warning',
      ),
    );
}

/** Steps that wait for what cannot have dried by the time that the recipe gives it. */
function dryTooLate(
  placed: readonly PlacedStep[],
  materialOf: (id: string) => Material | undefined,
  say: Say,
): Complaint[] {
  const stepOf = new Map(placed.map(({ step }) => [step.id, step]));
  return placed.flatMap(({ step, path }) =>
    (step.after ?? [])
      .flatMap((link, i) => neverDry(link, stepOf.get(link.step), materialOf, [...path, 'after', i]))
      .map((found) => say('never-dry-enough', found.path, found.message, found.advice)),
  );
}

/** What does not fit together within a recipe or a part, and between it and the shop. */
export function checkRecipe(
  recipe: Recipe,
  file: string,
  shop: Shop,
  materialIds: readonly string[],
  materialOf: (id: string) => Material | undefined,
): Complaint[] {
  const say = sayIn(file);
  const placed = placedSteps(recipe.steps, ['steps']);
  return [
    ...repeatedIds(placed, recipe, say),
    ...ownLinks(placed, recipe, say),
    ...masking(placed, say),
    ...coats(placed, say),
    ...dryTooLate(placed, materialOf, say),
    ...checkDoable(placed, file, shop, materialIds),
  ];
}
