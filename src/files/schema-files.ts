import { join } from 'node:path';
import { diskCode, type Disk } from './disk.ts';
import { jsonSchemas } from './json-schemas.ts';

export type SchemaKind = 'shop' | 'piece' | 'recipe' | 'material';

/** The folder of a shop in which an editor finds the schemas of its files. */
const SCHEMA_FOLDER = 'schemas';

/** First line of a YAML file: what an editor's YAML language server checks it by. `depth`: folders below the shop's. */
export function schemaLine(kind: SchemaKind, depth: number): string {
  return `# yaml-language-server: $schema=${'../'.repeat(depth)}${SCHEMA_FOLDER}/${kind}.json`;
}

/** The schemas as files of a shop. */
export function schemaFiles(): readonly { readonly file: string; readonly text: string }[] {
  return Object.entries(jsonSchemas()).map(([kind, schema]) => ({
    file: `${SCHEMA_FOLDER}/${kind}.json`,
    text: `${JSON.stringify(schema, undefined, 2)}\n`,
  }));
}

/** Has the shop a schema of that kind? */
export function hasSchema(disk: Disk, shopDir: string, kind: SchemaKind): boolean {
  try {
    return disk.statPath(join(shopDir, SCHEMA_FOLDER, `${kind}.json`)).isFile;
  } catch (error) {
    if (diskCode(error) === '') throw error;
    return false;
  }
}
