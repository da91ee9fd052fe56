/** The elements of the bench that a step of the guide means, the one to take hold of first. */
import { TUBE_X } from '../../../bench/benchState.ts';
import type { GuideSpot } from '../../../present/guide.ts';
import type { Words } from '../../../words/words.ts';

export function partsMeant(words: Words, spot: GuideSpot): readonly HTMLElement[] {
  switch (spot.kind) {
    case 'control': {
      const control = named(words.controls[spot.control].label)?.closest<HTMLElement>('.knob, .switch, .position-row');
      // What is on the back of a panel is reached by its tab.
      return control == null ? all('#panel-bias [data-side=leads]') : [control];
    }
    case 'lead':
      return [
        ...all(`.lead-grip[data-lead="${spot.lead}"]`),
        ...(spot.to === TUBE_X
          ? all('[data-jack=xIn]')
          : all('.point-spot').filter((point) => point.dataset.point === spot.to)),
      ];
    case 'crystal': {
      const crystal = named(words.rack.crystal(spot.hz, null));
      return crystal === undefined ? [] : [crystal];
    }
    case 'slug':
      return [
        ...all('[data-slug]').filter((slug) => slug.dataset.slug === spot.slug),
        // In sight once the slug is chosen.
        ...all('[data-turns]').filter(({ dataset }) => dataset.turns === spot.slug && dataset.way === spot.way),
      ];
    case 'isolation':
    case 'mains': {
      const flipped = named(words.safe[spot.kind])?.closest<HTMLElement>('.switch');
      return flipped == null ? all('#panel-bias [data-side=safe]') : [flipped];
    }
    case 'tool':
      return all('.tool').slice(0, 1);
    case 'finding':
      return all('.finding');
    case 'sign':
      return all('.sign-off');
  }
}

const all = (selector: string): readonly HTMLElement[] => [...document.querySelectorAll<HTMLElement>(selector)];

const named = (label: string): HTMLElement | undefined =>
  all('main [aria-label]').find((element) => element.getAttribute('aria-label') === label);
