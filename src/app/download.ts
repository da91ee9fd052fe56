/** Hands a text to the browser as a file; nothing leaves the machine. */
export function download(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken the blob by the next turn of the loop.
  setTimeout(() => URL.revokeObjectURL(url), 0);
}
