import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';

const run = promisify(execFile);
const names = ['chromium', 'chromium-browser', 'google-chrome', 'chrome'];

/** A browser to print with: DRYBENCH_CHROMIUM, or the first one on the PATH. */
export const chromium =
  process.env['DRYBENCH_CHROMIUM'] ??
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((path) => existsSync(path));

/** Why the tests of printed pages are left out. */
export const withoutChromium = 'no chromium on the PATH and no DRYBENCH_CHROMIUM: pages are not laid out and printed';

async function browse(
  html: string,
  flags: (folder: string) => readonly string[],
): Promise<{ out: string; folder: string }> {
  const folder = await mkdtemp(join(tmpdir(), 'drybench-page-'));
  const page = join(folder, 'page.html');
  await writeFile(page, html);
  const usual = [
    '--headless',
    '--no-sandbox',
    '--disable-gpu',
    '--disable-dev-shm-usage',
    `--user-data-dir=${folder}/profile`,
  ];
  const { stdout } = await run(chromium!, [...usual, ...flags(folder), pathToFileURL(page).href], {
    maxBuffer: 50_000_000,
    timeout: 120_000,
  });
  return { out: stdout, folder };
}

/** A box in mm, as the browser laid it out. */
export interface Box {
  readonly page: number;
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

// The policy of the page forbids scripts, so the copy that is measured goes without it.
const MEASURE = `<script>
  const mm = 96 / 25.4;
  const boxes = [...document.querySelectorAll('svg.page')].flatMap((svg, page) => {
    const at = svg.getBoundingClientRect();
    return [...svg.querySelectorAll('text')].map((t) => {
      const b = t.getBoundingClientRect();
      return { page, text: t.textContent, left: (b.left - at.left) / mm, right: (b.right - at.left) / mm,
        top: (b.top - at.top) / mm, bottom: (b.bottom - at.top) / mm };
    });
  });
  const pages = [...document.querySelectorAll('svg.page')].map((s) => s.getBoundingClientRect());
  document.body.textContent = '';
  const out = document.createElement('pre');
  out.id = 'measured';
  out.textContent = encodeURIComponent(JSON.stringify({ boxes, pages: pages.map((p) => [p.width / mm, p.height / mm]) }));
  document.body.append(out);
</script>`;

export interface Measured {
  readonly boxes: readonly Box[];
  readonly pages: readonly (readonly [width: number, height: number])[];
}

/** Every line of text on every page, where the browser puts it. */
export async function measured(html: string): Promise<Measured> {
  const copy = html
    .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
    .replace('</body>', `${MEASURE}</body>`);
  const { out, folder } = await browse(copy, () => ['--dump-dom']);
  await rm(folder, { recursive: true });
  const found = /<pre id="measured">([^<]*)<\/pre>/.exec(out);
  if (found === null) throw new Error('the page was not measured');
  return JSON.parse(decodeURIComponent(found[1]!)) as Measured;
}

/** Sizes in mm of the pages of the PDF that printing on `paper` gives. */
export async function printed(html: string, paper: 'A4' | 'letter'): Promise<readonly (readonly [number, number])[]> {
  const lie = /@page \{ size: (\w+);/.exec(html)![1]!;
  const sized = html
    .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
    .replace(/@page \{ size: \w+;/, `@page { size: ${paper} ${lie};`);
  const { folder } = await browse(sized, (f) => [`--print-to-pdf=${f}/page.pdf`, '--no-pdf-header-footer']);
  const pdf = (await readFile(join(folder, 'page.pdf'))).toString('latin1');
  await rm(folder, { recursive: true });
  const toMm = (points: string) => Math.round((Number(points) * 25.4) / 72);
  return [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map((m) => [toMm(m[1]!), toMm(m[2]!)] as const);
}
