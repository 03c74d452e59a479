/** Items by key, in the order in which the keys first appear. */
export function groupBy<T, Key>(items: Iterable<T>, key: (item: T) => Key): Map<Key, T[]> {
  const groups = new Map<Key, T[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return groups;
}
