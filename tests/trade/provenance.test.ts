import { describe, expect, it } from 'vitest';
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

describe('safety pages', () => {
  it('are there for each thing that calls for one, once', () => {
    const whens = [...documents('shared/safety').values()].map((page) => page['when']);
    expect(whens.sort()).toEqual([...safetyTriggers].sort());
  });
});
