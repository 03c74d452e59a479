declare const LEGWORK_VERSION: string | undefined;
declare const LEGWORK_BUILD: string | undefined;

/** The version of the program; set when it is built. */
export const VERSION: string = typeof LEGWORK_VERSION === 'undefined' ? 'unbuilt' : LEGWORK_VERSION;
/** Names the code that reads catalogues, so that a cache written by other code is never taken. Empty: no cache. */
export const BUILD: string = typeof LEGWORK_BUILD === 'undefined' ? '' : LEGWORK_BUILD;
