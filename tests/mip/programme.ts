/** A variable of a programme, by number. */
export type Var = number;
export type Terms = readonly (readonly [coefficient: number, variable: Var])[];

/** A sum of whole multiples of variables, and a number. */
export interface Expression {
  readonly terms: Terms;
  readonly plus: number;
}

interface Row {
  readonly terms: Terms;
  readonly sense: '<=' | '>=' | '=';
  readonly bound: number;
}

/** A linear programme in whole numbers: every coefficient, bound and variable is whole, so that an assignment can be checked without any tolerance. */
export class Programme {
  private readonly upper: number[] = [];
  private readonly rows: Row[] = [];

  /** A whole number from 0 to a greatest one. */
  whole(greatest: number): Var {
    this.upper.push(greatest);
    return this.upper.length - 1;
  }

  yesOrNo(): Var {
    return this.whole(1);
  }

  add(terms: Terms, sense: Row['sense'], bound: number): void {
    this.rows.push({ terms, sense, bound });
  }

  /** Not all of these at once. */
  forbid(...together: readonly Var[]): void {
    this.add(
      together.map((one) => [1, one]),
      '<=',
      together.length - 1,
    );
  }

  /** Where all of the first hold, one of the second does. */
  imply(all: readonly Var[], some: readonly Var[]): void {
    this.add([...all.map((one): [number, Var] => [1, one]), ...negative(some)], '<=', all.length - 1);
  }

  copy(): Programme {
    const other = new Programme();
    other.upper.push(...this.upper);
    other.rows.push(...this.rows);
    return other;
  }

  /** In the LP format that solvers read. */
  toLp(objective: Terms): string {
    const sum = (terms: Terms): string =>
      terms.length === 0
        ? '0 x0'
        : added(terms)
            .map(([by, variable]) => `${by < 0 ? '-' : '+'} ${Math.abs(by)} x${variable}`)
            .join(' ');
    return [
      'Minimize',
      ` cost: ${sum(objective)}`,
      'Subject To',
      ...this.rows.map(({ terms, sense, bound }, at) => ` r${at}: ${sum(terms)} ${sense} ${bound}`),
      'Bounds',
      ...this.upper.map((greatest, at) => ` 0 <= x${at} <= ${greatest}`),
      'Generals',
      ` ${this.upper.map((_greatest, at) => `x${at}`).join(' ')}`,
      'End',
    ].join('\n');
  }

  /** As rules of answer set programming: a whole number is the sum of its binary digits, and each row a sum that must not be broken. */
  toRules(objective: Terms): string {
    const digits = this.upper.map((greatest) =>
      Array.from({ length: greatest.toString(2).length }, (_, at) => 2 ** at),
    );
    const sum = (terms: Terms): string =>
      added(terms)
        .flatMap(([by, variable]) =>
          (digits[variable] ?? []).map((digit) => `${by * digit},${variable},${digit}: x(${variable},${digit})`),
        )
        .join('; ');
    const broken = { '<=': '>', '>=': '<', '=': '!=' } as const;
    const bounded: Row[] = this.upper.map((bound, at) => ({ terms: [[1, at]], sense: '<=', bound }));
    return [
      ...digits.flatMap((all, at) => all.map((digit) => `{x(${at},${digit})}.`)),
      ...[...bounded, ...this.rows].map(
        ({ terms, sense, bound }) => `:- #sum{${sum(terms)}} ${broken[sense]} ${bound}.`,
      ),
      `#minimize{${sum(objective)}}.`,
      '#show x/2.',
    ].join('\n');
  }

  get variables(): number {
    return this.upper.length;
  }

  /** Whether whole values meet every row, exactly. */
  isMetBy(values: readonly number[]): boolean {
    return (
      values.every((value, at) => Number.isInteger(value) && value >= 0 && value <= (this.upper[at] ?? -1)) &&
      this.rows.every(({ terms, sense, bound }) => {
        const sum = evaluated({ terms, plus: 0 }, values);
        return sense === '=' ? sum === bound : sense === '<=' ? sum <= bound : sum >= bound;
      })
    );
  }
}

export const negative = (variables: readonly Var[]): Terms => variables.map((one) => [-1, one]);

export const evaluated = ({ terms, plus }: Expression, values: readonly number[]): number =>
  terms.reduce((sum, [by, variable]) => sum + by * (values[variable] ?? 0), plus);

/** Each variable once. */
function added(terms: Terms): Terms {
  const by = new Map<Var, number>();
  for (const [coefficient, variable] of terms) by.set(variable, (by.get(variable) ?? 0) + coefficient);
  return [...by].map(([variable, coefficient]) => [coefficient, variable]);
}
