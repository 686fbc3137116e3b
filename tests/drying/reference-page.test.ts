import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { mechanisms, type Mechanism } from '../../src/model/material.ts';

const page = readFileSync(new URL('../../shared/reference/drying.md', import.meta.url), 'utf8');
const rows = page
  .split('\n')
  .filter((line) => line.startsWith('| '))
  .map((line) => line.split('|').map((cell) => cell.trim()));
const files = (folder: string) => readdirSync(new URL(`../../${folder}`, import.meta.url));

/** What the page calls each mechanism. */
const called: Readonly<Record<Exclude<Mechanism, 'none'>, string>> = {
  solvent: 'solvent',
  water: 'water',
  oxidation: 'oxidation',
  'two-part': 'two-part',
  'moisture-cure': 'moisture cure',
  'pva-glue': 'PVA glue',
  'hide-glue': 'hide glue, water on wood',
  'wood-water': 'hide glue, water on wood',
};

it.each(mechanisms.filter((m) => m !== 'none'))('the page has a row with rate and source for %s', (mechanism) => {
  const row = rows.find((cells) => cells[1] === called[mechanism] && cells.length >= 6);
  expect(row?.[2]).toMatch(/\S/);
  expect(row?.[3]).toMatch(/\S/);
});

it('the page has a row for every file of laws, and names no file that is none', () => {
  const named = rows.flatMap((cells) => /^`([a-z-]+\.ts)`$/.exec(cells[1] ?? '')?.[1] ?? []);
  expect([...named].sort()).toEqual([...files('src/drying/laws')].sort());
});

it('every table that the page names exists, and every table of figures is named', () => {
  const named = new Set([...page.matchAll(/shared\/tables\/([a-z-]+\.csv)/g)].map((m) => m[1]));
  const there = files('shared/tables');
  for (const name of named) expect(there).toContain(name);
  for (const name of there) expect([...named]).toContain(name);
});
