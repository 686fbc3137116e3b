// A program that keeps folders alike between computers leaves a copy where two changed the same file. What it calls the copy
// differs from one to the next: these names are invented after the usual kinds (from memory).
import { cpSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drybench } from './run-cli.ts';
import { inShop } from './small-shop.ts';

const copies = [
  ['shop.yaml', 'shop (conflicted copy 2027-01-11).yaml'],
  ['shop.yaml', "shop (Ann's conflicted copy).yaml"],
  ['shop.yaml', 'shop.sync-conflict-20270111-073000-ABC.yaml'],
  ['shop.yaml', 'shop-OFFICE.yaml'],
  ['shop.yaml', 'shop (1).yaml'],
  ['shop.yaml', 'Copy of shop.yaml'],
  ['journal.jsonl', 'journal (conflicted copy).jsonl'],
  ['journal.jsonl', 'journal_conflict.jsonl'],
  ['supplies.yaml', 'supplies 2.yaml'],
] as const;

describe('a copy beside a file of the shop', () => {
  it.each(copies)('of %s: "%s" is told of by check, and by each command that reads the shop', (own, copy) =>
    inShop({}, async (shop) => {
      cpSync(join(shop, 'shop.yaml'), join(shop, copy));
      const check = await drybench(['check'], { folder: shop, columns: 200 });
      expect(check).toMatchObject({ code: 0, err: '' });
      expect(check.out).toContain(`${copy}:1:1: warning: "${copy}" is passed over: of its kind only ${own} is read`);
      expect(check.out).toMatch(/then move it out of this folder\n\n0 errors, 1 warning\n/);
      const week = await drybench(['week'], { folder: shop, columns: 200 });
      expect(week.code).toBe(0);
      expect(week.err).toContain(`"${copy}" is passed over`);
    }),
  );

  it('of a piece is told of in the same words, also where its name makes no id', () =>
    inShop({}, async (shop) => {
      const copy = 'pieces/stool (conflicted copy).yaml';
      cpSync(join(shop, 'pieces/stool.yaml'), join(shop, copy));
      const { out } = await drybench(['check'], { folder: shop, columns: 200 });
      expect(out).toContain(`"${copy}" is passed over: of its kind only pieces/stool.yaml is read`);
    }));

  it('is shown harmless', () =>
    inShop({}, async (shop) => {
      cpSync(join(shop, 'shop.yaml'), join(shop, 'shop \u001b[31m.yaml'));
      const { out } = await drybench(['check'], { folder: shop, columns: 200 });
      expect(out).toContain('shop \\u{1b}[31m.yaml');
      expect(out).not.toContain('\u001b');
    }));

  it('nothing else that may lie there is told of', () =>
    inShop({}, async (shop) => {
      for (const name of [
        'shop.yaml~',
        '.shop.yaml.swp',
        'shopping.yaml',
        'journal.damaged-1-abc',
        'notes.yaml',
        'shop.md',
      ])
        cpSync(join(shop, 'shop.yaml'), join(shop, name));
      mkdirSync(join(shop, 'shop 2027.yaml'));
      expect(await drybench(['check'], { folder: shop })).toMatchObject({ code: 0, out: 'All is right: 1 piece.\n' });
    }));
});
