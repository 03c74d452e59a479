import type { ListedFault } from '../report/faults.ts';
import type { OptionSpec } from './options.ts';

/** A fault of the question, with the option in place of the path. */
export function listedFault(
  fault: { readonly code: string; readonly params: ListedFault['params'] },
  options: readonly OptionSpec[],
): ListedFault {
  const path = fault.code === 'bad-question' ? String(fault.params.path) : '';
  const option = options.find(({ fill }) => fill !== null && (path === fill.path || path.startsWith(`${fill.path}.`)));
  const params = option ? { ...fault.params, path: `--${option.name}` } : fault.params;
  return { list: 'faults', code: fault.code, params };
}
