import { readMoneyMinor } from '../files/quantities/money.ts';
import { readId } from '../files/quantities/plain.ts';
import { read, refuse, type Reader } from '../files/quantities/read.ts';
import type { Answers, Lead } from '../intake/answers.ts';
import { insideOf, type Estimate } from '../intake/estimate.ts';
import { oldFinishes, oldFinishSay, type OldFinish } from '../intake/found.ts';
import { kindFaces, kinds, type Size } from '../intake/kinds.ts';
import type { Means } from '../intake/propose.ts';
import { isPainted } from '../intake/recipe-traits.ts';
import { unknownWood, woods, type Wood } from '../intake/woods.ts';
import { localDay, localTime, readTime } from '../time/zone.ts';
import type { Call } from './call.ts';
import { freeId, idFromName, isNoFileName } from './id-from-name.ts';
import { estimated, knowAreas, knowCounts, knowSize } from './intake-sections.ts';
import { knowFinishes, knowFound, roleRecipes } from './intake-wishes.ts';
import type { OpenShop } from './open-shop.ts';
import { ifAny, numbered, oneOf, oneWordOf, someWords, yesOrNo, type Asker } from './questions.ts';
import { translated, worded } from '../words/worded.ts';

async function knowId(asker: Asker, name: string, taken: readonly string[]): Promise<string> {
  const wanted = idFromName(name, 'piece');
  if (taken.includes(wanted)) asker.say(worded`    pieces/${wanted}.yaml is there already, and stays as it is`);
  const free: Reader<string> = (text) => {
    if (isNoFileName(text)) return refuse(worded`cannot be an id`, worded`choose another word`);
    const id = readId(text);
    return id.ok && taken.includes(id.value)
      ? refuse(
          worded`is there already, and is not written over`,
          worded`choose another word, like ${freeId(wanted, taken)}`,
        )
      : id;
  };
  // Without a person to see it, no other name is taken than the one that is meant.
  const usual = asker.asks ? freeId(wanted, taken) : wanted;
  return asker.know({ flag: 'id', ask: worded`Short name, for its file and for commands`, usual, read: free });
}

function dayReader(zone: string, after?: string): Reader<string> {
  const last = (text: string) => {
    const time = readTime(text, zone);
    return time.ok && time.dateOnly ? localDay(time.minute, zone).end - 1 : time.ok ? time.minute : 0;
  };
  return (text) => {
    const time = readTime(text, zone);
    if (!time.ok) return refuse(worded`is no date`, time.why);
    const first = after === undefined ? undefined : readTime(after, zone);
    if (first?.ok === true && last(text) <= first.minute)
      return refuse(worded`is before it arrives`, worded`write a later date`);
    return read(text.trim().replace(' ', 'T'));
  };
}

function moneyReader(currency: string): Reader<number> {
  return (text) => readMoneyMinor(/^\d+(?:\.\d+)?$/.test(text) ? `${text} ${currency}` : text, currency);
}

async function knowWood(asker: Asker): Promise<Wood> {
  const names = [...woods.map((w) => w.name), unknownWood.name];
  const name = await asker.know({
    flag: 'wood',
    ask: worded`Which wood: ${woods.map((w) => translated(w.name)).join(', ')}`,
    usual: translated(unknownWood.name),
    read: oneWordOf(names),
  });
  return woods.find((w) => w.name === name) ?? unknownWood;
}

const leadWords = ['no', 'yes', 'tested-none', 'tested-found'] as const;

/** 16 CFR 1303 banned lead in paint for homes in the US from 1978 on. */
async function knowLead(asker: Asker, oldFinish: OldFinish, today: string, zone: string): Promise<Lead> {
  if (oldFinish === 'bare') return 'no';
  const word = await asker.know({
    flag: 'lead',
    ask: worded`May the old finish hold lead? Old paint often does: say yes where you do not know`,
    more: numbered([worded`no`, worded`yes, not tested yet`, worded`tested, none found`, worded`tested, lead found`]),
    usual: oldFinish === 'paint' || oldFinish === 'unknown' ? worded`yes` : worded`no`,
    read: oneOf(leadWords),
  });
  if (word === 'no') return 'no';
  if (word === 'yes') return 'may';
  const on = await asker.know({
    flag: 'tested-on',
    ask: worded`Tested on which day`,
    usual: today,
    read: dayReader(zone),
  });
  return { on, found: word === 'tested-found' };
}

