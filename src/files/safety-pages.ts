import { join } from 'node:path';
import type { Finding } from '../model/finding.ts';
import { safetyTriggers, type SafetyPage } from '../model/safety.ts';
import { realDisk, type Disk } from './disk.ts';
import { readDocument } from './document.ts';
import { sentence, name } from './formats/values.ts';
import { listIds } from './list-ids.ts';
import { readSource, YAML_CAP, type Folder } from './read-source.ts';
import { listOf } from './shapes/collections.ts';
import { may, must, record } from './shapes/record.ts';
import { choice } from './shapes/text.ts';
import { SHIPPED_LABEL } from './shipped.ts';
import { shippedWords } from './shipped-words.ts';

const figure = record('a figure', {
  say: must(sentence, 'the figure or rule'),
  source: must(sentence, 'where it comes from'),
});

export const safetyShape = record('a safety page', {
  title: must(name, 'title'),
  when: must(choice('a trigger', safetyTriggers), 'what about a step calls for it'),
  short: must(sentence, 'one line for the bench sheet'),
  covers: may(listOf(sentence, 'sentences'), 'sentences of recipes that the short line stands for'),
  text: must(listOf(sentence, 'paragraphs'), 'what to know'),
  figures: must(listOf(figure, 'figures'), 'figures and rules with their sources'),
  source: must(sentence, 'where the text comes from'),
});

export interface SafetyPages {
  readonly pages: readonly SafetyPage[];
  /** Empty unless an installation is damaged. */
  readonly findings: readonly Finding[];
}

/** The safety pages that come with Drybench. */
export function readSafetyPages(shippedDir: string, disk: Disk = realDisk): SafetyPages {
  const folder: Folder = { path: join(shippedDir, 'shared'), label: SHIPPED_LABEL };
  const { ids, findings: listFindings } = listIds(disk, folder, 'safety');
  const findings = [...listFindings];
  const pages = ids.flatMap((id): SafetyPage[] => {
    const read = readSource(disk, folder, `safety/${id}.yaml`, YAML_CAP);
    if (!read.ok) {
      findings.push(read.finding);
      return [];
    }
    const document = readDocument(read.source, safetyShape, () => ({ zone: 'UTC', currency: 'EUR' }));
    findings.push(...document.findings);
    return document.value === undefined ? [] : [{ id, covers: [], ...shippedWords(document.value) }];
  });
  return { pages, findings };
}
