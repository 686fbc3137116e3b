import { air } from './spanish/air.ts';
import { asking } from './spanish/asking.ts';
import { bench } from './spanish/bench.ts';
import { calendar } from './spanish/calendar.ts';
import { checks } from './spanish/checks.ts';
import { commandLine } from './spanish/command-line.ts';
import { commands } from './spanish/commands.ts';
import { fileFaults } from './spanish/file-faults.ts';
import { fileKeys } from './spanish/file-keys.ts';
import { intake } from './spanish/intake.ts';
import { moneyAndPromises } from './spanish/money-and-promises.ts';
import { newFiles } from './spanish/new-files.ts';
import { ownFiles } from './spanish/own-files.ts';
import { pages } from './spanish/pages.ts';
import { quantities } from './spanish/quantities.ts';
import { shippedMaterials } from './spanish/shipped-materials.ts';
import { shippedParts } from './spanish/shipped-parts.ts';
import { shippedRecipes } from './spanish/shipped-recipes.ts';
import { shippedSafety } from './spanish/shipped-safety.ts';
import { shippedSupplies } from './spanish/shipped-supplies.ts';
import { shopKeys } from './spanish/shop-keys.ts';
import { usage } from './spanish/usage.ts';
import { work } from './spanish/work.ts';
import type { Language, Wording } from './worded.ts';

/** All texts in Spanish, by area. Each English text stands in one of them. */
export const spanishByArea: Readonly<Record<string, Readonly<Record<string, Wording>>>> = {
  air,
  asking,
  bench,
  calendar,
  checks,
  commandLine,
  commands,
  fileFaults,
  fileKeys,
  intake,
  moneyAndPromises,
  newFiles,
  ownFiles,
  pages,
  quantities,
  shippedMaterials,
  shippedParts,
  shippedRecipes,
  shippedSafety,
  shippedSupplies,
  shopKeys,
  usage,
  work,
};

const wordings: ReadonlyMap<string, Wording> = new Map(
  Object.values(spanishByArea).flatMap((area) => Object.entries(area)),
);

export const spanish: Language = { code: 'es', wordingOf: (english) => wordings.get(english) };
