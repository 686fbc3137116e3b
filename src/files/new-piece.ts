import type { Answers } from '../intake/answers.ts';
import type { Estimate } from '../intake/estimate.ts';
import { areaOfFaces, type Face } from '../intake/faces.ts';
import { kindFaces } from '../intake/kinds.ts';
import type { Proposal, ProposedSection } from '../intake/propose.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Shop, Units } from '../model/shop.ts';
import { localTime } from '../time/zone.ts';
import { writeArea, writeLength, writeMoney, writeThickness } from './say-written.ts';
import { exampleSize } from './quantities/size.ts';
import { schemaLine } from './schema-files.ts';
import { commentedYaml, type CommentedLine } from './yaml/commented.ts';
import { translated, worded } from '../words/worded.ts';

/** How areas and lengths are put: into a file as the files take them, to a person in the person's language. */
export interface MeasureWords {
  readonly area: (areaM2: number) => string;
  readonly length: (lengthMm: number) => string;
}

function sayFace(face: Face, say: MeasureWords): string {
  const { what, count, lengthMm, heightMm, share } = face;
  const times = count === 1 ? '' : `${count} x `;
  const part = share === undefined ? '' : ` x ${Math.round(share * 100)} %`;
  return `${what}: ${times}${say.length(lengthMm)} x ${say.length(heightMm)}${part} = ${say.area(areaOfFaces([face]))}`;
}

function sayAssumed(assumed: string, say: MeasureWords): string {
  return assumed.replaceAll(/\{([\d.]+)\}/g, (_, mm: string) => say.length(Number(mm)));
}

/** How the area of a section was reckoned, a line each; none where it was said. */
export function sayEstimate(estimate: Pick<Estimate, 'faces' | 'assumed'>, say: MeasureWords): string[] {
  return [
    ...estimate.faces.map((f) => sayFace(f, say)),
    ...estimate.assumed.map((text) => worded`taken as usual: ${sayAssumed(text, say)}`),
  ];
}

function areaWhy({ agreed }: ProposedSection, units: Units): string {
  return writeArea(areaOfFaces(agreed.faces), units) === writeArea(agreed.areaM2, units)
    ? worded`to be coated: the sum of the above`
    : worded`to be coated, as you measured it`;
}

function sectionLines(proposed: ProposedSection, recipe: Recipe | undefined, units: Units): CommentedLine[] {
  const { section, agreed, reasons } = proposed;
  const indent = 4;
  const why = (id: string) => ({ why: reasons.get(id) ?? '' });
  const slots = section.with ?? [];
  const estimate = sayEstimate(agreed, {
    area: (m2) => writeArea(m2, units),
    length: (mm) => writeLength(mm, units),
  });
  return [
    '',
    ...estimate.map((line) => `  ${line}`),
    { indent: 2, key: section.id },
    { indent, key: 'name', value: section.name },
    { indent, key: 'recipe', value: section.recipe, ...(recipe && { why: recipe.name }) },
    { indent, key: 'area', value: writeArea(section.areaM2, units), why: areaWhy(proposed, units) },
    ...(section.items === 1
      ? []
      : [
          {
            indent,
            key: 'items',
            value: String(section.items),
            why: worded`how many, for the minutes that each takes`,
          },
        ]),
    {
      indent,
      key: 'thickness',
      value: writeThickness(section.thicknessMm, units),
      why: worded`of the wood: how fast it gets as warm as the room`,
    },
    ...(section.attachedTo === undefined
      ? []
      : [{ indent, key: 'attached-to', value: section.attachedTo, why: worded`cannot be taken off it` }]),
    ...(section.without.length === 0 ? [] : [{ indent, key: 'without', why: worded`steps of the recipe left out` }]),
    ...section.without.map((id) => ({ indent: indent + 2, item: id, ...why(id) })),
    ...(slots.length === 0 ? [] : [{ indent, key: 'with', why: worded`parts slotted into the recipe` }]),
    ...slots.map((slot) => ({
      indent: indent + 2,
      item: { part: slot.part, ...(slot.before !== undefined && { before: slot.before }) },
      ...why(slot.part),
    })),
  ];
}

function leadLines({ lead, id }: Answers): CommentedLine[] {
  if (lead === 'no')
    return [{ indent: 0, key: 'may-carry-lead', value: 'no', why: worded`the old finish holds no lead` }];
  const may = { indent: 0, key: 'may-carry-lead', value: 'yes' };
  if (lead !== 'may')
    return [
      { ...may, why: lead.found ? worded`follow local rules and licensed practice` : worded`tested, see below` },
      {
        indent: 0,
        key: 'lead-test',
        value: { on: lead.on, found: lead.found ? 'yes' : 'no' },
        why: lead.found
          ? worded`lead: what disturbs the old finish stays out of the plan`
          : worded`no lead: sanding may go on`,
      },
    ];
  return [
    { ...may, why: worded`nothing that disturbs the old finish is planned before its test:` },
    worded`drybench lead-test ${id} none    (or: found)`,
  ];
}

function money(key: string, minor: number | undefined, shop: Shop, why: string): CommentedLine[] {
  return minor === undefined ? [] : [{ indent: 0, key, value: writeMoney(minor, shop.currency), why }];
}

function headLines(answers: Answers, shop: Shop): CommentedLine[] {
  const { size, kind, takenInAt } = answers;
  const measured = size && exampleSize(size, shop.units);
  return [
    worded`Taken in on ${localTime(takenInAt, shop.timeZone).date}${measured === undefined ? '' : `, ${measured}`}.`,
    worded`Change what you like; \`drybench check\` says whether it is still right.`,
    '',
    { indent: 0, key: 'name', value: answers.name, why: worded`as the bench sheet calls it` },
    { indent: 0, key: 'kind', value: kind, why: translated(kindFaces[kind].say) },
    { indent: 0, key: 'arrives', value: answers.arrives, why: worded`in the shop from then on` },
    ...(answers.wantedBy === undefined
      ? []
      : [{ indent: 0, key: 'wanted-by', value: answers.wantedBy, why: worded`to be handed over by then` }]),
    ...money('price', answers.priceMinor, shop, worded`what you hope to get`),
    ...money('cost', answers.costMinor, shop, worded`what you paid for it`),
    ...leadLines(answers),
  ];
}

/**
 * The text of `pieces/NAME.yaml` for a piece that was taken in; each line says what it is for. `namesSchema`: the shop has
 * a schema for an editor to check it by.
 */
export function pieceFileText(
  answers: Answers,
  proposal: Proposal,
  recipes: ReadonlyMap<string, Recipe>,
  shop: Shop,
  namesSchema: boolean,
): string {
  const { whole } = proposal.piece;
  return (
    (namesSchema ? `${schemaLine('piece', 1)}\n` : '') +
    commentedYaml([
      ...headLines(answers, shop),
      ...(whole === undefined
        ? []
        : [{ indent: 0, key: 'whole', value: whole, why: worded`steps before and after the work on all sections` }]),
      ...proposal.left.map((text) => worded`Not planned: ${text}.`),
      { indent: 0, key: 'sections' },
      ...proposal.sections.flatMap((p) => sectionLines(p, recipes.get(p.section.recipe), shop.units)),
    ])
  );
}
