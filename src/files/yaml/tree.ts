/** A YAML document as a tree of texts, lists and maps; every scalar stays the text that was written. */
export type Node = TextNode | ListNode | MapNode;

/** `start` and `end` are offsets into the file's text; an empty value has both at the end of its key. */
interface Ranged {
  readonly start: number;
  readonly end: number;
}

export interface TextNode extends Ranged {
  readonly kind: 'text';
  readonly text: string;
  readonly style: 'plain' | 'single-quoted' | 'double-quoted' | 'block';
}

export interface ListNode extends Ranged {
  readonly kind: 'list';
  readonly items: readonly Node[];
  readonly flow: boolean;
}

export interface MapNode extends Ranged {
  readonly kind: 'map';
  readonly entries: readonly MapEntry[];
  readonly flow: boolean;
}

export interface MapEntry {
  readonly key: TextNode;
  readonly value: Node;
}

/** Keys of maps and indexes of lists, from the top down. */
export type Path = readonly (string | number)[];

export function entryOf(node: Node | undefined, key: string): MapEntry | undefined {
  return node?.kind === 'map' ? node.entries.find((e) => e.key.text === key) : undefined;
}

/** The value behind a key, or the item at an index. */
export function childOf(node: Node, key: string | number): Node | undefined {
  if (node.kind === 'list' && typeof key === 'number') return node.items[key];
  return typeof key === 'string' ? entryOf(node, key)?.value : undefined;
}

/** The node at `path`, or the deepest one on the way to it. */
export function nearestNode(tree: Node, path: Path): Node {
  let node = tree;
  for (const key of path) {
    const child = childOf(node, key);
    if (child === undefined) return node;
    node = child;
  }
  return node;
}

/** The node at `path`, if there is one. */
export function nodeAt(tree: Node, path: Path): Node | undefined {
  return path.reduce<Node | undefined>((node, key) => (node === undefined ? undefined : childOf(node, key)), tree);
}

/** Plain data: strings, arrays and objects. */
export type Plain = string | readonly Plain[] | PlainMap;

export interface PlainMap {
  readonly [key: string]: Plain;
}

export function plainOf(node: Node): Plain {
  if (node.kind === 'text') return node.text;
  if (node.kind === 'list') return node.items.map(plainOf);
  return Object.fromEntries(node.entries.map(({ key, value }) => [key.text, plainOf(value)]));
}

/** The first text in the tree that says just that. */
export function nodeSaying(tree: Node, text: string): Node | undefined {
  if (tree.kind === 'text') return tree.text === text ? tree : undefined;
  const parts = tree.kind === 'list' ? tree.items : tree.entries.map((e) => e.value);
  for (const part of parts) {
    const found = nodeSaying(part, text);
    if (found !== undefined) return found;
  }
  return undefined;
}
