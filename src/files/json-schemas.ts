import { materialShape } from './formats/material.ts';
import { pieceShape } from './formats/piece.ts';
import { recipeShape } from './formats/recipe.ts';
import { shopShape } from './formats/shop.ts';
import { suppliesShape } from './formats/supplies.ts';
import type { JsonSchema } from './shapes/json-schema.ts';

/**
 * JSON Schemas of the files that a person writes, for an editor to complete and check them by. They come from the very
 * schemas that check the files, and are a little more lenient: of a quantity they know a pattern and examples.
 */
export function jsonSchemas(): Readonly<Record<'shop' | 'piece' | 'recipe' | 'material' | 'supplies', JsonSchema>> {
  const titled = (title: string, schema: JsonSchema): JsonSchema => ({ title, ...schema });
  return {
    shop: titled('shop.yaml', shopShape.jsonSchema()),
    piece: titled('pieces/NAME.yaml', pieceShape.jsonSchema()),
    recipe: titled('recipes/NAME.yaml', recipeShape.jsonSchema()),
    material: titled('materials/NAME.yaml', materialShape.jsonSchema()),
    supplies: titled('supplies.yaml', suppliesShape.jsonSchema()),
  };
}
