import { readSafetyPages } from '../files/safety-pages.ts';
import { shippedDir } from '../files/shipped.ts';
import type { SafetyPage } from '../model/safety.ts';

/** The safety pages that come with Drybench. An installation that has lost them is no installation. */
export function shippedSafety(): readonly SafetyPage[] {
  const { pages, findings } = readSafetyPages(shippedDir());
  const [first] = findings;
  if (first !== undefined) throw new Error(`a safety page cannot be read: ${first.message}`);
  return pages;
}
