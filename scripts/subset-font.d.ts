/** What the builder asks of the subsetter, which comes without types. */
declare module 'subset-font' {
  /** a font with the glyphs of `text` alone */
  export default function subsetFont(font: Buffer, text: string, options: { targetFormat: 'woff2' }): Promise<Buffer>;
}
