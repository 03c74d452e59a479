/** Ends a switch over a union: a new member breaks the build here. */
export function unreachable(value: never): never {
  throw new Error(`unreachable: ${JSON.stringify(value)}`);
}
