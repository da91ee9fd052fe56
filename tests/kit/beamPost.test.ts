/** Pictures on their way to the painter: few buffers go to and fro, the newest picture is the one that arrives. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { type BeamPost, createBeamPost } from '../../src/kit/tube/beamPost.ts';
import type { Coming } from '../../src/kit/tube/tubeMessages.ts';

interface Sent {
  readonly values: readonly number[];
  readonly data: ArrayBuffer;
  readonly count: number;
  readonly coming: Coming;
}

function posted(): { readonly post: BeamPost; readonly sent: Sent[] } {
  const sent: Sent[] = [];
  const post = createBeamPost(({ data, count, coming }, transfer) => {
    expect(transfer).toEqual([data]);
    sent.push({ values: [...new Float32Array(data)], data, count, coming });
  });
  return { post, sent };
}

const beam = (...values: number[]) => ({
  points: { data: Float32Array.from(values), count: values.length / 3 },
  brightness: 1,
  blur: 0,
});

describe('the post of beam points', () => {
  it('copies the points, so that the bench may write the next ones over them', () => {
    const { post, sent } = posted();
    const first = beam(1, 2, 3, 4, 5, 6);
    post.send(first, 'still');
    first.points.data.fill(9);
    expect(sent).toMatchObject([{ values: [1, 2, 3, 4, 5, 6], count: 2, coming: 'still' }]);
  });

  it('makes three buffers and no more, and uses again what comes back', () => {
    const { post, sent } = posted();
    for (let i = 0; i < 20; i++) {
      post.send(beam(i, i, i), 'fading');
      if (i >= 2) post.back(sent[i - 2]!.data);
    }
    expect(sent).toHaveLength(20);
    expect(new Set(sent.map(({ data }) => data)).size).toBe(3);
  });

  it('lets the newest picture wait while all buffers are away, and drops those between', () => {
    const { post, sent } = posted();
    for (let i = 0; i < 8; i++) post.send(beam(i, 0, 0), 'fading');
    expect(sent.map(({ values }) => values[0])).toEqual([0, 1, 2]);
    post.back(sent[0]!.data);
    expect(sent.map(({ values }) => values[0])).toEqual([0, 1, 2, 7]);
    // Nothing waits any more.
    post.back(sent[1]!.data);
    expect(sent).toHaveLength(4);
  });

  it('keeps a waiting picture as it was', () => {
    const { post, sent } = posted();
    for (let i = 0; i < 3; i++) post.send(beam(i, 0, 0), 'fading');
    const late = beam(7, 8, 9);
    post.send(late, 'still');
    late.points.data.fill(0);
    post.back(sent[0]!.data);
    expect(sent.at(-1)).toMatchObject({ values: [7, 8, 9], count: 1, coming: 'still' });
  });

  it('takes pictures of another length, and none at all', () => {
    const { post, sent } = posted();
    post.send(beam(1, 2, 3), 'fading');
    post.back(sent[0]!.data);
    post.send(beam(1, 2, 3, 4, 5, 6), 'fading');
    post.send({ points: null, brightness: 0, blur: 0 }, 'fading');
    expect(sent.map(({ values, count }) => [values.length, count])).toEqual([
      [3, 1],
      [6, 2],
      [0, 0],
    ]);
  });
});
