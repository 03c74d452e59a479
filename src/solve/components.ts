/**
 * Variables 0 to `count` - 1 in groups that no scope ties together: whatever one group is, it says nothing about another. In the order of their first
 * variables; every variable is in one group. `isOpen` leaves out variables that are settled: they tie nothing.
 */
export function components(
  count: number,
  scopes: readonly (readonly number[])[],
  isOpen: (variable: number) => boolean = () => true,
): readonly (readonly number[])[] {
  const parent = Array.from({ length: count }, (_one, variable) => variable);
  const find = (variable: number): number => {
    let here = variable;
    for (let above = parent[here] ?? here; above !== here; above = parent[here] ?? here) {
      parent[here] = parent[above] ?? above;
      here = above;
    }
    return here;
  };
  for (const scope of scopes) {
    let first = -1;
    for (const variable of scope) {
      if (!isOpen(variable)) continue;
      if (first < 0) first = find(variable);
      else parent[find(variable)] = first;
    }
  }
  const groups = new Map<number, number[]>();
  for (let variable = 0; variable < count; variable++) {
    if (!isOpen(variable)) continue;
    const root = find(variable);
    const group = groups.get(root);
    if (group) group.push(variable);
    else groups.set(root, [variable]);
  }
  return [...groups.values()];
}
