import type { Finding } from '../model/finding.ts';
import type { Notes, Remark, Shape } from './shapes/shape.ts';
import { placeAt, type SourceText } from './source-text.ts';
import { parseYaml } from './yaml/parse.ts';
import type { Node } from './yaml/tree.ts';

/** Takes what is wrong or worth knowing in one file, with its place. */
export function notesFor(source: SourceText, settings: Pick<Notes, 'zone' | 'currency'>, findings: Finding[]): Notes {
  const add = (severity: Finding['severity'], at: Node, remark: Remark) =>
    void findings.push({ severity, ...remark, place: placeAt(source, at.start) });
  return {
    ...settings,
    error: (at, remark) => add('error', at, remark),
    warn: (at, remark) => add('warning', at, remark),
  };
}

/** A file that was read: its tree, for finding places in it again. */
export interface ReadFile {
  readonly source: SourceText;
  readonly tree: Node;
}

/** A file known to be sound: its tree is only made where something is to be found in it. */
export function unparsedFile(source: SourceText): ReadFile {
  let known: Node | undefined;
  return {
    source,
    get tree() {
      known ??= parseYaml(source).tree;
      if (known === undefined) throw new Error(`${source.file} was sound when Drybench was built`);
      return known;
    },
  };
}

export interface ReadDocument<T> {
  readonly value?: T;
  readonly file?: ReadFile;
  readonly findings: readonly Finding[];
}

/** Parses one YAML file and reads it by `shape`; the value is absent where anything in it is wrong. */
export function readDocument<T>(
  source: SourceText,
  shape: Shape<T>,
  settingsOf: (tree: Node) => Pick<Notes, 'zone' | 'currency'>,
): ReadDocument<T> {
  const parsed = parseYaml(source);
  if (parsed.tree === undefined) return { findings: parsed.findings };
  const findings = [...parsed.findings];
  const file = { source, tree: parsed.tree };
  const value = shape.read(parsed.tree, notesFor(source, settingsOf(parsed.tree), findings));
  const sound = value !== undefined && findings.every((f) => f.severity !== 'error');
  return sound ? { value, file, findings } : { file, findings };
}
