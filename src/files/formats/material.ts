import { marks, type Mark, type Spread } from '../../model/mark.ts';
import {
  families,
  mechanisms,
  preparations,
  type Limits,
  type Material,
  type Provenance,
  type SheetHours,
} from '../../model/material.ts';
import { readHours } from '../quantities/duration.ts';
import { readKeepAbove } from '../quantities/keep-above.ts';
import { readCoverageM2PerL, readFilmUm, readPercent } from '../quantities/measure.ts';
import type { Read, Reader } from '../quantities/read.ts';
import { readRange, readSpread, spreadOf } from '../quantities/spread.ts';
import { readTempC } from '../quantities/temperature.ts';
import { present, type Present } from '../present.ts';
import { listOf } from '../shapes/collections.ts';
import { may, must, record, type Field } from '../shapes/record.ts';
import { byKind, refined, type Shape, type ValueOf } from '../shapes/shape.ts';
import { choice, quantity } from '../shapes/text.ts';
import { OWN_FIGURES } from './recipe.ts';
import {
  activation,
  amount,
  differenceK,
  id,
  lengthMm,
  mark,
  name,
  percent,
  sentence,
  solvent,
  tempC,
  yesNo,
} from './values.ts';
import { vapourLimit, vapourLimitOf } from './vapour-limit.ts';
import { translated, worded } from '../../words/worded.ts';

type Sourced = Spread & { readonly source?: Provenance };

/** `12 h [4 h - 24 h]`, or the keys typical, low, high and source. */
function spread(wanted: string, code: string, one: Reader<number>, example: string): Shape<Sourced> {
  const single = quantity(wanted, code, one, example);
  const keys = record(wanted, {
    typical: must(single, 'the usual value'),
    low: may(single, 'the lowest value to be met'),
    high: may(single, 'the highest value to be met'),
    source: may(sentence, 'where the figures come from'),
  });
  return byKind<Sourced, never, Sourced>(
    {
      text: quantity(wanted, code, (text): Read<Spread> => readSpread(text, one), `${example} [low - high]`),
      map: refined(keys, (doc, node, notes) => {
        const values = spreadOf(doc.low ?? doc.typical, doc.typical, doc.high ?? doc.typical);
        if (!values.ok) {
          notes.error(node, {
            code: 'spread-out-of-order',
            message: worded`this ${values.why}`,
            advice: values.write,
          });
          return undefined;
        }
        return present({ ...values.value, source: doc.source });
      }),
    },
    () => worded`${translated(wanted)} like ${example}`,
  );
}

const spreadHours = spread('a length of time', 'bad-duration', readHours, '12 h');

const reference = record('the reference air', {
  temp: must(tempC, 'temperature, like 23 °C'),
  rh: must(percent, 'relative humidity, like 50 %'),
});

const markFields = Object.fromEntries(
  marks.map((m) => [m, may(spreadHours, 'hours at the reference air')]),
) as Readonly<Record<Mark, Field<Sourced, false>>>;

const window = record('a recoat window', {
  opens: must(spreadHours, 'after the coat before'),
  shuts: may(spreadHours, 'never, if left out'),
  prep: may(choice('a preparation', preparations), 'work that must come first'),
  under: may(listOf(choice('a family', families), 'families'), 'only for a next coat of these families'),
  source: may(sentence, 'where the figures come from'),
});

const range = (wanted: string, code: string, one: Reader<number>, example: string) =>
  quantity(wanted, code, (text) => readRange(text, one), example);

const keepAbove = quantity('a temperature and for how long', 'bad-keep-above', readKeepAbove, '10 °C for 24 h');

const limits = record('limits', {
  temp: must(range('a range of temperature', 'bad-temperature', readTempC, '10 °C - 32 °C'), 'while it is laid on'),
  rh: may(range('a range of humidity', 'bad-percent', readPercent, '0 % - 85 %'), 'while it is laid on'),
  'dew-margin': may(differenceK, 'surface above the dew point; 3 K if left out, as in ISO 8502-4'),
  'keep-above': may(keepAbove, 'and for how long after it is laid on'),
  source: may(sentence, 'where the figures come from'),
});

const stackRule = record('a rule of the stack', {
  over: must(choice('a family', families), 'family of the film beneath'),
  verdict: must(choice('a verdict', ['no', 'after']), 'no, or after a mark'),
  mark: may(mark, 'that the film beneath must have reached'),
  barrier: may(id, 'material that may go between'),
  why: must(sentence, 'why'),
});

