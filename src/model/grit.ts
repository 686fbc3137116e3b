/** Grades of abrasive in the order that a surface is taken through them. Common practice, no source. */
export const gritLadder: readonly number[] = [80, 120, 180, 220, 320, 400, 600];

/** Grades of the ladder that lie strictly between two grits: how many were passed over on the way from one to the other. */
export function gradesPassedOver(from: number, to: number): number {
  return gritLadder.filter((grade) => grade > Math.min(from, to) && grade < Math.max(from, to)).length;
}

/** One grade may be left out; the next finer paper does not take the scratches of two grades below it out. */
export const mostGradesPassedOver = 1;

/** Paper this coarse is used on bare wood only. Common practice, no source. */
export const coarsestOnFilm = 100;
