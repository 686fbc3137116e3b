/** Hands-on times are planned in steps of five minutes: nobody at a bench works to the minute. */
const GRAIN_MINUTES = 5;

/** To the next five minutes, and no less. */
export function roundUp(minutes: number): number {
  return Math.max(GRAIN_MINUTES, Math.ceil(minutes / GRAIN_MINUTES - 1e-9) * GRAIN_MINUTES);
}
