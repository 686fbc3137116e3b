// Every YAML file that the program reads names, in its first line, the JSON Schema that an editor checks it by, as a path from
// the file itself: it holds in a copy of this folder without a build. `schemas/` has the forms of what is shipped, and the
// demo's folder those that `setup` gives a shop. DRYBENCH_WRITE_SCHEMAS=1 writes both anew.
import { Ajv2020 } from 'ajv/dist/2020.js';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { safetyShape } from '../../src/files/safety-pages.ts';
import { schemaFiles } from '../../src/files/schema-files.ts';
import { shippedDir } from '../../src/files/shipped.ts';

const home = shippedDir();
const demo = 'shared/demo';

const safety = { title: 'shared/safety/NAME.yaml', ...safetyShape.jsonSchema() };
const made = [
  ...schemaFiles().filter(({ file }) => /recipe|material|supplies/.test(file)),
  { file: 'schemas/safety.json', text: `${JSON.stringify(safety, undefined, 2)}\n` },
  ...schemaFiles().map(({ file, text }) => ({ file: join(demo, file), text })),
];

if (process.env['DRYBENCH_WRITE_SCHEMAS'] === '1')
  for (const { file, text } of made) {
    mkdirSync(join(home, dirname(file)), { recursive: true });
    writeFileSync(join(home, file), text);
  }

test('the schemas that files name are those of the code, and there are no others', () => {
  const folders = ['schemas', join(demo, 'schemas')];
  const there = folders.flatMap((folder) => readdirSync(join(home, folder)).map((name) => join(folder, name)));
  expect(there.sort()).toEqual(made.map(({ file }) => file).sort());
  for (const { file, text } of made)
    expect({ file, text: readFileSync(join(home, file), 'utf8') }).toEqual({ file, text });
});

/** Which schema has to check the files of which place. */
const places: readonly (readonly [place: RegExp, schema: string])[] = [
  [/^shared\/demo\/shop\.yaml$/, 'shared/demo/schemas/shop.json'],
  [/^shared\/demo\/pieces\//, 'shared/demo/schemas/piece.json'],
  [/^recipes\//, 'schemas/recipe.json'],
  [/^shared\/materials\//, 'schemas/material.json'],
  [/^shared\/safety\//, 'schemas/safety.json'],
  [/^shared\/supplies\.yaml$/, 'schemas/supplies.json'],
];

const yaml = ['recipes', 'shared'].flatMap((folder) =>
  readdirSync(join(home, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.ya?ml$/.test(name))
    .map((name) => join(folder, name)),
);

describe('every shipped YAML file', () => {
  test('is looked at', () => {
    expect(yaml.length).toBeGreaterThan(75);
  });

  test.each(yaml)('%s names its schema in its first line, and is right by it', (file) => {
    const text = readFileSync(join(home, file), 'utf8');
    const named = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text)?.[1];
    if (named === undefined) throw new Error(`${file} names no schema in its first line`);
    const schema = resolve(home, dirname(file), named);
    expect(relative(home, schema)).toBe(places.find(([place]) => place.test(file))?.[1]);
    const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(
      JSON.parse(readFileSync(schema, 'utf8')) as object,
    );
    expect([validate(parse(text)), validate.errors]).toEqual([true, null]);
    expect(validate({ ...(parse(text) as object), nmae: 'misspelt' })).toBe(false);
  });
});
