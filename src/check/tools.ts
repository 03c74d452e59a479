import type { Catalog, Operation, Problem } from '../catalog/index.ts';
import { hexKey, newtonMetresOf, type SettingWrench, wrenchesFor } from '../physics/index.ts';
import { doubt, mm } from './places.ts';

/** Do the tools that steps name reach, turn and take what they are named for? Tools that do not state their measures say nothing. */
export const toolDoubts = (catalog: Catalog, operations: readonly Operation[]): Problem[] => [
  ...torqueDoubts(catalog, operations),
  ...keyDoubts(catalog, operations),
  ...ringDoubts(catalog, operations),
];

/** A step that names torque tools, and tightens to what none of them is made for. Tools that do not state their range say nothing. */
const torqueDoubts = (catalog: Catalog, operations: readonly Operation[]): Problem[] =>
  operations.flatMap(({ id, tools, fasteners, source }) => {
    const wrenches = tools.flatMap((tool): SettingWrench[] => {
      const range = catalog.tools.get(tool)?.torque ?? null;
      return range === null
        ? []
        : [{ id: tool, greatest: newtonMetresOf(range.greatest), lowestMark: newtonMetresOf(range.least) }];
    });
    if (wrenches.length === 0) return [];
    return fasteners.flatMap(({ name, torque }) => {
      const suit = wrenchesFor(wrenches, newtonMetresOf(torque));
      return !suit.ok || suit.value.length > 0
        ? []
        : [
            doubt(catalog, source, 'torque-out-of-reach', {
              operation: id,
              fastener: name,
              torque: `${torque / 1000} N·m`,
              tools: wrenches.map((one) => one.id),
            }),
          ];
    });
  });

/** A cap screw (ISO 4762) whose thread asks for another hex key than the one that is named. */
const keyDoubts = (catalog: Catalog, operations: readonly Operation[]): Problem[] =>
  operations.flatMap(({ id, fasteners, source }) =>
    fasteners.flatMap(({ name, thread, head, tool }) => {
      const has = catalog.tools.get(tool ?? '')?.acrossFlats ?? null;
      const key = head === 'cap-screw' && thread !== null ? hexKey(thread) : null;
      if (has === null || !key?.ok || Math.round(key.value.key * 1000) === has) return [];
      const asks = `a hex key of ${key.value.key} mm`;
      return [
        doubt(catalog, source, 'tool-does-not-fit', {
          operation: id,
          piece: `${thread} ${name}`,
          asks,
          tool: tool ?? '',
          has: mm(has),
        }),
      ];
    }),
  );

/** A retaining ring in a bore that the pliers which are named do not reach, by what they state. */
const ringDoubts = (catalog: Catalog, operations: readonly Operation[]): Problem[] =>
  operations.flatMap(({ id, retainingRings, source }) =>
    retainingRings.flatMap(({ bore, tool }) => {
      const has = catalog.tools.get(tool ?? '')?.bores ?? null;
      if (has === null || (bore >= has.least && bore <= has.greatest)) return [];
      const asks = `pliers for a bore of ${mm(bore)}`;
      return [
        doubt(catalog, source, 'tool-does-not-fit', {
          operation: id,
          piece: 'retaining ring',
          asks,
          tool: tool ?? '',
          has: `${mm(has.least)} to ${mm(has.greatest)}`,
        }),
      ];
    }),
  );
