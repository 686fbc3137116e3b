import type { Book } from '../../src/model/book.ts';
import type { Material, SheetHours } from '../../src/model/material.ts';
import type { Piece, Section } from '../../src/model/piece.ts';
import type { Recipe, RecipeStep, RecipeWay } from '../../src/model/recipe.ts';
import type { ClockSpan, Hand, Hours, Room, Shop, Station, Tool } from '../../src/model/shop.ts';

// The parts of invented books, each plain until a test says otherwise. Their figures stand for no material.

export const source = 'invented for the test';

export function sheetHours(low: number, typical: number, high: number): SheetHours {
  return { low, typical, high, source };
}

/** `clock([8, 12], [13, 17])`: hours of the wall clock. */
export function clock(...spans: readonly (readonly [number, number])[]): ClockSpan[] {
  return spans.map(([from, to]) => ({ from: from * 60, to: to * 60 }));
}

export function weekOf(workday: readonly ClockSpan[], saturday = workday, sunday = saturday): Hours {
  return {
    week: {
      monday: workday,
      tuesday: workday,
      wednesday: workday,
      thursday: workday,
      friday: workday,
      saturday,
      sunday,
    },
    days: {},
  };
}

/** Dries by its sheet at 23 °C and 50 % humidity, and leaves nothing to dry unless marks are given. */
export function materialOf(id: string, over: Partial<Material> = {}): Material {
  return {
    id,
    name: id,
    family: 'alkyd',
    mechanism: 'oxidation',
    reference: { tempC: 23, rhPercent: 50 },
    marks: {},
    windows: [],
    stack: [],
    cautions: [],
    source,
    ...over,
  };
}

export function wayOf(minutes: number, over: Partial<RecipeWay> = {}): RecipeWay {
  return {
    name: '',
    time: { fixedMinutes: minutes, minutesPerM2: 0, minutesPerItem: 0 },
    stations: ['bench'],
    tools: [],
    thickness: 1,
    transferEfficiency: 1,
    ...over,
  };
}

export function stepOf(
  id: string,
  stage: RecipeStep['stage'],
  ways: readonly RecipeWay[],
  over: Partial<RecipeStep> = {},
): RecipeStep {
  return {
    id,
    title: id,
    stage,
    ways,
    supplies: [],
    people: 1,
    dusty: false,
    mayPause: false,
    coats: 1,
    between: [],
    disturbsOldPaint: false,
    source,
    ...over,
  };
}

export function recipeOf(id: string, steps: readonly RecipeStep[]): Recipe {
  return { id, name: id, about: '', steps };
}

export function sectionOf(id: string, recipe: string, over: Partial<Section> = {}): Section {
  return { id, name: id, recipe, areaM2: 1, items: 1, thicknessMm: 19, materials: {}, without: [], ...over };
}

export function pieceOf(id: string, sections: readonly Section[], over: Partial<Piece> = {}): Piece {
  return { id, name: id, kind: id, priceMinor: 0, costMinor: 0, mayCarryLead: false, sections, joins: [], ...over };
}

/** A room with the reference air of every sheet here. */
export function roomOf(id: string, name: string, air: Room['air'] = referenceAir): Room {
  return { id, name, air };
}

const referenceAir: Room['air'] = { kind: 'constant', tempC: 23, rhPercent: 50 };

export function stationOf(id: string, name: string, room: string, kind: Station['kind'], slots = 1): Station {
  return { id, name, room, kind, slots };
}

export function toolOf(id: string, name: string, setUpMinutes = 0, washUpMinutes = 0): Tool {
  return { id, name, count: 1, setUpMinutes, washUpMinutes };
}

export function handOf(id: string, name: string, skills: readonly string[], hours: Hours): Hand {
  return { id, name, skills, hours };
}

export function shopOf(opening: Hours, over: Partial<Shop> = {}): Shop {
  return {
    name: 'Shop',
    timeZone: 'UTC',
    units: 'metric',
    clock: 24,
    weekStartsOn: 'monday',
    currency: 'EUR',
    opening,
    rooms: [roomOf('room', 'Room')],
    stations: [stationOf('bench', 'Bench', 'room', 'bench')],
    tools: [],
    hands: [handOf('owner', 'Owner', [], opening)],
    safeChance: 0.9,
    ...over,
  };
}

export function bookOf(
  shop: Shop,
  materials: readonly Material[],
  recipes: readonly Recipe[],
  pieces: readonly Piece[],
): Book {
  return {
    shop,
    materials: new Map(materials.map((m) => [m.id, m])),
    recipes: new Map(recipes.map((r) => [r.id, r])),
    pieces,
    journal: [],
  };
}
