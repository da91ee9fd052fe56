/** JSON as people like to read it: what fits stands on one line, the rest a key a line. */
const WIDTH = 120;

export function layOut(value: object): string {
  return `${lines(value, '', 0, true)}\n`;
}

/** `taken`: characters already on the line before it, and a comma after it. */
function lines(value: unknown, indent: string, taken: number, open = false): string {
  const flat = oneLine(value);
  if (typeof value !== 'object' || value === null) return flat;
  const entries = Object.entries(value);
  if (!open && (entries.length === 0 || indent.length + taken + flat.length + 1 <= WIDTH)) return flat;
  const inner = `${indent}  `;
  const list = Array.isArray(value);
  const rows = entries.map(([key, inside]) => {
    const name = list ? '' : `${JSON.stringify(key)}: `;
    return `${inner}${name}${lines(inside, inner, name.length)}`;
  });
  const [before, after] = list ? ['[', ']'] : ['{', '}'];
  return `${before}\n${rows.join(',\n')}\n${indent}${after}`;
}

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).map(([key, inside]) => `${JSON.stringify(key)}: ${oneLine(inside)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}
