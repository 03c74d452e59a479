import { AGREEMENTS, disagreement } from '../fitment/index.ts';
import { contentKey, type ForkProblem, sameContent, silencesOf, spacerCounts, travelOf } from '../fork/index.ts';
import { onShelf } from '../supply/index.ts';
import type { Flag } from './answer.ts';
import { bikeFlags, issuerFlags, replacedFlags } from './bike-flags.ts';
import { money } from './lines.ts';
import type { Prepared } from './prepare.ts';
import type { Candidate } from './search.ts';
import { sourceOf } from './source.ts';
import { operationTools } from './step-tools.ts';
import { substituteFlags } from './substitute-flags.ts';
import type { World } from './world.ts';

type Params = Flag['params'];
const flag = (severity: Flag['severity'], code: string, params: Params, source: Flag['source'] = null): Flag => ({
  severity,
  code,
  params,
  source,
});

/** What is true of the fork in front of you, whatever is done to it. */
export function nowFlags(world: World, prepared: Prepared): Flag[] {
  const { now } = prepared;
  const source = sourceOf(now.factory.source);
  const flags: Flag[] = now.assumed.map(({ slot, held, others }) =>
    flag(
      'verify',
      'now-assumed',
      {
        slot,
        held: contentKey(held) || 'none',
        others: others.map((other) => `${slot}=${contentKey(other) || 'none'}`),
      },
      source,
    ),
  );
  if (now.derived)
    flags.push(
      flag(
        'verify',
        'now-derived',
        {
          travel: now.travel / 1000,
          spring: now.build.slots.get('spring')?.sku ?? null,
          chassis: now.build.chassis.name,
        },
        source,
      ),
    );
  const volume = now.build.slots.get('volume-spacers')?.quantity ?? 0;
  const { greatest, clause } = spacerCounts(
    world.catalog,
    now.build.chassis,
    now.build.slots.get('spring') ?? null,
    now.travel,
    now.identity,
  );
  if (greatest !== null && volume > greatest) {
    flags.push(
      flag(
        'verify',
        'now-breaks-rule',
        { rule: 'volume-spacer-count', held: volume, limit: greatest },
        clause ? sourceOf(clause.source) : null,
      ),
    );
  }
  for (const slot of now.slots) {
    const part = world.catalog.parts.get(now.build.slots.get(slot.name)?.sku ?? '');
    const stroke = slot.role === 'damper' ? part?.dimensions.get('stroke') : undefined;
    if (part && stroke !== undefined && stroke < now.travel) {
      flags.push(
        flag(
          'verify',
          'now-breaks-rule',
          { rule: 'damper-stroke', held: stroke / 1000, limit: now.travel / 1000 },
          sourceOf(part.source),
        ),
      );
    }
    for (const agreement of AGREEMENTS) {
      if (!part || agreement.role !== slot.role) continue;
      const other = world.catalog.parts.get(now.build.slots.get(agreement.with)?.sku ?? '');
      const clash = other ? disagreement(agreement, part, other) : null;
      if (clash)
        flags.push(
          flag(
            'verify',
            'now-breaks-rule',
            { rule: agreement.code, held: shown(clash.part), limit: shown(clash.neighbour) },
            sourceOf(part.source),
          ),
        );
    }
  }
  return flags;
}

const shown = (value: string | number): string => (typeof value === 'number' ? `${value / 1000} mm` : value);

/** What has to be known, looked up or said about one plan. */
export function planFlags(world: World, prepared: Prepared, candidate: Candidate): Flag[] {
  return [
    ...silenceFlags(prepared, candidate, world.catalog),
    ...limitFlags(world, prepared, candidate),
    ...bikeFlags(world, prepared, candidate),
    ...issuerFlags(world, prepared.now, candidate),
    ...spacerFlags(world, prepared, candidate),
    ...replacedFlags(prepared, candidate),
    ...substituteFlags(world, prepared, candidate),
    ...buyingFlags(world, prepared, candidate),
  ];
}

/** What has to be looked up where nothing is to be done: what the fork as it is rests on, and what nobody says of the bike it comes to. */
export function stayingFlags(world: World, prepared: Prepared, fork: ForkProblem): Flag[] {
  const { now } = prepared;
  const staying = {
    build: now.build,
    travel: now.travel,
    unknown: silencesOf(
      fork,
      fork.sizes.map(() => 0),
    ),
  };
  return [...silenceFlags(prepared, staying, world.catalog), ...bikeFlags(world, prepared, staying)];
}

/** One flag for each thing that the plan rests on and nobody knows. */
function silenceFlags(
  prepared: Prepared,
  candidate: Pick<Candidate, 'build' | 'unknown'>,
  catalog: World['catalog'],
): Flag[] {
  return candidate.unknown.map(({ code, params, source }) => {
    const at = source === null ? null : sourceOf(source);
    if (code !== 'fit-not-known') return flag('verify', 'rests-on-silence', { about: code, ...params }, at);
    const sku = candidate.build.slots.get(String(params.slot))?.sku ?? '';
    const name = catalog.parts.get(sku)?.name ?? sku;
    const chassis = candidate.build.chassis.name;
    return flag(
      'verify',
      'fit-not-known',
      { slot: String(params.slot), sku, name, family: prepared.family.name, chassis },
      at,
    );
  });
}

