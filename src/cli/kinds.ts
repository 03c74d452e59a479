/** Kinds of record that `catalog list` shows. */
export const KINDS = [
  'makers',
  'documents',
  'specifications',
  'families',
  'chassis',
  'parts',
  'kits',
  'supplies',
  'tools',
  'operations',
  'services',
  'bikes',
  'notices',
] as const;
