/** Values of a question as a command line writes them. Each is given what the question holds at the option's path. */
export const showBounds = (value: unknown): string => {
  const { least, greatest } = value as { readonly least: number; readonly greatest: number };
  return `${least}..${greatest}`;
};

export const showContent = (value: unknown): string => {
  const content = value as { readonly sku: string; readonly quantity: number } | null;
  return content === null ? 'none' : `${content.sku}${content.quantity === 1 ? '' : `*${content.quantity}`}`;
};

export const showHave = (value: unknown): string => {
  const { sku, quantity, amount, used } = value as {
    readonly sku: string;
    readonly quantity?: number;
    readonly amount?: { readonly value: number; readonly unit: string };
    readonly used: boolean;
  };
  const count = amount ? `*${amount.value}${amount.unit}` : quantity === undefined ? '' : `*${quantity}`;
  return `${sku}${count}${used ? ':used' : ''}`;
};

/** A share as per cent. */
export const showShare = (value: unknown): string => `${Math.round(Number(value) * 1e5) / 1e3}%`;
