import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { cpSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

type Prepare = (shop: string) => void;

const put =
  (file: string, content: string | Uint8Array): Prepare =>
  (shop) => {
    mkdirSync(dirname(join(shop, file)), { recursive: true });
    rmSync(join(shop, file), { force: true, recursive: true });
    writeFileSync(join(shop, file), content);
  };
const instead =
  (file: string, make: (path: string) => void): Prepare =>
  (shop) => {
    rmSync(join(shop, file), { force: true, recursive: true });
    make(join(shop, file));
  };
const linkTo = (target: string) => (path: string) => symlinkSync(target, path);
const pipe = (path: string) => void spawnSync('mkfifo', [path]);

const MB = 1_000_000;
const piece = (name: string) =>
  `name: ${name}\nkind: stool\nsections: { seat: { recipe: hardwax-oil, area: 0.4 m2 } }\n`;

/** Files as a mishap or a malicious hand may leave them, in the demo shop with one piece; and what is to come of it. */
export const hostileFiles: readonly (readonly [what: string, prepare: Prepare, code: 0 | 2])[] = [
  ['shop.yaml of 50 MB', put('shop.yaml', Buffer.alloc(50 * MB, 'a: b\n')), 2],
  ['a piece of 50 MB', put('pieces/x.yaml', Buffer.alloc(50 * MB, 'x')), 2],
  ['a record of air of 50 MB', put('air/garage.csv', Buffer.alloc(50 * MB, '1,2,3\n')), 2],
  ['a record of air of one endless line', put('air/garage.csv', Buffer.alloc(15 * MB, 'a')), 2],
  [
    'a record of air without an end',
    put('air/garage.csv', `time,temp_c,rh\n${'2027-01-11T07:30,10,50\n'.repeat(800_000)}`),
    2,
  ],
  ['a journal of 50 MB', put('journal.jsonl', randomBytes(51 * MB)), 2],
  ['a journal of noise', put('journal.jsonl', randomBytes(5 * MB)), 2],
  ['a plan of brackets', put('plan.json', Buffer.alloc(45 * MB, '[')), 0],
  [
    'a deep plan',
    put('plan.json', `{"format":"drybench.plan/1","steps":${'['.repeat(50_000)}${']'.repeat(50_000)}}`),
    0,
  ],
  ['an endless plan', put('plan.json', `{"format":"drybench.plan/1","steps":[${'{},'.repeat(12 * MB)}{}]}`), 0],
  ['shop.yaml of noise', put('shop.yaml', randomBytes(MB - 1)), 2],
  ['an empty shop.yaml', put('shop.yaml', ''), 2],
  ['a shop.yaml in UTF-16', put('shop.yaml', Buffer.from('\ufeffname: x\n', 'utf16le')), 2],
  ['twenty thousand keys', put('shop.yaml', Array.from({ length: 20_000 }, (_, i) => `k${i}: 1\n`).join('')), 2],
  ['five thousand levels', put('shop.yaml', `a: ${'['.repeat(5000)}${']'.repeat(5000)}\n`), 2],
  ['an alias bomb', put('pieces/x.yaml', `a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\nd: [*c,*c]\n`), 2],
  ['a piece that is a pipe', instead('pieces/x.yaml', pipe), 2],
  ['a journal that is a pipe', instead('journal.jsonl', pipe), 2],
  ['a journal that is a folder', instead('journal.jsonl', mkdirSync), 2],
  ['a piece that is a device', instead('pieces/x.yaml', linkTo('/dev/zero')), 2],
  ['a piece that is a link out', instead('pieces/x.yaml', linkTo('/etc/hostname')), 2],
  ['a piece that is a link to itself', instead('pieces/x.yaml', linkTo('x.yaml')), 2],
  ['a plan that leads out', instead('plan.json', linkTo('/etc/hostname')), 0],
  [
    'a name that steers the terminal',
    put('pieces/x.yaml', piece('"\\e]0;x\\a\\e[2J\\u009b31m\\u202Eevil\\u2066\\u200b\\r\\n../../x"')),
    0,
  ],
  ['a name of ten thousand signs', put('pieces/x.yaml', piece('👩‍👩‍👧'.repeat(1200))), 2],
  ['dates at the ends of time', put('pieces/x.yaml', `${piece('x')}arrives: 0001-01-01\nwanted-by: 9999-12-31\n`), 2],
];

/** The demo shop with one of its pieces. */
export function smallDemo(folder: string): string {
  const shop = join(folder, 'shop');
  for (const name of ['shop.yaml', 'air', 'pieces/piano-stool.yaml'])
    cpSync(join('shared/demo', name), join(shop, name), { recursive: true });
  return shop;
}
