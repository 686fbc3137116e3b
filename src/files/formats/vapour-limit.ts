import type { Material, Provenance } from '../../model/material.ts';
import { readConcentrationMgPerM3 } from '../quantities/measure.ts';
import { may, must, record } from '../shapes/record.ts';
import type { ValueOf } from '../shapes/shape.ts';
import { quantity } from '../shapes/text.ts';
import { name, sentence } from './values.ts';

/** A published limit for the vapour of a solvent in the air that people breathe. */
export const vapourLimit = record('a limit', {
  of: must(name, 'the solvent that it is for'),
  limit: must(
    quantity('a concentration', 'bad-concentration', readConcentrationMgPerM3, '350 mg/m3'),
    'in the air that people breathe',
  ),
  source: may(sentence, 'who published it'),
});

export function vapourLimitOf(
  written: ValueOf<typeof vapourLimit> | undefined,
  source: Provenance,
): Material['solventLimit'] {
  return written && { of: written.of, mgPerM3: written.limit, source: written.source ?? source };
}
