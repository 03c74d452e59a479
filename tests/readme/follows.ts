/** Every shown line stands in the output, in order, without a gap but where lines are left out. */
export function follows(shown: readonly string[], printed: readonly string[]): boolean {
  let at = 0;
  let gap = false;
  for (const line of shown) {
    if (line.trim() === '[...]') {
      gap = true;
      continue;
    }
    const found = gap ? printed.indexOf(line, at) : printed[at] === line ? at : -1;
    if (found < 0) return false;
    at = found + 1;
    gap = false;
  }
  return gap || printed.slice(at).every((line) => line.trim() === '');
}
