import type { Finding, Place } from '../../model/finding.ts';
import type { Path } from '../yaml/tree.ts';

/** Something wrong between files, with the value that it is about: its place is looked up when it is told. */
export interface Complaint {
  readonly code: string;
  readonly severity: Finding['severity'];
  readonly message: string;
  readonly advice?: string;
  readonly file: string;
  readonly path: Path;
}

export function findingOf(complaint: Complaint, placeOf: (file: string, path: Path) => Place | undefined): Finding {
  const { file, path, ...rest } = complaint;
  return { ...rest, place: placeOf(file, path) ?? { file, line: 1, column: 1 } };
}

/** In order of file, line and column; the shop's own file first. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  const rank = (f: Finding) => (f.place?.file === 'shop.yaml' ? '' : (f.place?.file ?? ''));
  return [...findings].sort(
    (a, b) =>
      (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0) ||
      (a.place?.line ?? 0) - (b.place?.line ?? 0) ||
      (a.place?.column ?? 0) - (b.place?.column ?? 0),
  );
}
