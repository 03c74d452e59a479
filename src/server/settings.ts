import { availableParallelism } from 'node:os';

/** How the service is set up. Times in ms, sizes in bytes. */
export interface Settings {
  readonly host: string;
  readonly port: number;
  /** SHA-256 of each token that may reload, in hexadecimal. */
  readonly tokens: readonly string[];
  /** Origins whose pages may read the answers. */
  readonly origins: readonly string[];
  /** Proxies in front that are trusted to say who asks. */
  readonly proxies: number;
  /** Requests a minute for each client. */
  readonly rate: { readonly all: number; readonly search: number; readonly guarded: number };
  readonly searchers: number;
  readonly waiting: number;
  readonly searchTime: number;
  /** Greatest stepLimit that a question may name. */
  readonly mostSteps: number;
  readonly body: { readonly bytes: number; readonly depth: number };
  /** How long a client may take for the headers, for the whole request, and to take in some of the answer. */
  readonly patience: {
    readonly headers: number;
    readonly request: number;
    readonly idle: number;
    /** How long a connection stays open between two requests. */
    readonly between: number;
    /** How often the above is looked at. */
    readonly check: number;
  };
  /** How long what is under way may take when the service stops. */
  readonly farewell: number;
  /** Seconds for which an answer may be taken from a cache unasked. */
  readonly maxAge: number;
  readonly log: 'silent' | 'error' | 'warn' | 'info';
}

export const DEFAULTS: Settings = {
  host: '127.0.0.1',
  port: 8417,
  tokens: [],
  origins: [],
  proxies: 0,
  rate: { all: 60_000, search: 1_200, guarded: 30 },
  searchers: Math.max(1, availableParallelism() - 1),
  waiting: 200,
  searchTime: 60_000,
  mostSteps: 20_000_000,
  body: { bytes: 1_000_000, depth: 20 },
  patience: { headers: 10_000, request: 30_000, idle: 30_000, between: 5_000, check: 1_000 },
  farewell: 10_000,
  maxAge: 60,
  log: 'info',
};
