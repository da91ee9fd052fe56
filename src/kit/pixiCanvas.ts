/**
 * A sheet of Pixi drawing on a canvas of its own: canvas renderer, no ticker, drawn once in the next animation frame after something changed.
 * Loaded only with the bench, never by the other pages.
 */
import 'pixi.js/graphics';
// Pixi checks for it at start even where nothing is compiled; with this the page needs no permission to evaluate strings.
import 'pixi.js/unsafe-eval';
import { CanvasRenderer, Container, Ticker } from 'pixi.js';
import { pageFrames } from './frameLoop.ts';

export interface PixiCanvas {
  readonly stage: Container;
  /** size in CSS pixels; draws at once, so that no frame is blank */
  resize(width: number, height: number): void;
  invalidate(): void;
  close(): void;
}

// Pixi's own clock would ask for sixty frames a second for ever. Its housekeeping runs when something is drawn.
for (const ticker of [Ticker.system, Ticker.shared]) {
  ticker.autoStart = false;
  ticker.stop();
}

export async function openSheet(canvas: HTMLCanvasElement): Promise<PixiCanvas> {
  const renderer = new CanvasRenderer();
  await renderer.init({
    canvas,
    width: 1,
    height: 1,
    backgroundAlpha: 0,
    antialias: true,
    resolution: window.devicePixelRatio,
    skipExtensionImports: true,
  });
  const stage = new Container();
  let open = true;
  const draw = (): void => {
    if (!open) return;
    renderer.render(stage);
    Ticker.system.update();
  };
  return {
    stage,
    resize(width, height) {
      if (!open) return;
      renderer.resize(Math.max(1, width), Math.max(1, height), window.devicePixelRatio);
      pageFrames.drop(draw);
      draw();
    },
    invalidate() {
      if (open) pageFrames.ask('paint', draw);
    },
    close() {
      open = false;
      pageFrames.drop(draw);
      stage.destroy({ children: true });
      renderer.destroy();
    },
  };
}
