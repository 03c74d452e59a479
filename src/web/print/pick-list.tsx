import { goodsName } from '../bill.tsx';
import type { PlanDocument } from '../records.ts';
import { words } from '../words/words.ts';
import { Box, type Printed, Sheet } from './sheet.tsx';

type Line = PlanDocument['lines'][number];

/** What to fetch, shelf by shelf; then what is to be ordered, and what is at hand already. */
export function PickList({ printed }: { readonly printed: Printed }) {
  const { print } = words;
  const { lines } = printed.plan;
  const bought = lines.filter(({ action }) => action === 'buy');
  const shelf = bought.filter(({ days }) => days === 0).sort(byShelf);
  const order = bought.filter(({ days }) => days !== 0).sort(byShelf);
  const atHand = lines.filter(({ action }) => action === 'take');
  return (
    <Sheet printed={printed} title={print.pickList}>
      {bought.length + atHand.length === 0 ? <p>{print.nothingToPick}</p> : null}
      <Lines title={print.forBins} lines={shelf} />
      <Lines title={print.toOrder} lines={order} />
      <Lines title={print.atHand} lines={atHand} />
    </Sheet>
  );
}

/** By shelf as people walk along it: A2-2 before A10-1; what has no shelf comes last. */
function byShelf(a: Line, b: Line): number {
  if (a.bin === null || b.bin === null) return Number(a.bin === null) - Number(b.bin === null);
  return a.bin.localeCompare(b.bin, words.tag, { numeric: true });
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly Line[] }) {
  const { print, bill } = words;
  if (lines.length === 0) return null;
  return (
    <>
      <h2>{title}</h2>
      <table class="grid">
        <thead>
          <tr>
            <th scope="col">{print.bin}</th>
            <th scope="col">{print.take}</th>
            <th scope="col">{print.number}</th>
            <th scope="col">{print.what}</th>
            <th scope="col">{print.when}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={`${line.sku} ${line.name}`}>
              <th scope="row">{line.bin ?? print.nowhere}</th>
              <td class="nowrap">
                <Box />{' '}
                {line.packs === null ? words.amount(line.quantity, line.unit) : words.amount(line.packs, 'piece')}
              </td>
              <td>{line.sku}</td>
              <td>{goodsName(line)}</td>
              <td>{line.action === 'buy' ? bill.when(line.days) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
