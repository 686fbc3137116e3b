import { stages, type Recipe, type RecipeStep, type RecipeWay, type WorkTime } from '../../model/recipe.ts';
import type { Provenance } from '../../model/material.ts';
import { readId } from '../quantities/plain.ts';
import { listOf, namedBy } from '../shapes/collections.ts';
import { may, must, record } from '../shapes/record.ts';
import { byKind, refined, type Shape, type ValueOf } from '../shapes/shape.ts';
import { choice } from '../shapes/text.ts';
import { present } from '../present.ts';
import {
  decimal,
  id,
  ids,
  lengthMm,
  links,
  mark,
  minutes,
  name,
  percent,
  sentence,
  stations,
  whole,
  yesNo,
} from './values.ts';
import { worded } from '../../words/worded.ts';

/** Where a file of the shop's own names no source. */
export const OWN_FIGURES: Provenance = "the shop's own figures";

/** 1 ft = 0.3048 m exactly: NIST Handbook 44 (2023), appendix C. */
const SQ_FT_PER_M2 = 1 / 0.3048 ** 2;

const time: Shape<WorkTime> = byKind(
  {
    text: refined(minutes, (fixed) => ({ fixedMinutes: fixed, minutesPerM2: 0, minutesPerItem: 0 })),
    map: refined(
      record('hands-on time', {
        fixed: may(minutes, 'whatever the size'),
        mix: may(minutes, 'mixing, thinning and straining: once for all coats of a session'),
        'per-m2': may(minutes, 'for each square metre'),
        'per-sq-ft': may(minutes, 'for each square foot'),
        'per-item': may(minutes, 'for each item'),
      }),
      (t) => ({
        fixedMinutes: t.fixed ?? 0,
        minutesPerM2: (t['per-m2'] ?? 0) + (t['per-sq-ft'] ?? 0) * SQ_FT_PER_M2,
        minutesPerItem: t['per-item'] ?? 0,
        ...(t.mix !== undefined && { mixMinutes: t.mix }),
      }),
    ),
  },
  'a time like 20 min or { fixed: 5 min, per-m2: 8 min, per-item: 1 min }',
);

const wayFields = {
  time: may(time, 'hands-on time'),
  at: may(stations, 'kinds of station; bench if left out'),
  tools: may(ids, 'tools in use'),
  skill: may(id, 'only hands with this skill'),
  thickness: may(decimal(0.1, 10), "wet film, relative to the sheet's; 1 if left out"),
  transfer: may(percent, 'share of the material that lands on the work; 100 % if left out'),
};

const way = record('a way of doing the step', wayFields);

const innerStepFields = {
  step: must(id, 'an id for the step, no other step of the recipe has it'),
  do: must(sentence, 'what to do, in the words of the bench'),
  stage: must(choice('a stage', stages), `one of ${stages.join(', ')}`),
  ...wayFields,
  ways: may(namedBy(readId, way, 'ways'), 'alternatives, of which the plan chooses'),
  people: may(whole(1, 20), 'hands at once; 1 if left out'),
  dusty: may(yesNo, 'raises dust: not while anything in the room is wet'),
  'may-pause': may(yesNo, 'may run over a break'),
  grit: may(whole(8, 20_000), 'of the abrasive'),
  supplies: may(ids, 'what is used up'),
  material: may(id, 'id of the material that is laid on'),
  depth: may(lengthMm, 'of a fill'),
  coats: may(whole(1, 20), 'how often the step is repeated'),
  needs: may(mark, 'mark that the films below must have reached'),
  after: may(links, 'replaces "after the step before"'),
  before: may(links, 'steps of other sections that wait for this one'),
  unmasks: may(id, 'step whose tape this one takes off'),
  joins: may(choice('a place in the whole piece', ['begin', 'end']), 'in a recipe of the whole piece: begin or end'),
  'disturbs-old-paint': may(yesNo, 'not before the lead test of a piece that may carry it'),
  caution: may(sentence, 'shown where the work is'),
  source: may(sentence, 'where the figures come from'),
};

const innerStep = record('a step', innerStepFields);
const stepFields = { ...innerStepFields, between: may(listOf(innerStep, 'steps'), 'between one coat and the next') };
type WrittenStep = ValueOf<typeof innerStep> & { readonly between?: readonly ValueOf<typeof innerStep>[] };
type WrittenWay = ValueOf<typeof way>;

function wayOf(name: string, own: WrittenWay, step: WrittenStep): RecipeWay {
  return present({
    name,
    time: own.time ?? step.time ?? { fixedMinutes: 0, minutesPerM2: 0, minutesPerItem: 0 },
    stations: own.at ?? step.at ?? ['bench'],
    tools: own.tools ?? step.tools ?? [],
    skill: own.skill ?? step.skill,
    thickness: own.thickness ?? step.thickness ?? 1,
    transferEfficiency: (own.transfer ?? step.transfer ?? 100) / 100,
  });
}

function waysOf(step: WrittenStep): readonly RecipeWay[] {
  if (step.ways === undefined) return [wayOf('', {}, step)];
  return step.ways.map(({ key, value }) => wayOf(key, value, step));
}

/** The model's step; `source` is what figures without a source of their own have. */
export function stepOf(step: WrittenStep, source: Provenance): RecipeStep {
  return present({
    id: step.step,
    title: step.do,
    stage: step.stage,
    ways: waysOf(step),
    material: step.material,
    depthMm: step.depth,
    grit: step.grit,
    supplies: step.supplies ?? [],
    people: step.people ?? 1,
    dusty: step.dusty ?? false,
    mayPause: step['may-pause'] ?? false,
    coats: step.coats ?? 1,
    between: (step.between ?? []).map((s) => stepOf(s, source)),
    needs: step.needs,
    after: step.after,
    before: step.before,
    unmasks: step.unmasks,
    joins: step.joins,
    disturbsOldPaint: step['disturbs-old-paint'] ?? false,
    caution: step.caution,
    source: step.source ?? source,
  });
}

/** Each step, and each of its ways, needs a time. */
function timed<T extends WrittenStep>(shape: Shape<T>): Shape<T> {
  return refined(shape, (step, node, notes) => {
    const untimed = (step.ways ?? [{ value: step }]).some((w) => w.value.time === undefined && step.time === undefined);
    if (step.ways?.length === 0 || untimed) {
      notes.error(node, {
        code: 'missing-key',
        message: worded`a step needs the key time, or a time in each of its ways`,
        advice: worded`write time: 20 min, or time: { fixed: 5 min, per-m2: 8 min }`,
      });
      return undefined;
    }
    return step;
  });
}

const step = timed(record('a step', stepFields));

/** A step of a piece that joins two sections. */
export const joinShape = timed(
  record('a joining step', { section: must(id, 'the section that it belongs to'), ...stepFields }),
);

export const recipeShape = record('a recipe', {
  name: must(name, 'name'),
  about: may(sentence, 'what it is for'),
  source: may(sentence, 'where figures come from that name no other source'),
  steps: must(listOf(step, 'steps'), 'what to do, in order'),
});

export function recipeOf(id: string, doc: ValueOf<typeof recipeShape>): Recipe {
  const source = doc.source ?? OWN_FIGURES;
  return { id, name: doc.name, about: doc.about ?? '', steps: doc.steps.map((s) => stepOf(s, source)) };
}
