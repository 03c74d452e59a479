/** Every subset, the empty one first. */
export function subsetsOf(items: readonly number[]): readonly (readonly number[])[] {
  const sets: (readonly number[])[] = [[]];
  for (const item of items) sets.push(...sets.map((set) => [...set, item]));
  return sets;
}

/** The sets that hold no other of the sets; each once. */
export function minimalOf(sets: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const unique = [...new Map(sets.map((set) => [[...set].sort((a, b) => a - b).join(' '), set])).values()];
  return unique.filter(
    (set) => !unique.some((other) => other.length < set.length && other.every((member) => set.includes(member))),
  );
}