function limitFlags(world: World, prepared: Prepared, candidate: Candidate): Flag[] {
  const { now } = prepared;
  const { chassis, slots } = candidate.build;
  const travel = slots.has('spring')
    ? (travelOf(world.catalog, candidate.build, now.identity) ?? now.travel)
    : now.travel;
  const flags: Flag[] = [];
  const longer = travel > now.travel;
  if (travel !== now.travel || chassis.id !== now.build.chassis.id) {
    const limit = longer ? chassis.travel.greatest : chassis.travel.least;
    if (limit === null)
      flags.push(
        flag(
          'verify',
          'travel-limit-not-known',
          { chassis: chassis.name, limit: longer ? 'greatest' : 'least', travel: travel / 1000 },
          sourceOf(chassis.source),
        ),
      );
  }
  for (const slot of now.slots) {
    const content = slots.get(slot.name);
    if (slot.role !== 'damper' || !content) continue;
    const part = world.catalog.parts.get(content.sku);
    const changed = !sameContent(now.build.slots.get(slot.name) ?? null, content);
    if (part && (longer || changed) && !part.dimensions.has('stroke')) {
      flags.push(
        flag(
          'verify',
          'damper-stroke-not-known',
          { sku: part.sku, name: part.name, travel: travel / 1000 },
          sourceOf(part.source),
        ),
      );
    }
    const room = chassis.dimensions.get('damper-room');
    if (
      part &&
      (changed || chassis.id !== now.build.chassis.id) &&
      (room === undefined || !part.dimensions.has('closed-length'))
    ) {
      flags.push(
        flag(
          'verify',
          'damper-length-not-known',
          { sku: part.sku, name: part.name, chassis: chassis.name },
          sourceOf(part.source),
        ),
      );
    }
  }
  return flags;
}

function spacerFlags(world: World, prepared: Prepared, candidate: Candidate): Flag[] {
  const { now } = prepared;
  const { build } = candidate;
  if (!build.slots.has('volume-spacers') || !build.slots.has('spring')) return [];
  const travel = travelOf(world.catalog, build, now.identity);
  const count = build.slots.get('volume-spacers')?.quantity ?? 0;
  const { standard, greatest, clause } = spacerCounts(
    world.catalog,
    build.chassis,
    build.slots.get('spring') ?? null,
    travel,
    now.identity,
  );
  const changed =
    travel !== now.travel ||
    candidate.work.changed.includes('spring') ||
    candidate.work.changed.includes('volume-spacers');
  if (!changed) return [];
  const source = clause ? sourceOf(clause.source) : null;
  if (standard === null)
    return [flag('verify', 'spacers-not-known', { count, greatest, travel: (travel ?? now.travel) / 1000 }, source)];
  return count === standard
    ? []
    : [
        flag(
          'advice',
          'spacers-off-standard',
          { count, standard, greatest, travel: (travel ?? now.travel) / 1000 },
          source,
        ),
      ];
}

function buyingFlags(world: World, prepared: Prepared, candidate: Candidate): Flag[] {
  const { catalog } = world;
  const { purchase, work } = candidate;
  const flags: Flag[] = [];
  for (const { offer, packs, days } of purchase.bought) {
    if (offer.price === null) flags.push(flag('verify', 'no-price', { sku: offer.sku }));
    if (!Number.isFinite(days)) flags.push(flag('verify', 'date-not-known', { sku: offer.sku }));
    else if (days > 0) flags.push(flag('advice', 'waiting', { sku: offer.sku, days, onShelf: onShelf(offer), packs }));
  }
  for (const [sku, { price }] of purchase.dosed) if (price === null) flags.push(flag('verify', 'no-price', { sku }));
  if (!world.hasShop) flags.push(flag('verify', 'no-labour-rate', {}));
  for (const id of [...new Set(work.order.flatMap(operationTools))].sort()) {
    const tool = catalog.tools.get(id);
    if (tool && world.shop.tools !== null && !world.shop.tools.has(id)) {
      flags.push(
        flag('advice', 'tool-not-at-hand', {
          tool: tool.size === null ? tool.name : `${tool.name} ${tool.size}`,
          price: tool.price === null ? null : money(world, tool.price),
        }),
      );
    }
  }
  for (const sku of prepared.atHand.used.keys()) {
    if ([...work.fresh.values()].some((piece) => piece.sku === sku && !piece.renewed))
      flags.push(flag('advice', 'used-part', { sku }));
  }
  for (const sku of [...new Set(purchase.products.values())].sort()) {
    const supply = catalog.supplies.get(sku);
    if (supply?.hazard)
      flags.push(flag('advice', 'hazard', { name: supply.name, hazard: supply.hazard }, sourceOf(supply.source)));
  }
  return flags;
}
