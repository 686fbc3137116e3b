import type { Mark } from '../../model/mark.ts';
import type { Material, RecoatWindow } from '../../model/material.ts';
import { unitOfMaterial } from '../../model/supply.ts';
import { adviseWord } from '../suggest.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';
import { worded } from '../../words/worded.ts';

// Drying goes through these in this order (ASTM D1640 orders them so for most coatings, and warns that some differ):
// a sheet that says otherwise is more often a slip than a fact.
const ladder: readonly Mark[] = ['dust-free', 'touch', 'handle', 'stack', 'cure'];

function marksOutOfOrder(material: Material, complain: Complain): Complaint[] {
  const present = ladder.filter((mark) => material.marks[mark] !== undefined);
  return present.flatMap((mark, index) => {
    const next = present[index + 1];
    const hours = material.marks[mark]?.typical ?? 0;
    if (next === undefined || hours <= (material.marks[next]?.typical ?? Infinity)) return [];
    return [
      complain(
        'warning',
        'marks-out-of-order',
        ['marks', mark],
        worded`${mark} comes later than ${next}`,
        worded`look at the sheet again`,
      ),
    ];
  });
}

function sameNextCoats(a: RecoatWindow, b: RecoatWindow): boolean {
  return (a.under ?? []).join() === (b.under ?? []).join() && a.prep === b.prep;
}

function windowProblems(material: Material, complain: Complain): Complaint[] {
  return material.windows.flatMap((window, index) => {
    const shuts = window.shuts;
    const path = ['windows', index];
    if (shuts !== undefined && shuts.typical <= window.opens.typical)
      return [
        complain(
          'error',
          'window-never-open',
          path,
          worded`this window shuts before it opens`,
          worded`write the later time as shuts`,
        ),
      ];
    const overlaps = material.windows
      .slice(index + 1)
      .some((later) => sameNextCoats(window, later) && later.opens.typical < (shuts?.typical ?? Infinity));
    return [
      ...(shuts !== undefined && shuts.low <= window.opens.high
        ? [
            complain(
              'warning',
              'window-may-never-open',
              path,
              worded`this window may shut before it opens: its slow opening is not before its fast shutting`,
              worded`narrow the spreads if the sheet allows`,
            ),
          ]
        : []),
      ...(overlaps
        ? [
            complain(
              'warning',
              'windows-overlap',
              path,
              worded`a later window for the same coats opens before this one shuts`,
              worded`join the two, or let one shut before the other opens`,
            ),
          ]
        : []),
    ];
  });
}

type Complain = (
  severity: Complaint['severity'],
  code: string,
  path: Path,
  message: string,
  advice: string,
) => Complaint;

/** What does not fit together within a material, and between it and others. */
export function checkMaterial(material: Material, file: string, materialIds: readonly string[]): Complaint[] {
  const complain: Complain = (severity, code, path, message, advice) => ({
    severity,
    code,
    path,
    message: `${material.id}: ${message}`,
    advice,
    file,
  });
  const barriers = material.stack.flatMap((rule, index) => {
    const { barrier } = rule;
    if (barrier === undefined || materialIds.includes(barrier)) return [];
    const advice = adviseWord(barrier, materialIds);
    return [
      complain(
        'error',
        'unknown-material',
        ['stack', index, 'barrier'],
        worded`there is no material ${barrier}`,
        advice,
      ),
    ];
  });
  const unit = unitOfMaterial(material);
  const containers = (material.containers ?? []).flatMap((size, index) =>
    size.unit === unit && size.value > 0
      ? []
      : [
          complain(
            'error',
            'wrong-unit',
            ['containers', index],
            worded`it is sold in ${unit === 'm' ? worded`metres` : worded`litres`}`,
            unit === 'm' ? worded`write a length like 50 m` : worded`write a volume like 2.5 L`,
          ),
        ],
  );
  return [...containers, ...marksOutOfOrder(material, complain), ...windowProblems(material, complain), ...barriers];
}
