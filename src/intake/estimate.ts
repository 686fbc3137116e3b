import { areaOfFaces, face, type Face } from './faces.ts';
import type { Counts, Kind, Size } from './kinds.ts';
import { counted, worded } from '../words/worded.ts';

/** What is done with a section: its outside is finished; boxes of drawers and insides are sealed; metal is cleaned. */
export type Role = 'outside' | 'drawers' | 'inside' | 'fittings';

/** A section of a piece with the area that its measures give, and how. */
export interface Estimate {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly items: number;
  readonly thicknessMm: number;
  readonly faces: readonly Face[];
  /** What was taken for granted, in words, lengths as `{60}` in mm: common practice, no source. */
  readonly assumed: readonly string[];
  readonly areaM2: number;
}

// Usual sizes of what is not measured: common practice, no source.
const BOARD_MM = 19;
const TOP_MM = 25;
const LEG_MM = 60;
const APRON_MM = 100;
const CHAIR_LEG_MM = 40;
const SEAT_HEIGHT_MM = 450;
const STRETCHER_MM = 25;
const RAIL_MM = 150;
const FITTING_MM = [80, 50] as const;
const BOX_WALL_MM = 10;
const BEHIND_DRAWER_MM = 50;
const PLINTH_MM = 100;
/** Share of a back of a chair, and of the ends of a bed, that is wood and not air. */
const BACK_SHARE = 0.5;
const END_SHARE = 0.7;
/** Share of the front of a cabinet that its doors take, and of the height of a front that its drawer's box has. */
const DOOR_SHARE = 0.8;
const BOX_SHARE = 0.8;

type Parts = Omit<Estimate, 'areaM2'>;

function outside(id: string, name: string, thicknessMm: number, faces: Face[], assumed: string[], items = 1): Parts {
  return { id, name, role: 'outside', items, thicknessMm, faces, assumed };
}

function drawerBoxes(count: number, widthMm: number, depthMm: number, heightMm: number, say: string): Parts[] {
  if (count === 0) return [];
  const [w, d] = [widthMm - 2 * BOARD_MM, depthMm - BEHIND_DRAWER_MM];
  const faces = [
    face(worded`bottoms inside`, count, w, d),
    face(worded`fronts and backs inside`, 2 * count, w, heightMm),
    face(worded`sides inside`, 2 * count, d, heightMm),
  ];
  const assumed = [worded`boxes {${BEHIND_DRAWER_MM}} shorter than the piece is deep, ${say}`];
  const name = worded`Drawer boxes`;
  return [{ id: 'drawer-boxes', name, role: 'drawers', items: count, thicknessMm: BOX_WALL_MM, faces, assumed }];
}

function fittings(count: number): Parts[] {
  if (count === 0) return [];
  const [a, b] = FITTING_MM;
  const faces = [face(worded`fittings, both sides`, 2 * count, a, b)];
  const assumed = [worded`each as large as a plate of {${a}} by {${b}}`];
  return [{ id: 'hardware', name: worded`Hardware`, role: 'fittings', items: count, thicknessMm: 3, faces, assumed }];
}

function chest([w, d, h]: Size, { drawers, fittings: metal }: Counts): Parts[] {
  const faces = [face(worded`top`, 1, w, d), face(worded`sides`, 2, d, h)];
  const front = drawers > 0 ? face(worded`front, drawer fronts too`, 1, w, h) : face(worded`front and back`, 2, w, h);
  const name = drawers > 0 ? worded`Body and drawer fronts` : worded`Box and lid`;
  const share = worded`${BOX_SHARE * 100} % of the height of their fronts`;
  return [
    outside('body', name, BOARD_MM, [...faces, front], drawers > 0 ? [worded`its back stands to a wall`] : []),
    ...drawerBoxes(drawers, w, d, (BOX_SHARE * Math.max(0, h - PLINTH_MM)) / Math.max(1, drawers), share),
    ...fittings(metal),
  ];
}

function table([l, w, h]: Size, { drawers, fittings: metal }: Counts): Parts[] {
  const top = [
    face(worded`top`, 1, l, w),
    face(worded`long edges`, 2, l, TOP_MM),
    face(worded`short edges`, 2, w, TOP_MM),
  ];
  const base = [
    face(worded`legs, four sides each`, 16, LEG_MM, h - TOP_MM),
    face(worded`long aprons`, 2, l - 2 * LEG_MM, APRON_MM),
    face(worded`short aprons`, 2, w - 2 * LEG_MM, APRON_MM),
  ];
  const legs = [worded`four legs {${LEG_MM}} square, aprons {${APRON_MM}} high`];
  const box = BOX_SHARE * APRON_MM;
  return [
    outside('top', worded`Top`, TOP_MM, top, [worded`{${TOP_MM}} thick, its underside left as it is`]),
    outside('base', worded`Base`, LEG_MM, base, legs, 4),
    ...drawerBoxes(drawers, (l - 2 * LEG_MM) / Math.max(1, drawers), w, box, worded`side by side, {${box}} high`),
    ...fittings(metal),
  ];
}

