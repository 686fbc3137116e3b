import { expect, test } from 'vitest';
import { doubtsOf } from '../../src/reports/doubts.ts';
import { lessonLines, lessonsDocument } from '../../src/reports/learned.ts';
import { filmBook } from '../planning/film-book.ts';
import { look } from './sample.ts';

const lessons = {
  materials: new Map([['paint', { factor: 1.12, count: 4, deviation: 0.1 }]]),
  hands: new Map([['owner', { factor: 0.9, count: 1, deviation: 0.2 }]]),
};

test('what was learned is told with how many observations it rests on', () => {
  const text = lessonLines(lessons, filmBook({}), look(200)).join('\n');
  expect(text).toContain('Paint dries 12 % slower here than the container says, from 4 looks at it.');
  expect(text).toContain('Owner works 10 % quicker than the recipes say, from 1 timed step.');
  expect(lessonLines({ materials: new Map(), hands: new Map() }, filmBook({}), look(200))).toEqual([]);
  expect(lessonsDocument(lessons).materials).toEqual([{ id: 'paint', factor: 1.12, observations: 4 }]);
});

test('a doubt is told where a material of its mechanism is still to be laid, and else not', () => {
  expect(doubtsOf(new Set(['paint']), filmBook({})).map((d) => d.code)).toEqual(['oil-in-the-cold']);
  expect(doubtsOf(new Set(), filmBook({}))).toEqual([]);
});
