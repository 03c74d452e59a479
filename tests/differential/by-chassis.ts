import type { QuestionInput } from '../../src/plan/index.ts';

/** Questions about one chassis (or a bike that is named alone) after another, and about each fork of it together: what the oracle remembers of a fork serves them all. */
export function byChassis(questions: readonly QuestionInput[]): readonly (readonly QuestionInput[])[] {
  const bodies = groupedBy(questions, ({ chassis, bike }) => chassis ?? bike ?? '');
  return bodies.map((body) =>
    groupedBy(body, ({ travelNow, with: fitted, built, serial }) =>
      JSON.stringify([travelNow, fitted, built, serial]),
    ).flat(),
  );
}

function groupedBy<T>(items: readonly T[], keyOf: (item: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item)) ?? [];
    groups.set(keyOf(item), group);
    group.push(item);
  }
  return [...groups.values()];
}
