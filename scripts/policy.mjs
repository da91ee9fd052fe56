/**
 * What the page may do: run, show and fetch what lies beside it, and talk to nobody else. One list, for the header of the server here and for the built page itself, so
 * that it holds wherever the page is put.
 */

const RULES = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  // No drawing brings a style of its own; styles set by scripts, one property after the other, are another thing and allowed.
  "style-src 'self'",
  "font-src 'self'",
  // Drawings of the chassis become pictures inside the page.
  "img-src 'self' data:",
  "media-src 'self'",
  "manifest-src 'self'",
  // The sounds.
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
];

/** For the page itself: browsers hear of frames in headers only. */
export const PAGE_POLICY = RULES.join('; ');

export const POLICY = [...RULES, "frame-ancestors 'none'"].join('; ');
