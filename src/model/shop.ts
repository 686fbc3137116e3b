import type { Minute, Span, Spans } from '../time/span.ts';
import type { ContainerPrice, Quantity } from './quantity.ts';

export const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
export type Weekday = (typeof weekdays)[number];

/** A stretch of one day on the wall clock, minutes after midnight. */
export interface ClockSpan {
  readonly from: number;
  readonly to: number;
}

/** Regular hours, with single days (`2027-01-16`) that differ; an empty list closes the day. */
export interface Hours {
  readonly week: Readonly<Record<Weekday, readonly ClockSpan[]>>;
  readonly days: Readonly<Record<string, readonly ClockSpan[]>>;
}

/** Air at one instant. */
export interface AirSample {
  readonly minute: Minute;
  readonly tempC: number;
  readonly rhPercent: number;
}

/** Where the air of a room, or outdoors, is known from. */
export type AirSource =
  | { readonly kind: 'constant'; readonly tempC: number; readonly rhPercent: number }
  /** Twelve monthly means, January first; the day's swing is spread over the hours. */
  | {
      readonly kind: 'monthly';
      readonly months: readonly { readonly tempC: number; readonly rhPercent: number; readonly swingK?: number }[];
    }
  /** One day's curve on the wall clock, repeated. */
  | {
      readonly kind: 'daily';
      readonly curve: readonly { readonly clock: number; readonly tempC: number; readonly rhPercent: number }[];
    }
  /** A logger's record or a forecast, already read; `name` for messages. */
  | { readonly kind: 'series'; readonly name: string; readonly samples: readonly AirSample[] }
  /** Outdoor air brought in, heated (and dried) at constant humidity ratio. */
  | {
      readonly kind: 'heated';
      readonly outdoors: AirSource;
      readonly setPoints: readonly { readonly clock: number; readonly tempC: number }[];
      readonly driedToRhPercent?: number;
      /** Hours in which the room closes 63 % of the way to a new set-point. */
      readonly lagHours: number;
    }
  /** Another air, for a while warmer by `byK` with the same water in it, or no damper than `toRhPercent`. No file says so. */
  | {
      readonly kind: 'for-a-while';
      readonly of: AirSource;
      readonly during: Span;
      readonly byK?: number;
      readonly toRhPercent?: number;
    };

export interface Room {
  readonly id: string;
  readonly name: string;
  readonly air: AirSource;
  readonly volumeM3?: number;
  /** Hours in which it can be had, as of a room that is hired; absent: always. Nothing is left in it outside them. */
  readonly open?: Hours;
}

export const stationKinds = ['bench', 'spray', 'rack', 'floor'] as const;
export type StationKind = (typeof stationKinds)[number];

export interface Station {
  readonly id: string;
  readonly name: string;
  readonly room: string;
  readonly kind: StationKind;
  readonly slots: number;
}

export interface Tool {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  /** Hands-on minutes before its first use of a session and after its last. */
  readonly setUpMinutes: number;
  readonly washUpMinutes: number;
}

export interface Hand {
  readonly id: string;
  readonly name: string;
  readonly skills: readonly string[];
  readonly hours: Hours;
  /** Days and hours off, whatever `hours` say. */
  readonly off?: Spans;
  /** What an hour of it costs the shop, in minor units; absent: it is not paid by the hour. */
  readonly payMinorPerHour?: number;
}

/** Something that is fixed with others, such as a delivery: who takes part does nothing else meanwhile. */
export interface Appointment extends Span {
  readonly what: string;
  readonly hands: readonly string[];
  /** Pieces that come to the shop with it. */
  readonly brings: readonly string[];
  /** Pieces that leave the shop with it, to be ready by its start. */
  readonly takes: readonly string[];
}

export type Units = 'metric' | 'us';

export interface Shop {
  readonly name: string;
  /** IANA name. */
  readonly timeZone: string;
  readonly units: Units;
  readonly clock: 12 | 24;
  readonly weekStartsOn: 'monday' | 'sunday';
  /** ISO 4217. */
  readonly currency: string;
  readonly opening: Hours;
  readonly rooms: readonly Room[];
  readonly stations: readonly Station[];
  readonly tools: readonly Tool[];
  readonly hands: readonly Hand[];
  /** Absent: none. */
  readonly appointments?: readonly Appointment[];
  /** What the shop costs a day, in minor units of the currency. */
  readonly overheadMinorPerDay?: number;
  readonly sellingFeePercent?: number;
  /** When `stock` was counted: what is used after it is off the shelf; absent: `stock` is what is there now. */
  readonly stockCounted?: Minute;
  /** On the shelf, by id of the material or supply. */
  readonly stock?: Readonly<Record<string, Quantity>>;
  /** What containers cost, by id; the first is what a piece is reckoned with. */
  readonly prices?: Readonly<Record<string, readonly ContainerPrice[]>>;
  /** Share of a material that stays in cans, cups and brushes; absent: the usual one. */
  readonly wastePercent?: number;
  /** The chance that a "safe" date is to hold with, e.g. 0.9. */
  readonly safeChance: number;
}