export const materialShape = record('a material', {
  name: may(name, 'name'),
  like: may(id, 'material that it is like but for what stands here'),
  family: may(choice('a family', families), `one of ${families.join(', ')}`),
  mechanism: may(choice('a mechanism', mechanisms), `how it gets dry: one of ${mechanisms.join(', ')}`),
  source: may(sentence, 'where figures come from that name no other source'),
  reference: may(reference, 'air that the hours hold for; 23 °C and 50 % if left out, as in ISO 3270'),
  marks: may(record('dry marks', markFields), 'hours to each dry mark'),
  windows: may(listOf(window, 'recoat windows'), 'when the next coat may go on'),
  limits: may(limits, 'air that it may be laid on in'),
  'min-film-temp': may(tempC, 'no film forms below'),
  activation: may(activation, 'activation energy of its reaction'),
  'pot-life': may(spreadHours, 'from mixing to unusable'),
  'open-time': may(spreadHours, 'of a glue: from spread to closed'),
  'closed-time': may(spreadHours, 'of a glue: from closed to under pressure'),
  'wipe-off': may(spreadHours, 'wipe or buff the excess off'),
  'remove-within': may(spreadHours, 'of a tape: off again'),
  'sheet-depth': may(lengthMm, 'of a fill, that the hours hold for'),
  'max-lift': may(lengthMm, 'deepest fill in one go'),
  coverage: may(spread('a coverage', 'bad-coverage', readCoverageM2PerL, '10 m2/L'), 'area a litre covers'),
  'volume-solids': may(spread('a share', 'bad-percent', readPercent, '36 %'), 'what is left when dry'),
  'dry-film': may(spread('a film thickness', 'bad-length', readFilmUm, '40 um'), 'of one coat, dry'),
  thinning: may(
    record('thinning', {
      with: must(name, 'the thinner'),
      percent: must(percent, 'share by volume'),
      source: may(sentence, 'where the figures come from'),
    }),
    'how it is thinned',
  ),
  containers: may(listOf(amount, 'sizes'), 'sizes that it is sold in'),
  stack: may(listOf(stackRule, 'rules'), 'how it meets the film beneath'),
  cautions: may(listOf(sentence, 'cautions'), 'shown where the work is'),
  'oily-rags': may(yesNo, 'rags can heat themselves to fire'),
  'flammable-vapour': may(yesNo, 'no flames or sparks near'),
  isocyanate: may(yesNo, 'holds isocyanates'),
  solvent: may(solvent, 'solvent vapour from the wet film'),
  'solvent-limit': may(vapourLimit, 'a published limit for its vapour, for the warning about fresh air'),
});

export type WrittenMaterial = ValueOf<typeof materialShape>;

/** What one file says; what it leaves out comes from the material that it is like. */
export type MaterialPart = Partial<Omit<Material, 'id'>>;

/** ISO 3270: standard atmosphere for paints. */
const STANDARD_AIR = { tempC: 23, rhPercent: 50 };
/** ISO 8502-4. */
const DEW_MARGIN_K = 3;

function limitsOf(doc: ValueOf<typeof limits>, source: Provenance): Limits {
  const kept = doc['keep-above'];
  return {
    minTempC: doc.temp.low,
    maxTempC: doc.temp.high,
    minRhPercent: doc.rh?.low ?? 0,
    maxRhPercent: doc.rh?.high ?? 100,
    dewMarginK: doc['dew-margin'] ?? DEW_MARGIN_K,
    ...(kept && { keepAbove: kept }),
    source: doc.source ?? source,
  };
}

function marksOf(doc: Partial<Record<Mark, Sourced>>, source: Provenance): Partial<Record<Mark, SheetHours>> {
  return Object.fromEntries(Object.entries(doc).map(([key, value]: [string, Sourced]) => [key, { source, ...value }]));
}

function windowOf(doc: ValueOf<typeof window>, source: Provenance) {
  const own = doc.source ?? source;
  return present({
    opens: { source: own, ...doc.opens },
    shuts: doc.shuts && { source: own, ...doc.shuts },
    prep: doc.prep,
    under: doc.under,
  });
}

/** What one file says, each figure with its source. */
export function partOf(doc: WrittenMaterial): Present<MaterialPart> {
  const source = doc.source ?? OWN_FIGURES;
  const sourced = (value: Sourced | undefined) => value && { source, ...value };
  return present({
    name: doc.name,
    family: doc.family,
    mechanism: doc.mechanism,
    reference: doc.reference && { tempC: doc.reference.temp, rhPercent: doc.reference.rh },
    marks: doc.marks && marksOf(doc.marks, source),
    windows: doc.windows?.map((w) => windowOf(w, source)).sort((a, b) => a.opens.typical - b.opens.typical),
    limits: doc.limits && limitsOf(doc.limits, source),
    minFilmTempC: doc['min-film-temp'],
    activationKJPerMol: doc.activation,
    potLife: sourced(doc['pot-life']),
    openTime: sourced(doc['open-time']),
    closedTime: sourced(doc['closed-time']),
    wipeOff: sourced(doc['wipe-off']),
    removeWithin: sourced(doc['remove-within']),
    sheetDepthMm: doc['sheet-depth'],
    maxLiftMm: doc['max-lift'],
    coverageM2PerL: sourced(doc.coverage),
    volumeSolidsPercent: sourced(doc['volume-solids']),
    dryFilmUm: sourced(doc['dry-film']),
    thinning: doc.thinning && { source, ...doc.thinning },
    containers: doc.containers,
    stack: doc.stack,
    cautions: doc.cautions,
    oilyRags: doc['oily-rags'],
    flammableVapour: doc['flammable-vapour'],
    isocyanate: doc.isocyanate,
    solventGPerL: doc.solvent,
    solventLimit: vapourLimitOf(doc['solvent-limit'], source),
    source: doc.source,
  });
}

/** `part` over `base`: marks one by one, everything else as a whole. */
export function overlay(base: MaterialPart, part: MaterialPart): MaterialPart {
  return { ...base, ...part, ...(base.marks && { marks: { ...base.marks, ...part.marks } }) };
}

/** The whole material; or the key that is missing. */
export function completed(id: string, part: MaterialPart): Material | 'name' | 'family' | 'mechanism' {
  const { name, family, mechanism } = part;
  if (name === undefined) return 'name';
  if (family === undefined) return 'family';
  if (mechanism === undefined) return 'mechanism';
  return {
    reference: STANDARD_AIR,
    marks: {},
    windows: [],
    stack: [],
    cautions: [],
    source: OWN_FIGURES,
    ...part,
    id,
    name,
    family,
    mechanism,
  };
}
