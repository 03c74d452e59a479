import express from 'express';
import { pino } from 'pino';
import * as z from 'zod';
import { NO_INPUT, type Operation, textReply, understood } from '../../src/server/operation.ts';
import { QUESTIONS } from '../../src/server/operations.ts';
import { DEFAULTS } from '../../src/server/settings.ts';
import { start } from '../../src/server/start.ts';

/** A JSON answer of about the size of a verdict that costs nothing to work out. */
const CONSTANT = `${JSON.stringify({ verdict: 'fits', padding: 'x'.repeat(900) }, null, 2)}\n`;
/** Made once, as the schemas of the service are. */
const NOTHING = z.strictObject({});
const constant: Operation = {
  id: 'constant',
  method: 'get',
  path: '/v1/constant',
  summary: '',
  about: '',
  lane: 'quick',
  input: NO_INPUT,
  output: z.unknown(),
  content: 'application/json',
  problems: [],
  understand: ({ query }) => understood(NOTHING, query, () => textReply(CONSTANT)),
};

/** What is measured, in a process of its own: the service with a constant answer beside its own, or Express with one route and nothing else. */
if (process.argv[2] === 'bare') {
  const value: unknown = JSON.parse(CONSTANT);
  const server = express()
    .get('/v1/constant', (_request, response) => void response.json(value))
    .listen(0, '127.0.0.1', () => {
      const address = server.address();
      if (typeof address === 'object' && address !== null) process.send?.({ url: `http://127.0.0.1:${address.port}` });
    });
} else {
  const settings = {
    ...DEFAULTS,
    port: 0,
    searchers: 1,
    rate: { all: 1e9, search: 1e9, guarded: 1e9 },
  };
  const order = { values: { catalog: ['demo-catalog'] }, env: { ...process.env } };
  const log = pino.destination({ dest: '/dev/null', sync: false });
  const started = await start(settings, order, log, [...QUESTIONS, constant]);
  if (started.kind !== 'listening') throw new Error(started.kind);
  process.send?.({ url: started.service.url });
}
// asked for how much it has used so far
process.on('message', () => process.send?.({ used: process.cpuUsage() }));
