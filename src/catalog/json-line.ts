/**
 * The value of a line of JSON that says everything once; undefined where it is anything else, or where that cannot be told at once: then a parser that looks for keys said
 * twice must read it. A key that was said twice is lost in the value, so that what is written from the value is not the line.
 */
export function valueOfLine(line: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return undefined;
  }
  const written = JSON.stringify(value);
  return written === line || written === line.replace(STRING_OR_SPACE, '$1') ? value : undefined;
}

const STRING_OR_SPACE = /("(?:[^"\\]|\\.)*")|[ \t\r\n]+/g;
