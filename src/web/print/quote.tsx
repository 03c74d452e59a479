import { goodsName, TotalRows } from '../bill.tsx';
import { totalWords } from '../verdict.tsx';
import { words } from '../words/words.ts';
import { lookText } from '../work.tsx';
import { Blank, type Printed, Sheet } from './sheet.tsx';

/** For the customer: what it costs, when it is ready, what may come on top. */
export function Quote({ printed }: { readonly printed: Printed }) {
  const { print, bill, verdict } = words;
  const { answer, plan } = printed;
  const { money } = plan;
  const sum = (amount: string | null): string => (amount === null ? bill.noPrice : words.money(amount, money.currency));
  const bought = plan.lines.filter(({ action }) => action === 'buy');
  const dosed = plan.lines.filter(({ action, total }) => action === 'use' && total !== null);
  const out = plan.lines.filter(({ action }) => action === 'remove');
  const looks = plan.steps.flatMap((step) => step.looks).filter(({ extra }) => extra !== null);
  const checks = [...answer.flags, ...plan.flags].filter(({ severity }) => severity !== 'advice');
  return (
    <Sheet printed={printed} title={print.quote}>
      <div class="blanks">
        {[print.blanks[0] ?? '', print.date, print.validUntil].map((name) => (
          <Blank key={name} name={name} />
        ))}
      </div>
      <table class="grid money">
        <thead>
          <tr>
            <th scope="col">{bill.columns.quantity}</th>
            <th scope="col">{print.what}</th>
            <th scope="col">{print.each}</th>
            <th scope="col">{print.sum}</th>
          </tr>
        </thead>
        <tbody>
          {bought.map((line) => (
            <tr key={line.sku}>
              <td>{words.amount(line.packs ?? 1, 'piece')}</td>
              <td>
                {goodsName(line)} ({line.sku})
              </td>
              <td>{sum(line.unitPrice)}</td>
              <td>{sum(line.total)}</td>
            </tr>
          ))}
          {dosed.map(({ sku, name, quantity, unit, total }) => (
            <tr key={sku}>
              <td>{words.amount(quantity, unit)}</td>
              <td>
                {name} ({sku})
              </td>
              <td />
              <td>{sum(total)}</td>
            </tr>
          ))}
          <tr>
            <td />
            <td>{print.labour(words.minutes(plan.minutes))}</td>
            <td />
            <td>{sum(money.labour)}</td>
          </tr>
        </tbody>
        <tfoot>
          <TotalRows money={money} columns={3} />
        </tfoot>
      </table>
      <p>
        <strong>
          {totalWords(plan)}, {words.days(plan.readyInDays)}.
        </strong>{' '}
        {money.unpriced > 0 ? verdict.unpriced(money.unpriced) : ''}
      </p>
      {checks.length === 0 ? null : (
        <>
          <h2>{print.check}</h2>
          <ul>
            {checks.map(({ message }) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </>
      )}
      {looks.length === 0 ? null : (
        <>
          <h2>{print.mayAdd}</h2>
          <p>{print.mayAddNote}</p>
          <ul>
            {looks.map((look) => (
              <li key={look.look + look.if}>{lookText(plan, look)}</li>
            ))}
          </ul>
        </>
      )}
      {out.length === 0 ? null : (
        <>
          <h2>{print.comesOut}</h2>
          <p>
            {out.map(({ name, quantity, unit }) => `${words.amount(quantity, unit)} ${name}`).join('; ')}.{' '}
            {print.wasteNote}
          </p>
        </>
      )}
      <div class="blanks">
        <Blank name={print.signed} />
      </div>
    </Sheet>
  );
}
