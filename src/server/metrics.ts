import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Desk } from './desk.ts';

/** What the service counts, in the text form that Prometheus reads. */
export interface Metrics {
  readonly answered: (operation: string, status: number, seconds: number) => void;
  readonly reloaded: (outcome: 'done' | 'refused' | 'running') => void;
  readonly text: () => Promise<string>;
  readonly contentType: string;
}

export function makeMetrics(desk: Desk, connections: () => Promise<number>): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const registers = [registry];
  const requests = new Histogram({
    name: 'legwork_request_seconds',
    help: 'Time from a request to the end of its answer.',
    labelNames: ['operation', 'status'],
    buckets: [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30],
    registers,
  });
  const reloads = new Counter({
    name: 'legwork_reloads_total',
    help: 'Reloads by how they ended.',
    labelNames: ['outcome'],
    registers,
  });
  new Gauge({
    name: 'legwork_tasks',
    help: 'Searches that are worked on or wait.',
    labelNames: ['state'],
    registers,
    collect() {
      const { working, waiting } = desk.current.crew.load();
      this.set({ state: 'working' }, working);
      this.set({ state: 'waiting' }, waiting);
    },
  });
  new Gauge({
    name: 'legwork_connections',
    help: 'Connections that are open.',
    registers,
    async collect() {
      this.set(await connections());
    },
  });
  new Gauge({
    name: 'legwork_catalog_info',
    help: 'The catalogue in use, by its hash.',
    labelNames: ['catalog', 'stock', 'shop'],
    registers,
    collect() {
      const { catalog, stock, shop } = desk.current.world;
      this.reset();
      this.set({ catalog: catalog.hash, stock: stock.hash, shop: shop.hash }, 1);
    },
  });
  return {
    answered: (operation, status, seconds) => requests.observe({ operation, status }, seconds),
    reloaded: (outcome) => reloads.inc({ outcome }),
    text: () => registry.metrics(),
    contentType: registry.contentType,
  };
}
