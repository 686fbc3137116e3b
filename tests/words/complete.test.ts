import { describe, expect, it } from 'vitest';
import { spanishByArea } from '../../src/words/spanish.ts';
import type { Wording } from '../../src/words/worded.ts';
import { saidIn } from './collect.ts';
import { sentencesOf, shippedTexts } from './shipped.ts';
import { sources } from './sources.ts';

const wordings = new Map<string, Wording>(Object.values(spanishByArea).flatMap((area) => Object.entries(area)));
const inSources = sources().flatMap(saidIn);
const shipped = shippedTexts().flatMap(({ file, text }) => sentencesOf(text).map((english) => ({ english, at: file })));
const all = [...inSources, ...shipped];

const blanks = (text: string) => [...new Set(text.match(/\{\d+\}/g))].sort();
const forms = (wording: Wording) => (typeof wording === 'string' ? [wording] : Object.values(wording));

describe('Spanish', () => {
  it('is looked for in all that is said', () => {
    // The walk does find texts of every kind.
    for (const english of [
      'no hands-on work today',
      'dust no longer sticks',
      '{0} errors',
      'chance that a safe date is to hold with; 90 % if left out',
      'what to do when, day by day, and what dries meanwhile',
      'a length of time',
      'Scuff with 320, vacuum off, tack cloth',
    ])
      expect(all.some((said) => said.english === english)).toBe(true);
    expect(all.length).toBeGreaterThan(2000);
  });

  it('has every text', () => {
    const missing = all.filter(({ english }) => !wordings.has(english));
    expect(missing.map(({ english, at }) => `${at}: ${english}`)).toEqual([]);
  });

  it('has no text that nobody says', () => {
    const said = new Set(all.map(({ english }) => english));
    expect([...wordings.keys()].filter((english) => !said.has(english))).toEqual([]);
  });

  it('has each text once', () => {
    const keys = Object.values(spanishByArea).flatMap((area) => Object.keys(area));
    expect(keys.filter((key, i) => keys.indexOf(key) < i)).toEqual([]);
  });

  it('fills the same blanks', () => {
    const counts = new Set(inSources.filter((said) => said.counts).map(({ english }) => english));
    for (const [english, wording] of wordings)
      for (const form of forms(wording)) {
        // A form for one thing may name it without its number.
        const may = counts.has(english) ? [blanks(english), []] : [blanks(english)];
        expect(may, english).toContainEqual(blanks(form));
      }
  });

  it('has the forms that Spanish counts by where something is counted, and only there', () => {
    const counts = new Set(inSources.filter((said) => said.counts).map(({ english }) => english));
    for (const [english, wording] of wordings) {
      expect(typeof wording === 'string', english).toBe(!counts.has(english));
      if (typeof wording !== 'string') expect(Object.keys(wording)).toEqual(['one', 'other']);
    }
  });

  it('begins and ends as the English does, where that joins it to what stands beside it', () => {
    const edges = (text: string) => [/^\s*/.exec(text)?.[0], /\s*$/.exec(text)?.[0]];
    for (const [english, wording] of wordings)
      for (const form of forms(wording)) if (english !== ', no ') expect(edges(form), english).toEqual(edges(english));
  });
});
