/** A file that is dropped where nothing takes it: the browser would go away from the page to show it. */

export function keepStrayDrops(page: Pick<Window, 'addEventListener'>): void {
  const stay = (event: DragEvent): void => {
    if (event.defaultPrevented || event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
  };
  page.addEventListener('dragover', stay);
  page.addEventListener('drop', stay);
}
