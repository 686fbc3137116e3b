import { marks, type Mark } from '../model/mark.ts';
import { preparations } from '../model/material.ts';
import type { Finding } from '../model/finding.ts';
import type { MarkTimes, Plan, PlannedPiece, PlannedStep, ReadyTime } from '../model/plan.ts';
import { PLAN_FORMAT, planDocument } from '../model/plan-document.ts';
import { stages } from '../model/recipe.ts';
import { isZone } from '../time/zone.ts';
import { join } from 'node:path';
import { realDisk, type Disk } from './disk.ts';
import { readBytes, type Folder } from './read-source.ts';
import { ABSENT, replaceFile, seen } from './safe-write.ts';
import { listOf } from './shapes/collections.ts';
import { jsonNumber, jsonText, jsonTime, nodeOfJson } from './shapes/json.ts';
import { may, must, record, type Field, type Fields, type RecordOf } from './shapes/record.ts';
import type { Notes, Shape } from './shapes/shape.ts';
import { choice, quantity, words } from './shapes/text.ts';
import { isTameJson } from './tame-json.ts';
import { yes, yesNo } from './formats/values.ts';
import { phrase, translated, worded } from '../words/worded.ts';

export const PLAN_FILE = 'plan.json';
const PLAN_CAP = 50_000_000;

const text = words(2000);
const texts = listOf(jsonText, 'words');

/** Only Drybench writes these files, and a later one may add to them. */
function open<const F extends Fields>(what: string, fields: F): Shape<RecordOf<F>> {
  return record(what, fields, { open: true });
}

function fieldsFor<K extends string, T>(keys: readonly K[], shape: Shape<T>) {
  return Object.fromEntries(keys.map((key) => [key, may(shape, key)])) as Readonly<Record<K, Field<T, false>>>;
}

const time = must(jsonTime, 'a time');
const number = must(jsonNumber, 'a number');
const span = open('a span', { start: time, end: time });
const markTimes: Shape<MarkTimes> = open('times of a mark', { early: time, typical: time, late: time });
const markShape = choice('a dry mark', marks);

const planWindow = open('a window', {
  opens: time,
  shuts: may(jsonTime, 'a time'),
  prep: may(choice('a preparation', preparations), 'a preparation'),
  of: must(text, 'a step'),
});

const broughtIn = open('work brought in', { from: must(text, 'a room'), at: time, by: time });

const after = open('a wait', { step: must(text, 'a step'), mark: may(markShape, 'a mark'), notBefore: time });

const step: Shape<PlannedStep> = open('a step', {
  id: must(text, 'id'),
  piece: must(text, 'piece'),
  section: must(text, 'section'),
  step: must(text, 'step'),
  title: must(jsonText, 'title'),
  stage: must(choice('a stage', stages), 'stage'),
  coat: may(jsonNumber, 'coat'),
  material: may(text, 'material'),
  way: must(jsonText, 'way'),
  room: must(text, 'room'),
  station: must(text, 'station'),
  hands: must(texts, 'hands'),
  tools: must(texts, 'tools'),
  spans: must(listOf(span, 'spans'), 'spans'),
  holdsStationUntil: time,
  dry: may(open('dry marks', fieldsFor(marks, markTimes)), 'marks'),
  window: may(planWindow, 'window'),
  after: must(listOf(after, 'waits'), 'waits'),
  atOnceAfter: may(text, 'a step'),
  broughtIn: may(broughtIn, 'work brought in'),
  done: may(yes, 'done'),
  atWork: may(yes, 'at work'),
});

const session = open('a session', { steps: must(texts, 'steps'), savedMinutes: number });

const readyTime: Shape<ReadyTime> = open('a time to be ready', { typical: time, safe: time, chance: number });
const readyKeys: readonly (Mark | 'listed' | 'handedOver')[] = [...marks, 'listed', 'handedOver'];

const piece: Shape<PlannedPiece> = open('a piece', {
  id: must(text, 'id'),
  name: must(jsonText, 'name'),
  wantedBy: may(jsonTime, 'a time'),
  lateHours: number,
  ready: must(open('times to be ready', fieldsFor(readyKeys, readyTime)), 'times'),
});

const proof = open('a proof', {
  objective: must(listOf(open('a goal', { name: must(text, 'name'), value: number, bound: number }), 'goals'), 'goals'),
  gapPercent: number,
  proven: must(yesNo, 'yes or no'),
  verified: must(yes, 'true'),
  steps: number,
});

