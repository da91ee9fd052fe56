/** The bench's header: mark, job, rail of phases, turns against par, time, what is at hand, menu and the one primary button. */
import type { ComponentChildren } from 'preact';
import { memo } from 'preact/compat';
import { useMemo } from 'preact/hooks';
import { usePort, usePortEntries } from '../../kit/hooks/usePort.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { place } from '../../kit/px.ts';
import { Short } from '../../kit/Short.tsx';
import { Told } from '../../kit/Told.tsx';
import { Button, Frac, Mark } from '../../kit/theme/art.tsx';
import { PhaseRail } from '../../kit/theme/PhaseRail.tsx';
import type { BenchPort } from '../../present/ports.ts';
import { toldPar } from '../../scenario/par.ts';
import { PHASES } from '../../session/phase.ts';
import type { BenchLayout } from './layout.ts';

interface BenchHeaderProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly menu: boolean;
  readonly onMenu: () => void;
  readonly onHome: (() => void) | null;
  /** what stands between the clock and the menu, or beside the rail where that has a row of its own */
  readonly children?: ComponentChildren;
}

function BenchHeaderBase({ port, layout, menu, onMenu, onHome, children }: BenchHeaderProps) {
  const { header: headerWords, shell: shellWords } = useWords();
  const { form, header, headerRows } = layout;
  const { scenario, receiver } = port;
  const words = form === 'full' && header.width >= 1424;
  const brand = (
    <>
      <Mark scale={form === 'shelf' ? 0.9 : 1} />
      {words ? <span class="brand-words">{shellWords.product}</span> : null}
    </>
  );
  return (
    <header class={`bench-header placed ${form}`} style={place(header)}>
      {onHome === null ? (
        <div class="brand">{brand}</div>
      ) : (
        <button type="button" class="brand" aria-label={shellWords.home} onClick={onHome}>
          {brand}
        </button>
      )}
      <span class="header-rule" aria-hidden="true" />
      <div class="job">
        {/* No paragraph: space that a reader asks for between paragraphs would push it out of the header. */}
        <div class="l2 short" title={headerWords.scenario(scenario.code, receiver.setName)}>
          {headerWords.scenario(scenario.code, receiver.setName)}
        </div>
        <h1 class="short" title={scenario.title}>
          <Told of={scenario}>{scenario.title}</Told>
        </h1>
      </div>
      <Rail
        port={port}
        width={railWidth(layout)}
        compact={form === 'shelf' || (headerRows === 2 && header.height < 110)}
      />
      <Counter port={port} />
      <Clock port={port} />
      {children}
      {layout.menu === null ? (
        <button
          type="button"
          class="menu-button"
          aria-haspopup="true"
          aria-expanded={menu}
          aria-label={headerWords.menu}
          onClick={onMenu}
        >
          <MenuBars />
        </button>
      ) : null}
      <Button primary onClick={() => port.askToSign()} class="sign-off">
        {headerWords.signOff}
      </Button>
    </header>
  );
}

export function MenuBars() {
  return (
    <svg width="24" height="16" aria-hidden="true" class="ink">
      <path d="M1 2h22M1 8h22M1 14h22" stroke="var(--ink)" stroke-width="1.8" />
    </svg>
  );
}

/** four buttons side by side, and as wide as long words make them */
const AT_HAND = 216;
const AT_HAND_MOST = 240;
const PHASE_NAME = 96;

function railWidth({ form, header, headerRows }: BenchLayout): number {
  // A low header names the phase beside the rail.
  if (headerRows === 2) return header.width - 60 - AT_HAND_MOST - (header.height < 110 ? PHASE_NAME : 0);
  if (form === 'full') return Math.min(540, header.width - 900 - AT_HAND);
  return Math.min(400, Math.max(230, header.width - 780));
}

function Rail({
  port,
  width,
  compact,
}: {
  readonly port: BenchPort;
  readonly width: number;
  readonly compact: boolean;
}) {
  const { header: headerWords, phases: phaseNames } = useWords();
  const parts = usePortEntries(port, () => {
    const { done, current } = port.session();
    return { ...done, current };
  });
  const names = PHASES.map((phase) => phaseNames[phase]);
  const stops = PHASES.map((phase, i) => ({
    name: names[i]!,
    done: parts[phase],
    now: parts.current === phase && !parts[phase],
  }));
  const now = phaseNames[parts.current];
  return (
    <div class="rail">
      <PhaseRail
        stops={stops}
        name={headerWords.rail(
          names,
          stops.map((s) => s.done),
          now,
        )}
        width={width}
        compact={compact}
      />
      {compact ? (
        <span class="rail-now short" title={now} aria-hidden="true">
          {now}
        </span>
      ) : null}
    </div>
  );
}

function Counter({ port }: { readonly port: BenchPort }) {
  const { header: headerWords } = useWords();
  const { eighths } = useWords().format;
  const turns = usePort(port, () => eighths(port.state().turnsMade));
  const label = headerWords.turns(toldPar(port.scenario)?.turns ?? null);
  return (
    <div class="counter turns">
      <span class="l2 short" title={label}>
        <Frac>{label}</Frac>
      </span>
      <span class="H">
        <Frac>{turns}</Frac>
      </span>
    </div>
  );
}

function Clock({ port }: { readonly port: BenchPort }) {
  const { header: headerWords } = useWords();
  const { clock } = useWords().format;
  const limit = port.scenario.timeLimitSeconds;
  // On the second, and when something is done: a clock that is stopped shows the time at which it was.
  const moments = useMemo(
    () => ({
      subscribe(listener: () => void) {
        const offs = [port.onSecond(listener), port.subscribe(listener)];
        return () => {
          for (const off of offs) off();
        };
      },
    }),
    [port],
  );
  const text = usePort(moments, () => {
    const elapsed = port.elapsedSeconds();
    return clock(limit === null ? elapsed : Math.max(0, limit - elapsed));
  });
  return (
    <div class="counter">
      <Short class="l2">{limit === null ? headerWords.elapsed : headerWords.left}</Short>
      <span class="mb clock" role="timer" aria-live="off">
        {text}
      </span>
    </div>
  );
}

export const BenchHeader = memo(BenchHeaderBase);
