import { FOLDER_OPTIONS, NO_CACHE, type OptionSpec, valued } from './options.ts';

const many = (option: OptionSpec): OptionSpec => ({ ...option, repeat: 'many' });
const TOKENS = valued('tokens', 'FILE', 'tokens.txt', 'file of token hashes; else the one that `legwork token` writes');

export const TOKEN_OPTIONS: readonly OptionSpec[] = [TOKENS];
export const SERVE_OPTIONS: readonly OptionSpec[] = [
  valued('host', 'ADDRESS', '127.0.0.1', 'address to listen at; 127.0.0.1, so only this machine, if left out'),
  valued('port', 'PORT', '8417', 'port to listen at; 0 takes one that is free'),
  TOKENS,
  many(valued('origin', 'ORIGIN', 'https://shop.example', 'origin whose pages may read the answers')),
  valued('proxies', 'N', '1', 'proxies in front that are trusted to say who asks; 0 if left out'),
  valued('rate', 'N', '60000', 'requests a minute for each client'),
  valued('search-rate', 'N', '1200', 'searches a minute for each client'),
  valued('searchers', 'N', '2', 'threads that search; one fewer than this machine has processors if left out'),
  valued('search-time', 'SECONDS', '60', 'longest that one search may take'),
  valued('most-steps', 'N', '20000000', 'greatest number of search steps for one question'),
  valued('max-age', 'SECONDS', '60', 'how long a cache may hand out an answer without asking'),
  valued('log', 'LEVEL', 'info', 'silent, error, warn or info; one JSON object a line on standard error'),
  ...FOLDER_OPTIONS,
  NO_CACHE,
];
