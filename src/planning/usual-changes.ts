/** How much warmer a room is tried, the least first. */
export const WARMER_BY_K = [3, 6, 10];
/** How much drier. */
export const DRIER_TO_PERCENT = [60, 50, 40];
