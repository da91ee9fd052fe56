/** The version of everything that decides a curve or a score; run files and certificates carry it. */
export const ENGINE = '0.2.0';
