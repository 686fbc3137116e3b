import type { Book } from '../../model/book.ts';
import type { Plan, PlannedStep } from '../../model/plan.ts';
import type { EventKind } from './event.ts';
import type { Names } from '../names.ts';
import type { Manner } from '../say-time.ts';
import { derivedUuid } from './uid.ts';
import { worded } from '../../words/worded.ts';

/** What the events are made from. */
export interface CalendarSource {
  readonly plan: Plan;
  readonly book: Book;
  /** Of the shop, for the UIDs; see the ledger. */
  readonly shopId: string;
  /** How long before a window shuts its alarm rings. */
  readonly warnMinutes: number;
}

/** The same, with the words to say it in. */
export interface CalendarDesk extends CalendarSource {
  readonly names: Names;
  readonly manner: Manner;
}

/** Whose step it is, for titles. */
export function ofSection({ names }: CalendarDesk, step: PlannedStep): string {
  const section = names.section(step.piece, step.section);
  return `${names.piece(step.piece)}${section === '' ? '' : `, ${section}`}`;
}

/** UID, kind and owner of an event about `step`. `part` tells apart several events of one kind. */
export function aboutStep(desk: CalendarDesk, step: PlannedStep, kind: EventKind, part = 0) {
  return {
    uid: derivedUuid([desk.shopId, step.id, kind, String(part)]),
    kind,
    piece: step.piece,
    hands: step.hands,
    done: step.done === true,
  };
}

/** What, where, with what; and what the label's class says to mind. */
export function stepLines(desk: CalendarDesk, step: PlannedStep): string[] {
  const { book, names } = desk;
  const cautions = step.material === undefined ? [] : (book.materials.get(step.material)?.cautions ?? []);
  return [
    ofSection(desk, step),
    ...(step.material === undefined ? [] : [worded`Material: ${names.material(step.material)}`]),
    worded`Where: ${names.station(step.station)}, ${names.room(step.room)}`,
    ...(step.hands.length > 0 ? [worded`Who: ${step.hands.map(names.hand).join(', ')}`] : []),
    ...(step.tools.length > 0 ? [worded`Tools: ${step.tools.map(names.tool).join(', ')}`] : []),
    ...cautions.map((caution) => worded`Caution: ${caution}`),
  ];
}
