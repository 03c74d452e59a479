import type { PlanDocument } from './records.ts';
import { words } from './words/words.ts';

type Line = PlanDocument['lines'][number];
const GROUPS = ['buy', 'take', 'install', 'renew', 'use', 'reuse', 'remove', 'waste'] as const;

/** What the job takes and what it leaves, group by group, and the sums. */
export function Bill({ plan, onWhy }: { readonly plan: PlanDocument; readonly onWhy: (() => void) | null }) {
  const { bill } = words;
  const { money } = plan;
  const sum = (amount: string): string => words.money(amount, money.currency);
  return (
    <section aria-labelledby="bill">
      <h2 id="bill">{bill.title}</h2>
      <table class="bill">
        <caption class="visually-hidden">{bill.caption}</caption>
        <thead class="visually-hidden">
          <tr>
            <th scope="col">{bill.columns.quantity}</th>
            <th scope="col">{bill.columns.what}</th>
            <th scope="col">{bill.columns.money}</th>
          </tr>
        </thead>
        {GROUPS.map((action) => {
          const lines = plan.lines.filter((line) => line.action === action);
          return lines.length === 0 ? null : (
            <tbody key={action}>
              <tr>
                <th scope="rowgroup" colSpan={3}>
                  {bill.groups[action]}
                </th>
              </tr>
              {lines.map((line, at) => (
                <Row key={`${line.sku} ${at}`} line={line} currency={money.currency} />
              ))}
            </tbody>
          );
        })}
        <tfoot>
          {[
            [bill.parts, sum(money.parts)],
            [bill.supplies, sum(money.supplies)],
            [bill.labour, sum(money.labour)],
          ].map(([name, amount]) => (
            <tr key={name}>
              <th scope="row" colSpan={2}>
                {name}
              </th>
              <td>{amount}</td>
            </tr>
          ))}
          <TotalRows money={money} columns={2} />
        </tfoot>
      </table>
      {onWhy ? (
        <p class="quiet">
          <button type="button" onClick={onWhy}>
            {bill.why}
          </button>
        </p>
      ) : null}
    </section>
  );
}

/** What is bought, with how much is in a pack of it. */
export function goodsName({ name, packs, quantity, unit }: Line): string {
  const { bill } = words;
  const each = packs === null ? 0 : quantity / packs;
  if (unit !== 'piece' && each > 0) return bill.pack(name, words.amount(each, unit));
  return each > 1 ? bill.packOf(name, each) : name;
}

/** The total and its tax, below so many columns of names. */
export function TotalRows({ money, columns }: { readonly money: PlanDocument['money']; readonly columns: number }) {
  const { bill, verdict } = words;
  const total = words.money(money.total, money.currency);
  return (
    <>
      <tr class="total">
        <th scope="row" colSpan={columns}>
          {bill.total}
        </th>
        <td>{money.atLeast ? verdict.atLeast(total) : total}</td>
      </tr>
      {money.tax === null ? null : (
        <tr>
          <th scope="row" colSpan={columns}>
            {bill.tax(money.tax.rate, money.tax.included)}
          </th>
          <td>{words.money(money.tax.amount, money.currency)}</td>
        </tr>
      )}
    </>
  );
}

function Row({ line, currency }: { readonly line: Line; readonly currency: string }) {
  const { bill } = words;
  const { action, sku, quantity, unit, packs, total, leftOver, bin, days, why } = line;
  const bought = action === 'buy';
  const about = [
    sku,
    bin === null ? null : bill.shelf(bin),
    bought ? bill.when(days) : null,
    ...(leftOver ?? []).map((left) => bill.left(`${words.amount(left.quantity, left.unit)} ${left.name}`)),
  ].filter((one) => one !== null);
  return (
    <tr>
      <td>{bought && packs !== null ? words.amount(packs, 'piece') : words.amount(quantity, unit)}</td>
      <td>
        {bought ? goodsName(line) : line.name}
        {about.length === 0 ? null : <small>{about.join(' · ')}</small>}
        {why === null ? null : <small class="why">{why.message}</small>}
      </td>
      <td>{total === null ? (bought ? bill.noPrice : '') : words.money(total, currency)}</td>
    </tr>
  );
}