function chair([w, d, h]: Size, { alike }: Counts): Parts[] {
  const seatHeight = Math.min(SEAT_HEIGHT_MM, h / 2);
  const faces = [
    face(worded`seats`, alike, w, d),
    face(worded`legs, four sides each`, 16 * alike, CHAIR_LEG_MM, seatHeight),
    face(worded`stretchers across, all round`, 8 * alike, w, STRETCHER_MM),
    face(worded`stretchers along, all round`, 8 * alike, d, STRETCHER_MM),
    face(worded`backs, both sides`, 2 * alike, w, h - seatHeight, BACK_SHARE),
  ];
  const assumed = [
    worded`legs {${CHAIR_LEG_MM}} square, two stretchers {${STRETCHER_MM}} square each way`,
    worded`half of the back is wood, half is air; the seat is {${SEAT_HEIGHT_MM}} high, or half the height`,
  ];
  const name = counted(alike, 'Chair', '{0} chairs');
  return [outside('chairs', name, 22, faces, assumed, alike)];
}

function cabinet([w, d, h]: Size, { doors, drawers, fittings: metal }: Counts): Parts[] {
  const shell = [face(worded`top`, 1, w, d), face(worded`sides`, 2, d, h)];
  const open = [
    face(worded`back, seen inside`, 1, w, h),
    face(worded`sides inside`, 2, d, h),
    face(worded`bottom and top inside`, 2, w, d),
  ];
  const frame = [face(worded`frame round the doors`, 1, w, h, 1 - DOOR_SHARE)];
  const leaves = [face(worded`doors, both sides`, 2, w, h, DOOR_SHARE)];
  const assumed =
    doors > 0 ? [worded`doors take ${DOOR_SHARE * 100} % of the front`] : [worded`open in front, shelves not counted`];
  const box = BOX_SHARE * 2 * APRON_MM;
  return [
    outside('carcass', worded`Carcass`, BOARD_MM, [...shell, ...(doors > 0 ? frame : open)], assumed),
    ...(doors > 0 ? [outside('doors', worded`Doors`, 22, leaves, assumed, doors)] : []),
    ...drawerBoxes(drawers, w / Math.max(1, drawers), d, box, worded`side by side, {${box}} high`),
    ...fittings(metal),
  ];
}

function bed([w, l, h]: Size): Parts[] {
  const ends = [
    face(worded`head, both sides`, 2, w, h, END_SHARE),
    face(worded`foot, both sides`, 2, w, h / 2, END_SHARE),
  ];
  const rails = [face(worded`rails, both sides`, 4, l, RAIL_MM)];
  return [
    outside(
      'ends',
      worded`Head and foot`,
      30,
      ends,
      [worded`the foot is half as high; ${END_SHARE * 100} % is wood, the rest air`],
      2,
    ),
    outside('rails', worded`Rails`, TOP_MM, rails, [worded`two rails {${RAIL_MM}} high`], 2),
  ];
}

function partsOf(kind: Kind, size: Size, counts: Counts): Parts[] {
  switch (kind) {
    case 'chest':
      return chest(size, counts);
    case 'table':
      return table(size, counts);
    case 'chair':
      return chair(size, counts);
    case 'cabinet':
      return cabinet(size, counts);
    case 'bed':
      return bed(size);
    case 'other':
      return [outside('piece', worded`Whole piece`, BOARD_MM, [], [], counts.alike)];
  }
}

/**
 * The sections of a piece with their areas, from its overall measures. The rectangles are geometry; what is not measured
 * is taken as usual and said in `assumed`. The area of `other` is 0: it has to be asked for.
 */
export function estimateSections(kind: Kind, size: Size, counts: Counts): Estimate[] {
  return partsOf(kind, size, counts).map((part) => ({ ...part, areaM2: areaOfFaces(part.faces) }));
}

/** The inside of a case, to be sealed where it smells: as large as its outside without the front. */
export function insideOf([w, d, h]: Size, attachedTo: string): Estimate & { readonly attachedTo: string } {
  const faces = [
    face(worded`bottom and top inside`, 2, w, d),
    face(worded`sides inside`, 2, d, h),
    face(worded`back inside`, 1, w, h),
  ];
  const assumed = [worded`shelves not counted`];
  const parts: Parts = {
    id: 'inside',
    name: worded`Inside`,
    role: 'inside',
    items: 1,
    thicknessMm: BOARD_MM,
    faces,
    assumed,
  };
  return { ...parts, areaM2: areaOfFaces(faces), attachedTo };
}
