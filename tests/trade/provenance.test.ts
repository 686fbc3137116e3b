import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { shippedDir } from '../../src/files/shipped.ts';
import { safetyTriggers } from '../../src/model/safety.ts';
import { documents } from './shipped.ts';

// Either an honest admission, or a publication that can be looked up: a name of letters with a number to it.
const admission = /common practice, no source|from memory|calculated/;
const publication = /[A-Z]{2,}.*\d|[A-Z][a-z]+ .*\d{2,}|Wood Handbook|on OSHA's|guidance/;

function isNamed(source: unknown): boolean {
  return typeof source === 'string' && (admission.test(source) || publication.test(source));
}

function sourcesIn(value: unknown, path: string): [string, unknown][] {
  if (Array.isArray(value)) return value.flatMap((v, i) => sourcesIn(v, `${path}[${i}]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]): [string, unknown][] =>
    key === 'source' ? [[`${path}.${key}`, inner]] : sourcesIn(inner, `${path}.${key}`),
  );
}

describe.each(['recipes', 'recipes/parts', 'shared/materials', 'shared/safety'])('every figure in %s', (folder) => {
  const shipped = [...documents(folder)];

  it('has a source of its own or that of its file', () => {
    expect(shipped.length).toBeGreaterThan(5);
    for (const [id, doc] of shipped) expect([id, isNamed(doc['source'])]).toEqual([id, true]);
  });

  it('names a publication, or says that there is none', () => {
    const sources = shipped.flatMap(([id, doc]) => sourcesIn(doc, id));
    expect(sources.filter(([, source]) => !isNamed(source))).toEqual([]);
  });
});

describe('what is bought', () => {
  it('every shipped material but water says what it is sold in and how far it goes, or how it shrinks', () => {
    const short = [...documents('shared/materials')].filter(([id, doc]) => {
      if (id === 'clean-water-rinse') return false;
      const reckoned = 'coverage' in doc || 'volume-solids' in doc || doc['family'] === 'tape';
      return !('containers' in doc) || !reckoned;
    });
    expect(short.map(([id]) => id)).toEqual([]);
  });

  it('every supply that a recipe uses stands among the shipped ones, with a source', () => {
    const file = parse(readFileSync(join(shippedDir(), 'shared/supplies.yaml'), 'utf8')) as {
      source: string;
      supplies: Record<string, unknown>;
    };
    expect(isNamed(file.source)).toBe(true);
    const used = ['recipes', 'recipes/parts'].flatMap((folder) => [...documents(folder).values()].flatMap(suppliesIn));
    expect(used.length).toBeGreaterThan(20);
    expect(used.filter((id) => !(id in file.supplies))).toEqual([]);
  });
});

function suppliesIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(suppliesIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]): string[] =>
    key === 'supplies' ? [inner].flat().map(String) : suppliesIn(inner),
  );
}

describe('safety pages', () => {
  it('are there for each thing that calls for one, once', () => {
    const whens = [...documents('shared/safety').values()].map((page) => page['when']);
    expect(whens.sort()).toEqual([...safetyTriggers].sort());
  });
});
