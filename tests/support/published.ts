import { Ajv2020 } from 'ajv/dist/2020.js';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const schemaFolder = 'shared/schemas';
export const schemaNames = readdirSync(schemaFolder).map((file) => file.replace('.json', ''));

/** The same schema, refusing what it does not name: fields may be added, but never without being published. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== 'object' || schema === null) return schema;
  const inner = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  const isRecord = 'properties' in schema && 'type' in schema && schema.type === 'object';
  return isRecord ? { ...inner, additionalProperties: false } : inner;
}

export const schemas = new Ajv2020({ allErrors: true });

for (const name of schemaNames)
  schemas.addSchema(closed(JSON.parse(readFileSync(join(schemaFolder, `${name}.json`), 'utf8'))) as object);

/** What is wrong with a document by the schema that it names, or that of a reading, which names none. */
export function published(document: unknown): { readonly name: string; readonly errors: readonly unknown[] } {
  const { format = 'drybench.reading/1' } = document as { format?: string };
  const name = /^drybench\.([a-z]+)\/1$/.exec(format)?.[1] ?? '';
  const validate = schemas.getSchema(`${name}.json`);
  if (validate === undefined) throw new Error(`no schema is published for ${format}`);
  void validate(document);
  return { name, errors: validate.errors ?? [] };
}
