import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import { readBook, type ReadBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';

export type Files = Readonly<Record<string, string | Uint8Array>>;

export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drybench-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export function fill(folder: string, files: Files): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}

export const shopYaml = `name: Test shop
time-zone: Europe/Dublin
currency: EUR
opening:
  monday: 08:00-12:30, 13:15-17:30
  saturday: 09:00-13:00
rooms:
  workshop: { air: { constant: { temp: 20 °C, rh: 50 % } } }
stations:
  bench: { room: workshop, kind: bench }
hands:
  owner: { skills: spray }
`;

export const recipeYaml = `name: One coat
steps:
  - step: sand
    do: Sand
    stage: sand
    time: 20 min
    may-pause: yes
    supplies: tack-cloth
  - step: coat
    do: Coat
    stage: coat
    time: { fixed: 5 min, per-m2: 10 min }
    material: test-paint
`;

export const paintYaml = `name: Test paint
family: water-borne
mechanism: water
marks:
  touch: 1 h [30 min - 2 h]
  handle: 4 h
  cure: 14 d
windows:
  - opens: 2 h [1 h - 3 h]
`;

export const pieceYaml = `name: Chair
sections:
  frame: { recipe: one-coat, area: 1 m2 }
`;

export const soundShop: Files = {
  'shop.yaml': shopYaml,
  'recipes/one-coat.yaml': recipeYaml,
  'materials/test-paint.yaml': paintYaml,
  'pieces/chair.yaml': pieceYaml,
};

/** Reads a sound shop with some files put in its place. */
export function readWith(files: Files, everything = false): ReadBook {
  const folder = emptyFolder();
  fill(folder, { ...soundShop, ...files });
  return readBook(folder, { shippedDir: shippedDir(), everything });
}

/** `file:line:column code`, one a finding. */
export function told({ findings }: Pick<ReadBook, 'findings'>): string[] {
  return findings.map(
    (f) => `${f.place?.file ?? ''}:${f.place?.line ?? 0}:${f.place?.column ?? 0} ${f.severity} ${f.code}`,
  );
}
