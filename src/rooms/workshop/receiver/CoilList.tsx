/** The coils of the deck: which of them are turned, and what their slugs are called and like. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import { put, removeSlug, renameSlug } from '../../../making/edits.ts';
import { tunedHz } from '../../../making/firstDraft.ts';
import { addSlug } from '../../../making/more.ts';
import type { Json } from '../../../making/wholeReceiver.ts';
import type { Deck, TwoTerminal } from '../../../physics/deck.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { DeskProps } from './DeckPanel.tsx';
import { done, Field, hertzOf, kilohertz, numberOf } from './Field.tsx';
import { Labelled } from './Labelled.tsx';

interface CoilsProps extends DeskProps {
  readonly deck: Deck;
  /** null: it is not whole yet */
  readonly made: Receiver | null;
}

export function Coils({ port, making, deck, made }: CoilsProps) {
  const { ownReceiver: say } = useWords();
  const { network } = say;
  const { draft } = making;
  const coils = deck.elements.filter((e): e is TwoTerminal => e.kind === 'L');
  return (
    <fieldset class="made-list">
      <legend class="l">{network.coils}</legend>
      <ul>
        {coils.map((coil) => {
          const i = draft.adjusters.findIndex((a) => String(a.element).toLowerCase() === coil.name.toLowerCase());
          const slug = draft.adjusters[i];
          const full = made?.adjusters[i];
          const hz = tunedHz(deck, coil);
          return (
            <li key={coil.name} class="made-coil">
              <label class="made-tick">
                <input
                  type="checkbox"
                  checked={slug !== undefined}
                  aria-label={network.turned(coil.name)}
                  onChange={() =>
                    port.change(slug === undefined ? addSlug(draft, deck, coil.name) : removeSlug(draft, i))
                  }
                />
                <span>
                  <b class="m">{coil.name}</b>{' '}
                  <span class="l2">{hz === null ? network.noCapacitor : network.alone(hz)}</span>
                </span>
              </label>
              {slug === undefined ? null : (
                <span class="made-row">
                  <Labelled name={network.nameShort}>
                    <Field
                      plain
                      label={network.slugName(coil.name)}
                      value={String(slug.id)}
                      take={(text) => done(() => port.change(renameSlug(draft, i, text)))}
                    />
                  </Labelled>
                  <Labelled name={network.travelShort}>
                    <Field
                      plain
                      class="figure"
                      label={network.travel(String(slug.id))}
                      value={String(slug.travelTurns ?? full?.travelTurns ?? '')}
                      take={(text) => {
                        const value = numberOf(text);
                        if (value === null) return say.response.unread;
                        return done(() => port.change(put(draft, ['adjusters', i, 'travelTurns'], value)));
                      }}
                    />
                  </Labelled>
                  <Labelled name={network.trapShort}>
                    <Field
                      plain
                      class="figure"
                      label={network.trap(String(slug.id))}
                      value={typeof slug.trapHz === 'number' ? kilohertz(slug.trapHz) : ''}
                      take={(text) => {
                        const value = text === '' ? null : hertzOf(text);
                        if (text !== '' && value === null) return say.response.unread;
                        const trap = put(
                          put(draft, ['adjusters', i, 'trapHz'], value),
                          ['adjusters', i, 'kind'],
                          value === null ? 'slug' : 'trap',
                        );
                        return done(() => port.change(value === null ? trap : aloneInCan(trap, i)));
                      }}
                    />
                  </Labelled>
                  <Labelled name={network.toolShort}>
                    <select
                      class="written"
                      aria-label={network.tool(String(slug.id))}
                      value={String(slug.head ?? full?.head ?? 'hex')}
                      onChange={(event) => port.change(put(draft, ['adjusters', i, 'head'], event.currentTarget.value))}
                    >
                      {(['hex', 'blade'] as const).map((head) => (
                        <option key={head} value={head}>
                          {network.tools[head]}
                        </option>
                      ))}
                    </select>
                  </Labelled>
                </span>
              )}
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}

/** A trap is drawn by itself where no other core shares its can. */
function aloneInCan(draft: DeskProps['making']['draft'], i: number): typeof draft {
  const plan = draft.adjusters[i]!.plan as Json;
  const shared = draft.adjusters.some((a, k) => k !== i && (a.plan as Json).can === plan.can);
  return shared ? draft : put(draft, ['adjusters', i, 'plan', 'shape'], 'trap');
}
