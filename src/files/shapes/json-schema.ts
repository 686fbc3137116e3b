/** The part of JSON Schema (draft 2020-12) that describes a shop's files to an editor. */
export interface JsonSchema {
  readonly $schema?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: 'string' | 'object' | 'array' | readonly ('string' | 'number' | 'boolean')[];
  readonly enum?: readonly (string | boolean)[];
  readonly examples?: readonly string[];
  readonly pattern?: string;
  readonly maxLength?: number;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | JsonSchema;
  readonly propertyNames?: JsonSchema;
  readonly items?: JsonSchema;
  readonly minItems?: number;
  readonly anyOf?: readonly JsonSchema[];
}
