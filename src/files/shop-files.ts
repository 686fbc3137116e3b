// Files of which a shop has one.
export const SHOP_FILE = 'shop.yaml';
export const SUPPLIES_FILE = 'supplies.yaml';
export const JOURNAL_FILE = 'journal.jsonl';
