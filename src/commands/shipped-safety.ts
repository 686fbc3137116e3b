import { readOnce } from '../files/read-once.ts';
import { shippedDir } from '../files/shipped.ts';
import type { SafetyPage } from '../model/safety.ts';
import type { Call } from './call.ts';
import { memoryOf } from './memory.ts';

/** The safety pages that come with Drybench. An installation that has lost them is no installation. */
export async function shippedSafety(call: Call): Promise<readonly SafetyPage[]> {
  const { value } = await readOnce(memoryOf(call), JSON.stringify(['safety', shippedDir()]), async (disk) => {
    const { readSafetyPages } = await import('../files/safety-pages.ts');
    return readSafetyPages(shippedDir(), disk);
  });
  const { pages, findings } = value;
  const [first] = findings;
  if (first !== undefined) throw new Error(`a safety page cannot be read: ${first.message}`);
  return pages;
}
