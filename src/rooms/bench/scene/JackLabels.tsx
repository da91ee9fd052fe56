/** Names beside the jacks that are drawn: on a panel in ink, on the tube's hood in paper. */

import { Fragment } from 'preact';
import type { LeadId } from '../../../bench/benchState.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchLayout, JackId } from '../layout.ts';

export function JackLabels({ layout }: { readonly layout: BenchLayout }) {
  const { scene: sceneWords } = useWords();
  return (
    <>
      {(Object.keys(layout.jacks) as JackId[]).map((id) => {
        const jack = layout.jacks[id];
        if (jack.hidden) return null;
        const onHood = layout.form !== 'full';
        const words = sceneWords.jackName(id === 'xOut' ? 'x' : (id as LeadId | 'xIn'));
        return (
          <Fragment key={id}>
            <span class="jack-spot" data-jack={id} style={{ left: `${jack.x}px`, top: `${jack.y}px` }} />
            <span
              class={`jack-label ls short ${jack.side}${onHood ? ' on-hood' : ''}`}
              style={{ left: `${jack.x}px`, top: `${jack.y}px` }}
              title={words}
              aria-hidden="true"
            >
              {onHood ? words.charAt(0) : words}
            </span>
          </Fragment>
        );
      })}
    </>
  );
}
