import type { PlannedPiece, PlannedStep } from '../../../src/model/plan.ts';
import type { WallInput } from '../../../src/reports/wall/wall-input.ts';
import { localDay } from '../../../src/time/zone.ts';
import { bookOf, pieceOf, plan, planOf, stepOf, when, ZONE } from '../calendar/made-shop.ts';

export const week = Array.from({ length: 7 }, (_, plus) => localDay(when('2027-03-12T10:00'), ZONE, plus));

/** The twelve steps of the made-up shop, with hours in which its room is too cold. */
export const twelve: WallInput = {
  plan,
  book: bookOf(),
  unfit: [
    { room: 'workshop', span: { start: when('2027-03-15T08:00'), end: when('2027-03-15T10:00') }, why: 'too cold' },
  ],
  cautions: new Map([['stool/whole-stool/wax', ['Rags can heat themselves to fire: spread them flat outdoors.']]]),
};

export const names = [
  'Pine washstand with turned legs, a marble splashback and two drawers, bought at the autumn sale',
  'שולחן כתיבה מעץ אגוז עם שלוש מגירות וידיות פליז ישנות מאוד',
  'خزانة صيني من خشب البلوط ببابين زجاجيين ورفوف قابلة للإزالة',
  '橡木餐桌配六把椅子以及两块可拆卸的延伸板和黄铜脚轮',
  'Дубовый обеденный стол с раздвижной столешницей и точёными ножками',
  'Τραπέζι από δρυ με σκαλιστά πόδια και συρτάρι',
  'Donaudampfschifffahrtsgesellschaftskapitänskajütenschreibtischschublade',
  '🪑☕👩‍👩‍👧‍👦 chair & <b>"stool"</b>',
  'ओक की मेज और चार कुर्सियाँ',
  'W',
];

/** `count` pieces of three sections each, ten steps a day and more, with names from many scripts. */
export function crowd(count: number): WallInput {
  const pieces = Array.from({ length: count }, (_, i) =>
    pieceOf(`piece-${i + 1}`, `${names[i % names.length]!} ${i + 1}`, ['body', 'drawers', 'legs']),
  );
  const steps: PlannedStep[] = pieces.flatMap((piece, i) =>
    piece.sections.map((section, j) => {
      const start = week[(i + j) % 5]!.start + 8 * 60 + ((i * 37 + j * 11) % 500);
      const end = start + 15 + ((i * 13) % 60);
      const dried = end + 300 + ((i * 71) % 900);
      return stepOf(`${piece.id}/${section.id}/coat-1`, [{ start, end }], {
        title: `Lay an even coat with the grain, tip off, keep a wet edge (${names[(i + j) % names.length]!})`,
        stage: 'coat',
        coat: 1,
        material: 'water-borne-enamel',
        dry: { handle: { early: dried, typical: dried, late: dried } },
        window: { opens: start - 100, shuts: end + 600, of: 'none' },
      });
    }),
  );
  const planned = pieces.map((piece): PlannedPiece => {
    const safe = week[3]!.start + 600;
    return {
      id: piece.id,
      name: piece.name,
      lateHours: 30,
      ready: { handedOver: { typical: safe, safe, chance: 0.9 } },
    };
  });
  const sorted = steps.sort((a, b) => a.spans[0]!.start - b.spans[0]!.start);
  return { plan: planOf(sorted, planned), book: bookOf(pieces), unfit: twelve.unfit, cautions: new Map() };
}
