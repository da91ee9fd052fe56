/** Lengths for styles: numbers there get no unit by themselves. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const px = (v: number): string => `${v}px`;

export const size = (width: number, height: number) => ({ width: px(width), height: px(height) });

export const place = ({ x, y, width, height }: Rect) => ({ left: px(x), top: px(y), ...size(width, height) });
