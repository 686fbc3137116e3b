import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { jsonSchemas } from '../../src/files/json-schemas.ts';
import type { JsonSchema } from '../../src/files/shapes/json-schema.ts';

/** What of `value` the schema refuses; the few keywords that are used, as JSON Schema 2020-12 defines them. */
function refused(schema: JsonSchema, value: unknown, at = ''): string[] {
  if (schema.anyOf !== undefined) {
    const each = schema.anyOf.map((s) => refused(s, value, at));
    return each.some((r) => r.length === 0) ? [] : (each[0] ?? []);
  }
  if (schema.enum !== undefined) return schema.enum.some((e) => e === value) ? [] : [`${at}: ${String(value)}`];
  const kind = Array.isArray(value) ? 'array' : typeof value;
  const types = schema.type === undefined ? [kind] : [schema.type].flat();
  if (!types.some((type) => type === kind)) return [`${at}: ${kind}`];
  if (typeof value === 'string' && value.length > (schema.maxLength ?? Infinity)) return [`${at}: too long`];
  if (typeof value === 'string') return new RegExp(schema.pattern ?? '', 'u').test(value) ? [] : [`${at}: ${value}`];
  if (Array.isArray(value)) return value.flatMap((v, i) => refused(schema.items ?? {}, v, `${at}/${i}`));
  if (typeof value !== 'object' || value === null) return [];
  const missing = (schema.required ?? []).filter((key) => !(key in value)).map((key) => `${at}: no ${key}`);
  const inner = Object.entries(value).flatMap(([key, v]) => {
    const own = schema.properties?.[key] ?? schema.additionalProperties;
    return own === false ? [`${at}: ${key}`] : refused(own === true || own === undefined ? {} : own, v, `${at}/${key}`);
  });
  return [...missing, ...inner];
}

const files = {
  shop: ['shared/demo/shop.yaml'],
  piece: readdirSync('shared/demo/pieces').map((name) => join('shared/demo/pieces', name)),
  recipe: readdirSync('recipes')
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => join('recipes', name)),
  material: readdirSync('shared/materials').map((name) => join('shared/materials', name)),
  supplies: ['shared/supplies.yaml'],
};

// An editor reads YAML 1.2 with its numbers and booleans; the schemas must not mark what is right.
describe.each(Object.keys(files) as (keyof typeof files)[])('%s', (kind) => {
  test.each(files[kind])('%s', (file) => {
    const value: unknown = parse(readFileSync(file, 'utf8'));
    expect(refused(jsonSchemas()[kind], value)).toEqual([]);
  });
});

test('what is wrong is marked', () => {
  expect(refused(jsonSchemas().piece, { nmae: 'x', sections: { a: { recipe: 'r', area: 3 } } })).toEqual([
    ': no name',
    ': nmae',
    '/sections/a/area: number',
  ]);
});

test('a pattern marks a quantity without its unit, and an id that is none', () => {
  const section = { recipe: 'My Recipe', area: '3' };
  expect(refused(jsonSchemas().piece, { name: 'x', sections: { a: section } })).toEqual([
    '/sections/a/recipe: My Recipe',
    '/sections/a/area: 3',
  ]);
});

test('every key tells what it is for', () => {
  const untold = (schema: JsonSchema): string[] => [
    ...Object.entries(schema.properties ?? {}).flatMap(([key, s]) => [...(s.description ? [] : [key]), ...untold(s)]),
    ...[...(schema.anyOf ?? []), ...(schema.items ? [schema.items] : [])].flatMap(untold),
    ...(typeof schema.additionalProperties === 'object' ? untold(schema.additionalProperties) : []),
  ];
  for (const schema of Object.values(jsonSchemas())) expect(untold(schema)).toEqual([]);
});
