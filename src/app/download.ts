/** Hands a text or a file to the browser as a file; nothing leaves the machine. */
export function download(name: string, content: string | Blob): void {
  const url = URL.createObjectURL(
    content instanceof Blob ? content : new Blob([content], { type: 'application/json' }),
  );
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken the blob by the next turn of the loop.
  setTimeout(() => URL.revokeObjectURL(url), 0);
}

const TYPES = { csv: 'text/csv', svg: 'image/svg+xml' } as const;

/** A text of a report, under the report's own name. */
export const downloadText = (name: string, kind: keyof typeof TYPES, text: string): void =>
  download(`${name}.${kind}`, new Blob([text], { type: TYPES[kind] }));
