const LONGEST_SHOWN = 60;

/** Offending text as a message quotes it. */
export function quoted(text: string): string {
  const points = Array.from(text.slice(0, 2 * LONGEST_SHOWN));
  return points.length > LONGEST_SHOWN || text.length > 2 * LONGEST_SHOWN
    ? `"${points.slice(0, LONGEST_SHOWN).join('')}…"`
    : `"${text}"`;
}
