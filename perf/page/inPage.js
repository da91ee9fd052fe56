/** Runs in the page before its own code: counts its animation frames, and how often the tube's picture changes, whether the page paints it or a worker does. */
(() => {
  const counted = { pictures: 0, frames: 0, gaps: [], watching: false, begin, end };
  window.counted = counted;
  let lastMs = -1;
  let firstMs = -1;

  function look(now) {
    if (!counted.watching) return;
    if (firstMs < 0) firstMs = now;
    else {
      counted.frames++;
      counted.gaps.push(now - lastMs);
    }
    lastMs = now;
    requestAnimationFrame(look);
  }
  function begin() {
    Object.assign(counted, { pictures: 0, frames: 0, gaps: [], watching: true });
    firstMs = -1;
    requestAnimationFrame(look);
  }
  function end() {
    counted.watching = false;
    const seconds = (lastMs - firstMs) / 1000;
    const gaps = counted.gaps.sort((a, b) => a - b);
    return { pictures: counted.pictures / seconds, frames: counted.frames / seconds, gaps };
  }

  // Painted by the page itself: the layers of one frame are one picture.
  const put = CanvasRenderingContext2D.prototype.putImageData;
  let putMs = -1;
  CanvasRenderingContext2D.prototype.putImageData = function (...args) {
    const now = document.timeline.currentTime;
    if (now !== putMs) counted.pictures++;
    putMs = now;
    return put.apply(this, args);
  };
  // Painted by a worker: it says so of each picture.
  window.Worker = class extends Worker {
    constructor(...args) {
      super(...args);
      this.addEventListener('message', ({ data }) => {
        if (data?.painted !== undefined) counted.pictures += data.painted;
      });
    }
  };
})();
