/** Puts a value at the end of a memory that holds so many at most: the one that was longest not asked for goes. */
export function keepLast<K, V>(memory: Map<K, V>, key: K, value: V, most: number): void {
  memory.delete(key);
  memory.set(key, value);
  const [oldest] = memory.keys();
  if (memory.size > most && oldest !== undefined) memory.delete(oldest);
}
