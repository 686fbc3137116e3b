import { readAreaM2 } from '../files/quantities/measure.ts';
import { wholeReader } from '../files/quantities/plain.ts';
import { read, refuse, type Reader } from '../files/quantities/read.ts';
import { exampleSize, sizeReader } from '../files/quantities/size.ts';
import { writeArea } from '../files/say-written.ts';
import { sayEstimate, type MeasureWords } from '../files/new-piece.ts';
import { adviseWord } from '../files/suggest.ts';
import { estimateSections, type Estimate } from '../intake/estimate.ts';
import { kindFaces, type Countable, type Counts, type Kind, type Size } from '../intake/kinds.ts';
import type { Units } from '../model/shop.ts';
import { sayArea, sayMeasure } from '../reports/say-quantity.ts';
import { CannotGoOn, type Call } from './call.ts';
import { valueOf } from './flag-values.ts';
import { optionText, type Asker } from './questions.ts';
import { phrase, translated, worded } from '../words/worded.ts';

const mostCounted = 99;

const countAsks: Readonly<Record<Countable, string>> = {
  alike: phrase('How many alike'),
  drawers: phrase('How many drawers'),
  doors: phrase('How many doors'),
  fittings: phrase('How many pulls, hinges and other metal parts'),
};

/** What Enter means: two pulls a drawer, three parts a door. Common practice, no source. */
function usualCount(what: Countable, sofar: Partial<Record<Countable, number>>): number {
  if (what === 'alike') return 1;
  return what === 'fittings' ? 2 * (sofar.drawers ?? 0) + 3 * (sofar.doors ?? 0) : 0;
}

export async function knowCounts(asker: Asker, kind: Kind): Promise<Counts> {
  const counts: Partial<Record<Countable, number>> = {};
  for (const what of kindFaces[kind].counts)
    counts[what] = await asker.know({
      flag: what,
      ask: translated(countAsks[what]),
      usual: String(usualCount(what, counts)),
      read: wholeReader(what === 'alike' ? 1 : 0, mostCounted),
    });
  return { alike: 1, drawers: 0, doors: 0, fittings: 0, ...counts };
}

export async function knowSize(asker: Asker, kind: Kind, units: Units): Promise<Size | undefined> {
  const { measures, usual } = kindFaces[kind];
  if (measures === undefined) return undefined;
  return asker.know({
    flag: 'size',
    ask: worded`How large: ${measures.map(translated).join(' x ')}`,
    example: exampleSize(usual, units),
    read: sizeReader(units),
  });
}

/** `top=1.2 m2, base=0.9 m2`, or one value alone for the only section. */
export function namedValues(
  option: string,
  written: string,
  sections: readonly { readonly id: string }[],
): ReadonlyMap<string, string> {
  const ids = sections.map((s) => s.id);
  return new Map(
    written.split(',').map((part): [string, string] => {
      const [name = '', ...rest] = part.split('=').map((word) => word.trim());
      if (rest.length === 0) return [ids.length === 1 ? (ids[0] ?? '') : '', name];
      if (ids.includes(name)) return [name, rest.join('=')];
      throw new CannotGoOn(worded`${option}: there is no section "${name}"`, adviseWord(name, ids));
    }),
  );
}

const positiveArea: Reader<number> = (text) => {
  const area = readAreaM2(text);
  if (!area.ok) return area;
  return area.value > 0 ? read(area.value) : refuse(worded`is nothing`, worded`write an area like 0.9 m2 or 12 sq ft`);
};

/** The sections with the areas that were agreed to: said by an option, asked for, or as estimated. */
export async function knowAreas(
  call: Call,
  asker: Asker,
  estimates: readonly Estimate[],
  units: Units,
): Promise<Estimate[]> {
  const option = optionText(call, 'area');
  const said = option === undefined ? undefined : namedValues('--area', option, estimates);
  if (said?.has('') === true)
    throw new CannotGoOn(
      worded`--area: which section is meant?`,
      worded`write --area "${estimates[0]?.id ?? 'body'}=1.2 m2"`,
    );
  const sections: Estimate[] = [];
  for (const estimate of estimates) {
    const usual = writeArea(estimate.areaM2, units);
    const written = said?.get(estimate.id);
    const areaM2 =
      written !== undefined
        ? valueOf('--area', written, positiveArea(written))
        : said !== undefined && estimate.faces.length > 0
          ? valueOf('--area', usual, positiveArea(usual))
          : await askArea(asker, estimate, usual, units);
    sections.push({ ...estimate, areaM2 });
  }
  return sections;
}

/** As all areas and lengths are said on a screen. */
export function measureWords(units: Units): MeasureWords {
  return {
    // Never nothing, as in the file.
    area: (m2) => sayArea(Math.max(units === 'us' ? 0.01 : 0.005, m2), { units }),
    length: (mm) => sayMeasure(mm, { units }),
  };
}

async function askArea(asker: Asker, estimate: Estimate, usual: string, units: Units): Promise<number> {
  const estimated = estimate.faces.length > 0;
  if (estimated) for (const line of sayEstimate(estimate, measureWords(units))) asker.say(`    ${line}`);
  const ask = estimated ? worded`${estimate.name}: area` : worded`What area is to be coated`;
  const example = writeArea(1.2, units);
  return asker.know({ ask: ask, ...(estimated ? { usual } : { flag: 'area', example }), read: positiveArea });
}

export function estimated(kind: Kind, size: Size | undefined, counts: Counts): Estimate[] {
  return estimateSections(kind, size ?? kindFaces[kind].usual, counts);
}
