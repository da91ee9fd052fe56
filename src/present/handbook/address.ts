/** Where the handbook's pages are in the address: `#/handbook`, `#/handbook/one-can`; and the list of trade words, which is a page of its own. */

export const WORDS_PAGE = 'words';

export const handbookHash = (page: string | null = null): string =>
  page === null ? '#/handbook' : `#/handbook/${page}`;