const zone = quantity(
  'a time zone',
  'unknown-time-zone',
  (name) =>
    name.length <= 64 && isZone(name)
      ? { ok: true, value: name }
      : { ok: false, why: worded`is no time zone`, write: worded`keep the plan again` },
  'Europe/Dublin',
);

const warning = open('a warning', { code: must(text, 'code'), text: must(jsonText, 'text'), step: may(text, 'step') });

/** All of a plan but its long lists. */
const head = open('a plan', {
  madeAt: time,
  basis: may(text, 'a fingerprint'),
  timeZone: must(zone, 'time zone'),
  from: time,
  to: time,
  proof: must(proof, 'proof'),
});

const newerAdvice = phrase('use that one, or a newer one still; or move the file away, and a plan is made anew');

function finding(
  code: string,
  message: string,
  advice = worded`drybench check --repair sets it aside; week makes a plan anew`,
): Finding {
  return { code, severity: 'error', message, advice, place: { file: PLAN_FILE, line: 1, column: 1 } };
}

export interface ReadPlan {
  /** Absent where there is none, or none that can be read, as the findings then say. */
  readonly plan?: Plan;
  readonly findings: readonly Finding[];
}

function formatOf(value: unknown): string {
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;
  return typeof format === 'string' ? format : '';
}

/** The plan that a document holds. */
export function planIn(document: string): ReadPlan {
  if (!isTameJson(document)) return { findings: [finding('bad-plan', worded`the file holds more than any plan does`)] };
  let value: unknown;
  try {
    value = JSON.parse(document);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return { findings: [finding('bad-plan', worded`the file is not JSON`)] };
  }
  const format = formatOf(value);
  if (format !== PLAN_FORMAT) {
    const isNewer = /^drybench\.plan\/\d{1,4}$/.test(format);
    return {
      findings: [
        isNewer
          ? finding(
              'newer-plan',
              worded`the plan has the form ${format}: a newer Drybench wrote it`,
              translated(newerAdvice),
            )
          : finding('bad-plan', worded`the file is not a plan of Drybench`),
      ],
    };
  }
  return readParts(value as Readonly<Record<string, unknown>>);
}

class BadPart extends Error {}

/** Item by item, and no further than the first that is wrong: a plan of many pieces is long, and a spoilt one may be. */
function readParts(value: Readonly<Record<string, unknown>>): ReadPlan {
  const notes: Notes = {
    zone: 'UTC',
    currency: 'EUR',
    error: (_, remark) => {
      throw new BadPart(remark.message);
    },
    warn: () => undefined,
  };
  const part = <T>(shape: Shape<T>, data: unknown): T => {
    const read = shape.read(nodeOfJson(data), notes);
    if (read === undefined) throw new BadPart(worded`a part of the plan cannot be read`);
    return read;
  };
  const list = <T>(key: string, shape: Shape<T>): readonly T[] => {
    const items = value[key];
    if (!Array.isArray(items)) throw new BadPart(worded`the plan has no list of ${key}`);
    return items.map((item) => part(shape, item));
  };
  const longLists = new Set(['pieces', 'steps', 'sessions', 'warnings']);
  try {
    const { proof: proven, ...times } = part(
      head,
      Object.fromEntries(Object.entries(value).filter(([key]) => !longLists.has(key))),
    );
    const plan: Plan = {
      ...times,
      pieces: list('pieces', piece),
      steps: list('steps', step),
      ...(value['sessions'] !== undefined && { sessions: list('sessions', session) }),
      proof: proven,
      warnings: list('warnings', warning),
    };
    return { plan, findings: [] };
  } catch (error) {
    if (!(error instanceof BadPart)) throw error;
    return { findings: [finding('bad-plan', error.message)] };
  }
}

const shopFolder = (path: string): Folder => ({ path, label: '' });

/** The plan last kept. */
export function readPlan(shopDir: string, disk: Disk = realDisk): ReadPlan {
  const read = readBytes(disk, shopFolder(shopDir), PLAN_FILE, PLAN_CAP);
  if (read.ok) return planIn(Buffer.from(read.bytes).toString('utf8'));
  return { findings: read.missing ? [] : [read.finding] };
}

/**
 * Keeps a plan in place of the one before. Call it under the shop's lock.
 * @throws FileTrouble
 */
export function writePlan(shopDir: string, plan: Plan, disk: Disk = realDisk): void {
  const before = readBytes(disk, shopFolder(shopDir), PLAN_FILE, PLAN_CAP);
  const text = `${JSON.stringify(planDocument(plan), undefined, 1)}\n`;
  replaceFile(disk, join(shopDir, PLAN_FILE), text, before.ok ? seen(before.bytes) : ABSENT);
}