/** The sections that are worked on: a case that smells and has no drawers gets its inside as one. */
function withInside(
  sections: Estimate[],
  size: Size | undefined,
  smells: boolean,
): (Estimate & { attachedTo?: string })[] {
  const body = sections.find((s) => s.id === 'body' || s.id === 'carcass');
  return smells && body !== undefined && size !== undefined ? [...sections, insideOf(size, body.id)] : sections;
}

/** All that has to be known of a piece, by options or by asking. */
export async function knowPiece(call: Call, asker: Asker, shop: OpenShop, means: Means): Promise<Answers> {
  const { timeZone, units, currency } = shop.book.shop;
  const today = localTime(shop.now, timeZone).date;
  const name = await asker.know({
    flag: 'name',
    ask: worded`What is it called`,
    example: worded`Pine washstand`,
    read: someWords,
  });
  const id = await knowId(
    asker,
    name,
    shop.book.pieces.map((p) => p.id),
  );
  const kind = await asker.know({
    flag: 'kind',
    ask: worded`What is it?`,
    more: numbered(kinds.map((k) => translated(kindFaces[k].say))),
    example: 'chest',
    read: oneOf(kinds),
  });
  const size = await knowSize(asker, kind, units);
  const counts = await knowCounts(asker, kind);
  const estimates = await knowAreas(call, asker, estimated(kind, size, counts), units);
  const wood = await knowWood(asker);
  const oldFinish = await asker.know({
    flag: 'old-finish',
    ask: worded`What is on it now?`,
    more: numbered(oldFinishes.map((f) => translated(oldFinishSay[f]))),
    usual: worded`unknown`,
    read: oneOf(oldFinishes),
  });
  const lead = await knowLead(asker, oldFinish, today, timeZone);
  const found = await knowFound(asker, estimates);
  const smells = found.odour?.includes('inside') === true;
  const { sections: finished, notDoable } = await knowFinishes(call, asker, withInside(estimates, size, smells), means);
  const sections = finished.map((s) => (s.role === 'inside' ? { ...s, recipe: roleRecipes.inside } : s));
  const painted = sections.some((s) => {
    const recipe = s.role === 'outside' ? means.recipes.get(s.recipe) : undefined;
    return recipe !== undefined && isPainted(recipe, means.materialOf);
  });
  const darkToLight =
    painted && oldFinish !== 'bare'
      ? await asker.know({
          flag: 'dark-to-light',
          ask: worded`Does a dark finish or stain go under a light colour, yes or no`,
          usual: worded`no`,
          read: yesOrNo,
        })
      : false;
  const arrives = await asker.know({
    flag: 'arrives',
    ask: worded`When does it come in`,
    usual: today,
    read: dayReader(timeZone),
  });
  const wantedBy = await asker.know({
    flag: 'by',
    ask: worded`Wanted by which day, like 2027-02-20 (Enter: no day)`,
    usual: '',
    read: ifAny(dayReader(timeZone, arrives)),
  });
  const money = (flag: string, ask: string) =>
    asker.know({
      flag,
      ask: worded`${ask}, in ${currency} (Enter: not said)`,
      usual: '',
      read: ifAny(moneyReader(currency)),
    });
  const costMinor = await money('cost', worded`What did it cost`);
  const priceMinor = await money('price', worded`What do you hope to get for it`);
  return {
    id,
    name,
    kind,
    ...(size !== undefined && { size }),
    counts,
    sections,
    notDoable,
    found,
    wood,
    oldFinish,
    darkToLight,
    lead,
    arrives,
    ...(wantedBy !== undefined && { wantedBy }),
    ...(costMinor !== undefined && { costMinor }),
    ...(priceMinor !== undefined && { priceMinor }),
    takenInAt: shop.now,
  };
}
