import type { Purchase } from '../bookkeeping/shopping.ts';
import type { EarlyWindow } from '../planning/closing-windows.ts';
import type { Evening } from '../planning/evening.ts';
import type { LateCoat } from '../planning/remedies.ts';

/** What has to be seen to today so that today's work and that of the next day can be done. */
export interface Ahead extends Evening {
  /** What the shelf fails: materials, then supplies, in order of the hour when they run out. */
  readonly short: readonly Purchase[];
  readonly late: readonly LateCoat[];
  readonly early: readonly EarlyWindow[];
}
