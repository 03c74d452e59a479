import { OutsideFault } from './fault.ts';

/** An expression over named variables; true is 1, false is 0. */
export interface Expression {
  readonly names: ReadonlySet<string>;
  readonly value: (of: ReadonlyMap<string, number>) => number;
}

type Evaluate = Expression['value'];

/** Operators from the loosest to the tightest, as MiniZinc binds them; those of one row bind alike, from the left. */
const LEVELS: readonly (readonly string[])[] = [
  ['<->'],
  ['->', '<-'],
  ['\\/', 'xor'],
  ['/\\'],
  ['<=', '>=', '==', '!=', '<', '>', '='],
  ['+', '-'],
  ['*', 'div', 'mod'],
];
const OPERATIONS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '<->': (a, b) => Number(a === b),
  '->': (a, b) => Number(a === 0 || b !== 0),
  '<-': (a, b) => Number(b === 0 || a !== 0),
  '\\/': (a, b) => Number(a !== 0 || b !== 0),
  xor: (a, b) => Number((a !== 0) !== (b !== 0)),
  '/\\': (a, b) => Number(a !== 0 && b !== 0),
  '<=': (a, b) => Number(a <= b),
  '>=': (a, b) => Number(a >= b),
  '==': (a, b) => Number(a === b),
  '=': (a, b) => Number(a === b),
  '!=': (a, b) => Number(a !== b),
  '<': (a, b) => Number(a < b),
  '>': (a, b) => Number(a > b),
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  div: (a, b) => Math.trunc(a / b),
  mod: (a, b) => a % b,
};
const FUNCTIONS: Readonly<Record<string, (values: readonly number[]) => number>> = {
  abs: ([value = 0]) => Math.abs(value),
  min: (values) => Math.min(...values),
  max: (values) => Math.max(...values),
  sum: (values) => values.reduce((total, one) => total + one, 0),
  alldifferent: (values) => Number(new Set(values).size === values.length),
  all_different: (values) => Number(new Set(values).size === values.length),
};
const TOKEN = /\s*(<->|->|<-|\\\/|\/\\|<=|>=|==|!=|[<>=+\-*(),[\]]|\d+|[A-Za-z_]\w*)/y;

/** Reads an expression of the part of MiniZinc that small finite-domain problems are written in. `place` is where it stands. */
export function readExpression(text: string, place: string): Expression {
  const reader = new Reader(tokensOf(text, place), place);
  const value = reader.level(0);
  reader.end();
  return { names: reader.names, value };
}

function tokensOf(text: string, place: string): readonly string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  const end = text.trimEnd().length;
  while (TOKEN.lastIndex < end) {
    const at = TOKEN.lastIndex;
    const [, token] = TOKEN.exec(text) ?? [];
    if (token === undefined) throw new OutsideFault(place, `"${text.slice(at).trim().slice(0, 20)}" is not understood`);
    tokens.push(token);
  }
  return tokens;
}

class Reader {
  readonly names = new Set<string>();
  private readonly tokens: readonly string[];
  private readonly place: string;
  private at = 0;

  constructor(tokens: readonly string[], place: string) {
    this.tokens = tokens;
    this.place = place;
  }

  level(depth: number): Evaluate {
    const operators = LEVELS[depth];
    if (!operators) return this.term();
    let left = this.level(depth + 1);
    for (let sign = this.tokens[this.at]; sign !== undefined && operators.includes(sign); sign = this.tokens[this.at]) {
      this.at++;
      const [first, second] = [left, this.level(depth + 1)];
      const operation = OPERATIONS[sign];
      if (operation) left = (of) => operation(first(of), second(of));
    }
    return left;
  }

  end(): void {
    if (this.at < this.tokens.length) this.fail(`"${this.tokens[this.at]}" is not expected`);
  }

  private term(): Evaluate {
    const token = this.tokens[this.at++];
    if (token === undefined) return this.fail('the expression ends too early');
    if (/^\d+$/.test(token)) {
      const value = Number(token);
      return () => value;
    }
    if (token === '-' || token === '+' || token === 'not') {
      const inner = token === 'not' ? this.term() : this.level(LEVELS.length - 1);
      if (token === 'not') return (of) => Number(inner(of) === 0);
      return token === '-' ? (of) => -inner(of) : inner;
    }
    if (token === '(') {
      const inner = this.level(0);
      this.expect(')');
      return inner;
    }
    if (token === 'true' || token === 'false') return () => Number(token === 'true');
    if (!/^[A-Za-z_]/.test(token)) return this.fail(`"${token}" is not expected`);
    if (this.tokens[this.at] === '(') return this.call(token);
    this.names.add(token);
    return (of) => of.get(token) ?? 0;
  }

  private call(name: string): Evaluate {
    const made = Object.hasOwn(FUNCTIONS, name) ? FUNCTIONS[name] : undefined;
    if (!made) return this.fail(`the function "${name}" is not known here`);
    this.expect('(');
    const bracket = this.tokens[this.at] === '[';
    if (bracket) this.at++;
    const parts: Evaluate[] = [this.level(0)];
    while (this.tokens[this.at] === ',') {
      this.at++;
      parts.push(this.level(0));
    }
    if (bracket) this.expect(']');
    this.expect(')');
    return (of) => made(parts.map((part) => part(of)));
  }

  private expect(token: string): void {
    if (this.tokens[this.at++] !== token) this.fail(`"${token}" is missing`);
  }

  private fail(what: string): never {
    throw new OutsideFault(this.place, what);
  }
}
