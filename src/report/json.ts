/** JSON as it is printed: two blanks, keys in the order of the document, one newline at the end. */
export const asJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
