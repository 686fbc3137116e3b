/** Grades of abrasive in the order that a surface is taken through them. Common practice, no source. */
export const gritLadder: readonly number[] = [80, 120, 180, 220, 320, 400, 600];

/** Ratio of neighbouring grades beyond the ends of the ladder. */
const RATIO_BEYOND = 1.5;

/** Where a grit stands on the ladder, counted in grades from its coarsest: 80 is 0, 120 is 1, 150 about one and a half. */
export function gradeOf(grit: number): number {
  const above = gritLadder.findIndex((rung) => rung >= grit);
  const next = above < 0 ? gritLadder.length : above;
  const upper = gritLadder[next] ?? (gritLadder.at(-1) ?? grit) * RATIO_BEYOND;
  const lower = gritLadder[next - 1] ?? upper / RATIO_BEYOND;
  return next - 1 + Math.log(grit / lower) / Math.log(upper / lower);
}

/** One grade may be left out; the next finer paper does not take the scratches of two grades below it out. */
const MOST_GRADES_UP = 2;

/** Is the way from one grit to a finer one too long for it to take the scratches out? */
export function isGritJump(from: number, to: number): boolean {
  return gradeOf(to) - gradeOf(from) > MOST_GRADES_UP + 1e-9;
}

/** The finest grade that may follow `from`, on a way to `to` that is too long. */
export function gritBetween(from: number, to: number): number {
  return gritLadder.findLast((grit) => grit > from && grit < to && !isGritJump(from, grit)) ?? to;
}

/** Paper this coarse is used on bare wood only. Common practice, no source. */
export const coarsestOnFilm = 100;
